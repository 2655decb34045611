package sound

import (
	"coldfloor/internal/plan"
)

// clicks books a soft click as each paced rep of step i begins, and with a
// tempo as each lowering and each rising begins. The click that would fall on
// the start cue is left out.
func (d *drawing) clicks(i int, s span) {
	if d.plan.Steps[i].Kind != plan.Work || !d.opts.Clicks {
		return
	}
	e := d.plan.Exercise(i).In(d.view.EasierAt(d.plan, i))
	for b := range plan.RhythmOf(d.plan.Steps[i], e).Beats {
		at := s.start + b.Start
		if at >= s.end {
			return
		}
		if at > s.start {
			d.add(at, clickOf(b.Phase))
		}
	}
}

// clickOf returns the click that a phase of a rep begins with, nil for none.
func clickOf(p plan.RepPhase) *Clip {
	switch p {
	case "":
		return Rep
	case plan.Lowering:
		return Lowering
	case plan.Rising:
		return Rising
	}
	return nil
}
