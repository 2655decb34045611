package text

import (
	"strings"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// Exercise returns the name of the exercise of step i, or of its easier
// variant, made safe to show. It is empty if the step belongs to none.
func (l *Language) Exercise(p *plan.Plan, i int, easier bool) string {
	e := p.Exercise(i)
	if e == nil {
		return ""
	}
	return safetext.Clean(l.Name(e.In(easier).Name))
}

// Side returns what a side is called in a sentence, and nothing for work on both
// sides at once.
func (l *Language) Side(s plan.Side) string {
	switch s {
	case plan.Left:
		return l.Step.LeftSide
	case plan.Right:
		return l.Step.RightSide
	case plan.Alternate:
		return l.Step.Alternating
	}
	return ""
}

// Dose returns what a work step asks for: "10 reps", or "20 s" if it is timed.
func (l *Language) Dose(s plan.Step) string {
	switch s.Reps {
	case 0:
		return units.Sentence(s.Length)
	case 1:
		return l.Step.OneRep
	}
	return l.Step.Reps(s.Reps)
}

// Round returns "round 2 of 3", or nothing if the block has one round or the
// step belongs to no block.
func (l *Language) Round(p *plan.Plan, i int) string {
	s := p.Steps[i]
	if s.Block == 0 || p.Blocks[s.Block-1].Rounds == 1 {
		return ""
	}
	return l.Step.Round(s.Round, p.Blocks[s.Block-1].Rounds)
}

// Cues returns the cues of the exercise of step i, or of its easier variant,
// in one line.
func (l *Language) Cues(p *plan.Plan, i int, easier bool) string {
	e := p.Exercise(i)
	if e == nil {
		return ""
	}
	e = e.In(easier)
	cues := make([]string, len(e.Cues))
	for j, c := range e.Cues {
		cues[j] = safetext.Clean(l.Name(c))
	}
	return strings.Join(cues, ", ")
}

// Away says how long the host was away, and what became of the run: it is
// paused, or goes on if nobody is at the keys. The length is below zero if the
// wall clock was set back.
func (l *Language) Away(d time.Duration, alone bool) string {
	then := l.Step.ThenPaused
	if alone {
		then = l.Step.ThenAlone
	}
	if d < 0 {
		return l.Step.SetBack + then
	}
	return l.Step.Away(units.Sentence(d.Round(time.Second))) + then
}

// Outcome returns how a set ended, in a word.
func (l *Language) Outcome(o engine.Outcome) string {
	switch o {
	case engine.Partial:
		return l.Step.DoneInPart
	case engine.Skipped:
		return l.Step.Skipped
	}
	return l.Step.Done
}

// Try says a try in words, such as "try 2" or "practice 1, left".
func (l *Language) Try(t plan.Try) string {
	said := l.Step.Try(t.Number)
	if t.Practice {
		said = l.Step.Practice(t.Number)
	}
	switch t.Side {
	case plan.Left:
		said += ", " + l.Step.Left
	case plan.Right:
		said += ", " + l.Step.Right
	}
	return said
}

// Measure returns what a result is of.
func (l *Language) Measure(m sessions.Measure) string { return l.Screen.Measures[string(m)] }

// NoResult says what a result must be that was not understood.
func (l *Language) NoResult(m sessions.Measure) string {
	switch m {
	case sessions.MeasureTime:
		return l.Screen.NoTime
	case sessions.MeasureCount:
		return l.Screen.NoCount
	}
	return l.Screen.NoLength
}
