package sheet

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/sessions"
)

// maxBoxes is how many rounds are ticked in boxes; beyond it a player keeps a
// tally.
const maxBoxes = 48

// row describes exercise j of a block, which counts from 0; first is the side it
// starts with in each round.
func (w *writer) row(b *sessions.Block, j int, block string, first []plan.Side) Row {
	e := &b.Exercises[j]
	row := Row{
		ID:      block + letter(j),
		Name:    safetext.Clean(e.Name),
		Notes:   w.notes(e),
		Dose:    w.dose(e),
		Side:    w.side(e),
		Details: w.details(e, first),
		Then:    w.then(b, j, block),
	}
	for _, c := range e.Cues {
		row.Cues = append(row.Cues, kept(strings.TrimSpace(safetext.Clean(c)))...)
	}
	if b.Rounds > maxBoxes {
		row.Tally = w.words.Tally(b.Rounds)
		return row
	}
	for i, side := range first {
		row.Rounds = append(row.Rounds, Round{i + 1, boxesOf(i+1, side)})
	}
	return row
}

// boxesOf names the boxes to tick in a round: one, or one a side in the order
// in which the sides are worked.
func boxesOf(round int, first plan.Side) []string {
	n := fmt.Sprint(round)
	switch first {
	case plan.Left:
		return []string{n + "L", n + "R"}
	case plan.Right:
		return []string{n + "R", n + "L"}
	}
	return []string{n}
}

// dose returns the dose of one set, of one side if it is given a side.
func (w *writer) dose(e *sessions.Exercise) Figure {
	n := e.Reps + e.RepsPerSide
	if n == 0 {
		return figure(e.Time + e.TimePerSide)
	}
	return Figure{fmt.Sprint(n), w.words.RepUnit(n)}
}

// side says how the dose goes for the sides, and nothing if it is not given a
// side.
func (w *writer) side(e *sessions.Exercise) string {
	switch {
	case !e.OneSided():
		return ""
	case e.Sides == sessions.AlternateReps:
		return w.words.EachSideAlternating
	}
	return w.words.EachSide
}

// details says how the dose is done; first is the side that each round starts
// with.
func (w *writer) details(e *sessions.Exercise, first []plan.Side) []string {
	order, turn := "", ""
	if e.OneSided() && e.Sides != sessions.AlternateReps {
		switch left, right := slices.Contains(first, plan.Left), slices.Contains(first, plan.Right); {
		case left && right:
			order = w.words.SwapSides
		case right:
			order = w.words.RightFirst
		default:
			order = w.words.LeftFirst
		}
		if e.Switch > 0 {
			turn = w.words.ToSwitch(figure(e.Switch).String())
		}
	}
	return kept(order, turn, w.pace(e), w.contacts(e, len(first)))
}

// pace says how fast the reps are, and whether the clock ends the set.
func (w *writer) pace(e *sessions.Exercise) string {
	pace := ""
	switch {
	case e.Tempo != (sessions.Tempo{}):
		pace = w.words.Tempo(tempoOf(e.Tempo))
	case e.Reps+e.RepsPerSide > 0:
		pace = w.words.ARep(figure(e.Rep).String())
	}
	if e.Finish == sessions.ByHand {
		return join(", ", pace, w.words.NoHurry)
	}
	return pace
}

// tempoOf writes a tempo as a coach types it.
func tempoOf(t sessions.Tempo) string {
	phases := []time.Duration{t.Lowering, t.Pause, t.Rising, t.Top}
	if t.Top == 0 {
		phases = phases[:3]
	}
	text := make([]string, len(phases))
	for i, d := range phases {
		text[i] = seconds(d)
	}
	if t.Fast {
		text[2] = "X"
	}
	return strings.Join(text, "-")
}

// contacts says how often the feet land in a round.
func (w *writer) contacts(e *sessions.Exercise, rounds int) string {
	n := e.Contacts * (e.Reps + 2*e.RepsPerSide)
	said := w.words.Contacts(n, n > 0 || jumps.Counted(e))
	if n == 0 || rounds == 1 {
		return said
	}
	return w.words.ARound(said)
}

// variant says a variant in one sentence: its name, its pace and how to do it.
func (w *writer) variant(v sessions.Variant) string {
	text := v.Name
	switch {
	case v.Tempo != (sessions.Tempo{}):
		text += ", " + w.words.Tempo(tempoOf(v.Tempo))
	case v.Rep > 0:
		text += ", " + w.words.ARep(figure(v.Rep).String())
	}
	if v.How != "" {
		text += ": " + v.How
	}
	return text
}

// calls says which directions are called, and how often.
func (w *writer) calls(e *sessions.Exercise) string {
	if len(e.Calls) == 0 {
		return ""
	}
	return strings.Join(e.Calls, ", ") + ", " + w.words.Every(e.CallEvery.String())
}

// measure says what comes out of a set.
func (w *writer) measure(e *sessions.Exercise) string {
	if e.Measure == "" {
		return ""
	}
	text := w.language.Measure(e.Measure)
	if u := e.Measure.Unit(); u != "" {
		text = w.words.In(text, u)
	}
	if e.Way != "" {
		text += " (" + e.Way + ")"
	}
	if e.Tries == sessions.Practice {
		text += ", " + w.words.Practice
	}
	return text
}

// notes returns the longer texts of an exercise.
func (w *writer) notes(e *sessions.Exercise) []Note {
	var notes []Note
	for _, n := range []Note{{"", e.How}, {w.words.Easier, w.variant(e.Easier)}, {w.words.Harder, w.variant(e.Harder)}, {w.words.Weight, e.Load},
		{w.words.Called, w.calls(e)}, {w.words.WriteDown, w.measure(e)}} {
		if n.Text = strings.TrimSpace(safetext.Clean(n.Text)); n.Text != "" {
			notes = append(notes, n)
		}
	}
	return notes
}
