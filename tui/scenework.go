package tui

import (
	"fmt"
	"strings"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/units"
	"coldfloor/tui/palette"
)

// counts fills in what is counted. Time left is rounded up, so that it never
// reads nothing while there is something.
func (s *scene) counts(p *plan.Plan, v engine.View) {
	left := ceilSecond(v.Remaining)
	if v.Phase == engine.CountedIn {
		left = ceilSecond(v.CountIn)
	}
	s.last = left <= lastSeconds*time.Second && s.phase != palette.Paused && s.phase != palette.OwnPace
	switch s.phase {
	case palette.Paused:
		s.count = counted{figure: s.lang.Screen.Resume, widest: s.lang.Screen.Resume}
		s.dose = s.lang.Screen.ToGo(units.Clock(left))
	case palette.Work, palette.OwnPace:
		s.work(p, v)
	default:
		s.count = figure(timeLeft(left))
	}
}

// timeLeft returns a time left, the last seconds of it alone, and so larger.
func timeLeft(left time.Duration) string {
	if left <= bareSeconds*time.Second {
		return fmt.Sprint(int(left / time.Second))
	}
	return units.Clock(left)
}

// work fills in what is counted of work in hand: its reps, as far as it has
// any, then the phase of the rep, then the time.
func (s *scene) work(p *plan.Plan, v engine.View) {
	step := p.Steps[v.Step]
	left := units.Clock(ceilSecond(v.Remaining)) // a bare figure beside another says nothing
	if s.phase == palette.OwnPace {
		left = s.lang.Screen.Target(units.Clock(v.Elapsed.Truncate(time.Second)), units.Clock(v.Length))
	}
	rhythm := p.Rhythm(v.Step, v.Easier)
	beat, ok := rhythm.At(v.Elapsed)
	phase, hasPhase := s.phaseText(beat, v.Elapsed, rhythm.Rep)
	switch {
	case ok && beat.Of > 0:
		s.count = figure(fmt.Sprint(beat.Rep))
		s.count.widest = strings.Repeat("0", len(fmt.Sprint(beat.Of)))
		if s.phase == palette.OwnPace {
			s.count.before = s.lang.Screen.About
			hasPhase = false // nobody knows where in a rep the player is
		}
		s.dose = s.lang.Side(step.Side)
		if s.side == plan.Alternate && s.phase == palette.Work {
			s.side, s.dose = beat.Side, s.lang.Side(beat.Side)
		}
		s.count.beside = []aside{beside(left), beside(s.lang.Screen.Of(beat.Of))}
	case s.phase == palette.OwnPace:
		s.count = figure(units.Clock(v.Elapsed.Truncate(time.Second)))
		s.count.beside = []aside{beside(s.lang.Screen.Target(units.Clock(v.Elapsed.Truncate(time.Second)), units.Clock(v.Length)))}
	default:
		s.count = figure(timeLeft(ceilSecond(v.Remaining)))
	}
	if hasPhase {
		s.count.beside = append([]aside{phase}, s.count.beside...)
	}
}

// phaseText says which phase of a rep it is and how long that still lasts, with
// room for every other phase of a rep of the given length.
func (s *scene) phaseText(b plan.Beat, elapsed, rep time.Duration) (aside, bool) {
	t := &s.lang.Screen
	names := map[plan.RepPhase]string{plan.Lowering: t.Down, plan.HoldLow: t.Hold, plan.Rising: t.Up, plan.HoldHigh: t.Hold}
	name, ok := names[b.Phase]
	if !ok {
		return aside{}, false
	}
	var longest string
	for _, n := range names {
		if len(n) > len(longest) || len(n) == len(longest) && n < longest {
			longest = n
		}
	}
	longest += " " + strings.Repeat("0", len(fmt.Sprint(int(ceilSecond(rep)/time.Second))))
	if b.Length < time.Second {
		return aside{name, longest}, true
	}
	return aside{fmt.Sprintf("%s %d", name, ceilSecond(b.End()-elapsed)/time.Second), longest}, true
}
