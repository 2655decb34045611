// Package words says in a few words what a step of a plan asks for. The
// running screen and the plain run both read from it, so that a player hears
// and sees the same names.
package words

import (
	"fmt"
	"strings"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
)

// Movement returns the name of the exercise of step i, or of its easier
// variant, made safe to show. It is empty where the step belongs to none.
func Movement(p *plan.Plan, i int, easier bool) string {
	e := p.Exercise(i)
	if e == nil {
		return ""
	}
	return safetext.Clean(e.In(easier).Name)
}

// Side returns "left side" or "right side", "sides in turn" for alternate
// reps, and nothing for work on both sides at once.
func Side(s plan.Side) string {
	switch s {
	case plan.Left, plan.Right:
		return string(s) + " side"
	case plan.Alternate:
		return "sides in turn"
	}
	return ""
}

// Dose returns what a work step asks for: "10 reps", or "20s" where it is
// timed.
func Dose(s plan.Step) string {
	switch s.Reps {
	case 0:
		return units.FormatDuration(s.Length)
	case 1:
		return "1 rep"
	}
	return fmt.Sprintf("%d reps", s.Reps)
}

// Round returns "round 2 of 3", or nothing where a block has one round or the
// step belongs to no block.
func Round(p *plan.Plan, i int) string {
	s := p.Steps[i]
	if s.Block == 0 || p.Blocks[s.Block-1].Rounds == 1 {
		return ""
	}
	return fmt.Sprintf("round %d of %d", s.Round, p.Blocks[s.Block-1].Rounds)
}

// Cues returns the cues of the exercise of step i, or of its easier variant,
// in one line.
func Cues(p *plan.Plan, i int, easier bool) string {
	e := p.Exercise(i)
	if e == nil {
		return ""
	}
	e = e.In(easier)
	cues := make([]string, len(e.Cues))
	for j, c := range e.Cues {
		cues[j] = safetext.Clean(c)
	}
	return strings.Join(cues, ", ")
}

// Away says how long the host was away, and what became of the run: it is
// paused, or goes on if nobody is at the keys. The length is below zero if the
// wall clock was set back.
func Away(d time.Duration, alone bool) string {
	then := "; paused where you left off"
	if alone {
		then = "; going on, for nobody is at the keys"
	}
	if d < 0 {
		return "the machine's clock was set back" + then
	}
	return "the machine was away " + Span(d) + then
}

// Span returns a length of time in whole seconds, as a player reads it: "42 s"
// below two minutes, "3 min 20 s" below an hour, then "1 h 5 min".
func Span(d time.Duration) string {
	d = d.Round(time.Second)
	h, m, s := d/time.Hour, d/time.Minute%60, d/time.Second%60
	switch {
	case d < 2*time.Minute:
		return fmt.Sprintf("%d s", d/time.Second)
	case h > 0 && m > 0:
		return fmt.Sprintf("%d h %d min", h, m)
	case h > 0:
		return fmt.Sprintf("%d h", h)
	case s > 0:
		return fmt.Sprintf("%d min %d s", m, s)
	}
	return fmt.Sprintf("%d min", m)
}

// Logged says where to find a session that was logged.
const Logged = "logged; coldfloor log show tells more, coldfloor log rate puts the rating right"

// Kept says what becomes of a run that was cut short from outside.
const Kept = "cut short; the next start offers to go on from here"
