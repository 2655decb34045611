package logbook

import (
	"fmt"
	"math"
	"strings"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/safetext"
	"coldfloor/internal/texttable"
	"coldfloor/internal/units"
)

// Show returns one run in full: what was said of it, then set by set and rest
// by rest what was prescribed and what was taken, then what was put right.
func Show(r *journal.Run, live func(id string) bool) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n", safetext.Clean(r.Title()))
	shown := faceOf(time.Local, times(r)...)
	fmt.Fprintf(&b, "%s, %s long, %s\nrun %s\n\n", shown.at(r.Start, "Monday 2 January 2006 15:04"),
		units.Clock(r.Elapsed), State(r, live), r.ID)
	b.WriteString(facts(r, shown).String())
	if len(r.Sets)+len(r.Rests) > 0 {
		b.WriteString("\n" + course(r).String())
	}
	if len(r.Measures) > 0 {
		b.WriteString("\n" + Measures(r))
	}
	if len(r.Amendments) > 0 {
		b.WriteString("\nreported and corrected, in order\n" + amendments(r, shown).String())
	}
	b.WriteString(shown.note(time.Now()))
	return b.String()
}

// facts sets what is known of the run as a whole.
func facts(r *journal.Run, shown face) texttable.Table {
	var t texttable.Table
	add := func(name, value string) { t.Rows = append(t.Rows, []string{name, value}) }
	if r.Started != nil && r.Started.Player != "" {
		add("player", r.Started.Player)
	}
	if r.Started != nil && r.Started.Weeks != nil {
		add("plan", placeInPlan(r.Started.Weeks))
	}
	add("rounds", roundsByName(r))
	if contacts := r.Contacts(); contacts != (journal.Count{Known: true}) {
		add("foot contacts", contacts.String())
	}
	add("effort", effort(r))
	if load, ok := r.Load(); ok {
		add("load", fmt.Sprintf("%.0f (effort × %.1f min)", load, r.Elapsed.Minutes()))
	}
	statements(r, shown, add)
	if r.Pauses > 0 {
		add("pauses", fmt.Sprint(r.Pauses))
	}
	return t
}

// placeInPlan says for which day of which plan of weeks a run was.
func placeInPlan(w *journal.Weeks) string {
	day := w.Date
	if d, err := units.ParseDate(w.Date); err == nil {
		day = d.Short()
	}
	return fmt.Sprintf("%s, week %d, for %s", w.Title, w.Week, day)
}

// roundsByName returns the rounds done block by block, and what was counted
// if the player said otherwise.
func roundsByName(r *journal.Run) string {
	blocks, done, counted := r.Blocks(), r.RoundsDone(), r.RoundsCounted()
	if len(blocks) == 0 {
		return rounds(r)
	}
	parts := make([]string, len(blocks))
	for i, b := range blocks {
		parts[i] = fmt.Sprintf("%s %s of %d", b.Title, figure(done, i), b.Rounds)
		if i < len(counted) && i < len(done) && counted[i] != done[i] {
			parts[i] += fmt.Sprintf(" (counted: %d)", counted[i])
		}
	}
	return strings.Join(parts, ", ")
}

// course sets every set and every rest in the order done.
func course(r *journal.Run) texttable.Table {
	t := texttable.Table{
		Header: []string{"block", "round", "what", "prescribed", "taken", "difference", "how"},
		Right:  []bool{true, true, false, true, true, true},
	}
	at := func(block, round int) []string { return []string{fmt.Sprint(block), fmt.Sprint(round)} }
	rests := r.Rests
	rest := func() {
		x := rests[0]
		rests = rests[1:]
		t.Rows = append(t.Rows, append(at(x.Block, x.Round), "  rest", clock(x.PrescribedS), clock(x.TakenS),
			difference(x.TakenS-x.PrescribedS), howRest(&x)))
	}
	for _, s := range r.Sets {
		for len(rests) > 0 && came(&rests[0], &s) {
			rest()
		}
		t.Rows = append(t.Rows, append(at(s.Block, s.Round), safetext.Fit(doneOf(&s), 44), clock(s.PlannedS), clock(s.TakenS),
			difference(s.TakenS-s.PlannedS), howSet(&s)))
	}
	for len(rests) > 0 {
		rest()
	}
	return t
}

// came reports whether a rest ended before a set did.
func came(x *journal.Rest, s *journal.Set) bool {
	if x.At.Equal(s.At) {
		return before(x.Place, s.Place)
	}
	return x.At.Before(s.At)
}

// before reports whether a rest after the set at a stands before the set at b.
func before(a, b journal.Place) bool {
	if a.Block != b.Block {
		return a.Block < b.Block
	}
	if a.Round != b.Round {
		return a.Round < b.Round
	}
	return a.Exercise < b.Exercise
}

// doneOf names the exercise of a set and the reps done of it.
func doneOf(s *journal.Set) string {
	name := safetext.Clean(s.Name)
	if s.Easier {
		name += " (easier)"
	}
	switch {
	case s.Planned == 0:
	case s.Reps == s.Planned:
		name += ", " + units.Count(s.Reps, "rep")
	default:
		name += fmt.Sprintf(", %d of %s", s.Reps, units.Count(s.Planned, "rep"))
	}
	return name
}

func howSet(s *journal.Set) string {
	switch {
	case s.Outcome == string(engine.Partial):
		return "done in part"
	case s.Outcome == string(engine.Skipped):
		return "skipped"
	case s.End == string(engine.ByFinish):
		return "ended by key"
	}
	return safetext.Clean(s.Outcome)
}

func howRest(x *journal.Rest) string {
	how := map[string]string{string(engine.BySkip): "left early", string(engine.ByStop): "stopped in it",
		string(engine.ByBack): "went back", string(engine.ByRepeat): "repeated the set"}[x.End]
	if x.PausedS > 0 {
		paused := "paused " + clock(x.PausedS)
		if how != "" {
			return how + ", " + paused
		}
		return paused
	}
	return how
}

func clock(s float64) string { return units.Clock(units.Seconds(s)) }

// difference returns a signed number of seconds, or nothing below half of one.
func difference(s float64) string {
	if math.Abs(s) < 0.5 {
		return ""
	}
	return fmt.Sprintf("%+.0f s", s)
}
