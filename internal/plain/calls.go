package plain

import (
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
)

// justNow is how long a call is worth a line: one that comes later points a player
// where the call no longer does.
const justNow = 500 * time.Millisecond

// nextCall returns the first call in work step i, which lasts so long, after a
// time since its start.
func (p *Printer) nextCall(i int, length, after time.Duration) (plan.Call, bool) {
	for c := range p.plan.Calls(i, p.seed, length) {
		if c.At > after {
			return c, true
		}
	}
	return plan.Call{}, false
}

// call writes each direction that was called by now and not seen to as a line, its
// word alone, unless calls are spoken. One that comes before the line before it can
// have been heard, or that takes longer to read than there is until the next, is
// left to the ear: a screen reader that lags behind calls is worse than none. It
// returns how long it is until the next call, and whether there is one to come.
func (p *Printer) call(v engine.View, spoken bool) (in time.Duration, ok bool) {
	if v.Phase != engine.Running && v.Phase != engine.Overtime {
		return 0, false
	}
	for {
		c, any := p.nextCall(v.Step, v.Length, p.called)
		if !any || c.At > v.Elapsed {
			return c.At - v.Elapsed, any
		}
		p.called = c.At
		word := p.lang.Direction(p.plan.Exercise(v.Step).Calls[c.Direction])
		if !spoken && v.Elapsed-c.At <= justNow && v.Clock >= p.free && ReadingTime(word) <= c.Gap {
			p.say(v.Clock, word)
		}
	}
}
