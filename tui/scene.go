package tui

import (
	"fmt"
	"strings"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
	"coldfloor/internal/words"
	"coldfloor/tui/palette"
)

// How much of a step counts as its last seconds. The end of a rest is
// announced earlier, because the player has to get into position.
const (
	lastSeconds = 3
	bareSeconds = 10 // from here on seconds are shown alone, and so larger
)

// scene is what there is to see at one moment, in words; layout decides how
// much of it finds room, and where. Its texts are safe to show.
type scene struct {
	phase    palette.Phase
	word     string    // what is going on, in capitals
	time     string    // left of the step, or worked so far where a key ends it
	last     bool      // the step is in its last seconds
	side     plan.Side // of the work in hand or to come; where a switch leads
	movement string    // in hand, or to come where nothing is in hand
	dose     string    // of that movement, with its side
	reps     string    // the dose without the side
	cue      string    // for the work in hand
	how      string    // of the movement to come
	upcoming bool      // movement is the next, not the present one
	round    string
	block    string
	then     string // what follows the movement
	left     time.Duration
	clock    time.Duration // session clock
}

// sceneOf returns what there is to see of v in a run with options o.
func sceneOf(p *plan.Plan, v engine.View, o engine.Options) scene {
	if v.Phase == engine.Over {
		return scene{phase: palette.Done, word: palette.Done.Look().Word, time: units.Clock(v.Clock), clock: v.Clock, block: safetext.Clean(p.Session.Title)}
	}
	step := p.Steps[v.Step]
	s := scene{phase: phaseOf(step, v, o), clock: v.Clock, left: v.Left - v.Remaining + ceilSecond(v.Remaining)}
	s.word = s.phase.Look().Word
	if s.phase == palette.OwnPace {
		s.word += ": KEY WHEN DONE"
	}
	s.count(v)
	s.task(p, v)
	return s
}

// phaseOf returns the phase of a moment.
func phaseOf(step plan.Step, v engine.View, o engine.Options) palette.Phase {
	switch {
	case v.Phase == engine.Halted:
		return palette.Paused
	case v.Phase == engine.CountedIn:
		return palette.GetReady
	case o.Waits(step):
		return palette.OwnPace
	case step.Kind == plan.Rest && v.Remaining <= bareSeconds*time.Second:
		return palette.RestEnds
	}
	return palette.OfKind(step.Kind)
}

// count fills in the time to show. Time left is rounded up, so that it never
// reads nothing while there is something.
func (s *scene) count(v engine.View) {
	left := v.Remaining
	switch {
	case v.Phase == engine.CountedIn:
		left = v.CountIn
	case s.phase == palette.OwnPace:
		s.time = "+" + units.Clock(v.Elapsed) // it is not what is left
		return
	}
	seconds := int(ceilSecond(left) / time.Second)
	s.last = seconds <= lastSeconds && s.phase != palette.Paused
	s.time = units.Clock(ceilSecond(left))
	if seconds <= bareSeconds {
		s.time = fmt.Sprint(seconds)
	}
}

// task fills in what to do: of the work in hand, or of the work to come.
func (s *scene) task(p *plan.Plan, v engine.View) {
	i := v.Step
	if p.Steps[i].Kind != plan.Work {
		s.upcoming = true
		if next := p.NextWork(i); next >= 0 {
			i = next
		}
	}
	work := p.Steps[i]
	s.side = work.Side
	s.movement = words.Movement(p, i, v.Easier)
	s.reps = dose(work)
	s.dose = sideDose(work)
	s.cue = words.Cues(p, i, v.Easier)
	if e := p.Exercise(i); e != nil {
		s.how = safetext.Clean(e.In(v.Easier).How)
	}
	s.round = words.Round(p, i)
	if work.Block > 0 {
		s.block = safetext.Clean(p.Blocks[work.Block-1].Title)
	}
	s.then = then(p, i)
}

// dose returns what a work step asks for. A unit of one letter would read as a
// figure among capitals: 5S, 1M.
func dose(s plan.Step) string {
	switch {
	case s.Reps > 0:
		return words.Dose(s)
	case s.Length < time.Minute:
		return strings.TrimSuffix(units.FormatDuration(s.Length), "s") + " sec"
	}
	return units.Clock(s.Length) + " min"
}

// sideDose returns the dose of a work step after the side that it is for.
func sideDose(s plan.Step) string {
	if side := words.Side(s.Side); side != "" {
		return side + ", " + dose(s)
	}
	return dose(s)
}

// then says what follows work step i.
func then(p *plan.Plan, i int) string {
	if i+1 >= len(p.Steps) {
		return "then done"
	}
	switch s := p.Steps[i+1]; s.Kind {
	case plan.Rest:
		return "then rest " + units.Clock(s.Length)
	case plan.Switch:
		return "then the " + words.Side(s.Side)
	case plan.Work:
		return "then " + words.Movement(p, i+1, false) + ", " + sideDose(s)
	}
	if next := p.NextWork(i); next >= 0 {
		return "then " + words.Movement(p, next, false) + ", " + sideDose(p.Steps[next])
	}
	return "then done"
}

// ceilSecond rounds up to whole seconds, so that time left never reads nothing
// while there is some.
func ceilSecond(d time.Duration) time.Duration {
	return (d + time.Second - 1).Truncate(time.Second)
}
