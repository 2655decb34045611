package sheet

import (
	"slices"
	"strings"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// detailsOf says how the dose is done; first is the side that each round
// starts with.
func detailsOf(e *sessions.Exercise, first []plan.Side) []string {
	order, turn := "", ""
	if e.OneSided() && e.Sides != sessions.AlternateReps {
		order = string(first[0]) + " first"
		if slices.Contains(first, plan.Left) && slices.Contains(first, plan.Right) {
			order = "swap sides each round"
		}
		if e.Switch > 0 {
			turn = figure(e.Switch).String() + " to switch sides"
		}
	}
	return kept(order, turn, paceOf(e), contactsOf(e, len(first)))
}

// paceOf says how fast the reps are, and whether the clock ends the set.
func paceOf(e *sessions.Exercise) string {
	pace := ""
	switch {
	case e.Tempo != (sessions.Tempo{}):
		pace = "tempo " + tempoOf(e.Tempo)
	case e.Reps+e.RepsPerSide > 0:
		pace = figure(e.Rep).String() + " a rep"
	}
	if e.Finish == sessions.ByHand {
		return join(", ", pace, "no hurry")
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

// contactsOf says how often the feet land in a round.
func contactsOf(e *sessions.Exercise, rounds int) string {
	n := e.Contacts * (e.Reps + 2*e.RepsPerSide)
	if n == 0 || rounds == 1 {
		return some(n, "contact")
	}
	return units.Count(n, "contact") + " a round"
}

// variantOf says a variant in one sentence: its name, its pace and how to do it.
func variantOf(v sessions.Variant) string {
	text := v.Name
	switch {
	case v.Tempo != (sessions.Tempo{}):
		text += ", tempo " + tempoOf(v.Tempo)
	case v.Rep > 0:
		text += ", " + figure(v.Rep).String() + " a rep"
	}
	if v.How != "" {
		text += ": " + v.How
	}
	return text
}

// callsOf says which directions are called, and how often.
func callsOf(e *sessions.Exercise) string {
	if len(e.Calls) == 0 {
		return ""
	}
	return strings.Join(e.Calls, ", ") + ", every " + e.CallEvery.String()
}

// measureOf says what comes out of a set.
func measureOf(e *sessions.Exercise) string {
	if e.Measure == "" {
		return ""
	}
	text := string(e.Measure)
	if u := e.Measure.Unit(); u != "" {
		text += " in " + u
	}
	if e.Way != "" {
		text += " (" + e.Way + ")"
	}
	if e.Tries == sessions.Practice {
		text += ", practice"
	}
	return text
}

// notesOf returns the longer texts of an exercise.
func notesOf(e *sessions.Exercise) []Note {
	var notes []Note
	for _, n := range []Note{{"", e.How}, {"Easier", variantOf(e.Easier)}, {"Harder", variantOf(e.Harder)}, {"Load", e.Load}, {"Called", callsOf(e)}, {"Write down", measureOf(e)}} {
		if n.Text = strings.TrimSpace(safetext.Clean(n.Text)); n.Text != "" {
			notes = append(notes, n)
		}
	}
	return notes
}
