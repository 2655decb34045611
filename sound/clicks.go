package sound

import (
	"time"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// within books the soft clicks inside the work of step i, where asked for. The
// click that would fall on the start cue is left out.
func (d *drawing) within(i int, s span) {
	if d.plan.Steps[i].Kind != plan.Work {
		return
	}
	e := d.plan.Exercise(i).In(d.view.EasierAt(d.plan, i))
	if e.Rep <= 0 {
		return
	}
	switch {
	case e.Tempo != sessions.Tempo{}:
		if d.opts.Tempo {
			d.phases(e.Tempo, s)
		}
	case d.opts.Reps && d.plan.Steps[i].Reps > 0:
		for at := s.start + e.Rep; at < s.end; at += e.Rep {
			d.add(at, Rep)
		}
	}
}

// phases books a click as each lowering and each rising of a tempo begins. A
// phase of no length has none.
func (d *drawing) phases(t sessions.Tempo, s span) {
	click := func(at, length time.Duration, c *Clip) {
		if length > 0 && at > s.start && at < s.end {
			d.add(at, c)
		}
	}
	for at := s.start; at < s.end; at += t.Rep() {
		click(at, t.Lowering, Lowering)
		click(at+t.Lowering+t.Pause, t.Rising, Rising)
	}
}
