package tui

import (
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/sessions"
	"coldfloor/tui/palette"
)

// apart is for how long the arrow of a call goes before the next call, so that
// the same direction called again is seen to be called.
const apart = 600 * time.Millisecond

// callArrows are the arrows of the headings, as a player sees them who faces the
// screen.
var callArrows = map[sessions.Heading]string{
	sessions.Front: "↑", sessions.FrontRight: "↗", sessions.Right: "→", sessions.BackRight: "↘",
	sessions.Back: "↓", sessions.BackLeft: "↙", sessions.Left: "←", sessions.FrontLeft: "↖",
}

// calling reports whether directions are called at this moment of a run.
func calling(p *plan.Plan, v engine.View) bool {
	e := p.Exercise(v.Step)
	return e != nil && len(e.Calls) > 0 && p.Steps[v.Step].Kind == plan.Work && (v.Phase == engine.Running || v.Phase == engine.Overtime)
}

// called fills in the direction that is called, as one arrow with its word
// below it, or a word that points nowhere alone.
func (s *scene) called(p *plan.Plan, v engine.View, seed uint64) {
	if !calling(p, v) || s.phase == palette.Paused {
		return
	}
	s.calls = true
	c, ok := p.CallAt(v.Step, seed, v.Length, v.Elapsed)
	if !ok || v.Elapsed >= c.At+c.Gap-apart {
		return
	}
	word := safetext.Clean(p.Exercise(v.Step).Calls[c.Direction])
	shown := safetext.Clean(s.lang.Name(word))
	time := beside(timeLeft(ceilSecond(v.Remaining)))
	arrow, points := callArrows[sessions.HeadingOf(word)]
	if !points {
		s.count = counted{figure: shown, widest: shown, beside: []aside{time}}
		return
	}
	s.exercise, s.dose = shown, ""
	s.count = counted{figure: arrow, widest: arrow, beside: []aside{time}}
}

// untilCall tells when an arrow comes or goes.
func (m runScreen) untilCall(v engine.View, sooner func(time.Duration)) {
	p := m.run.Plan()
	if !calling(p, v) {
		return
	}
	for c := range p.Calls(v.Step, m.run.Options.Seed, v.Length) {
		for _, at := range []time.Duration{c.At, c.At + c.Gap - apart} {
			if at > v.Elapsed {
				sooner(at - v.Elapsed + time.Millisecond)
				return
			}
		}
	}
}
