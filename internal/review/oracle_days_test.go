package review

import (
	"math"
	"slices"
)

// session counts what is of the day that a session began on.
func (o *oracle) session(r *told, day int) {
	o.begun[day]++
	o.both(day, func(s *sums) {
		s.sessions++
		if r.complete {
			s.complete++
		}
		if r.rpe != nil {
			s.rated++
		}
		if r.pain != nil && *r.pain {
			s.painful++
		}
		done := map[[2]int]bool{}
		for _, l := range r.sets {
			s.reps.Done += l.Set.Reps
			s.reps.Prescribed += l.Set.Planned
			if l.Set.Outcome == "done" {
				done[[2]int{l.Set.Block, l.Set.Round}] = true
			}
		}
		s.sets.Done += len(done)
		count := len(done) // one exercise a round: a set is a round
		if r.rounds != nil {
			count = 0
			for _, n := range r.rounds {
				count += n
			}
		}
		if r.rounds == nil && r.paper() {
			s.unknown++
			return
		}
		s.rounds.Done += count
		for _, b := range r.lines[0].Started.Blocks {
			s.rounds.Prescribed += b.Rounds
			if !r.paper() {
				s.sets.Prescribed += b.Sets
			}
		}
	})
}

// part is what was done of a run on one day.
type part struct {
	worked    float64
	contacts  int
	uncounted bool
}

// parts shares a run out among the days of its sets.
func (o *oracle) parts(r *told, day int) (parts map[int]*part, total float64) {
	parts = map[int]*part{}
	for _, l := range r.sets {
		if l.Set.Outcome == "skipped" && l.Set.TakenS == 0 {
			continue
		}
		d := min(number(r.moment(l)), o.latest)
		if parts[d] == nil {
			parts[d] = &part{}
		}
		parts[d].worked += l.Set.TakenS
		total += l.Set.TakenS
		if l.Set.Contacts == nil {
			parts[d].uncounted = true
		} else {
			parts[d].contacts += *l.Set.Contacts
		}
	}
	if total > 0 {
		return parts, total
	}
	p := &part{worked: 1}
	if r.paper() {
		n, known := r.paperContacts()
		p.contacts, p.uncounted = n, !known && r.prescribed()
	}
	return map[int]*part{day: p}, 1
}

// daily shares contacts, length and load out among the days of the sets.
func (o *oracle) daily(r *told, day int) {
	load := 0.0
	if r.rpe != nil {
		load = *r.rpe * r.elapsed / 60
	}
	parts, total := o.parts(r, day)
	uncounted := false
	for d, p := range parts {
		w, share := o.week(d), p.worked/total
		o.worked[d] = true
		w.contacts += p.contacts
		o.all.contacts += p.contacts
		uncounted = uncounted || p.uncounted
		if p.uncounted {
			w.uncounted++
		}
		w.elapsed += share * r.elapsed
		w.load[d] += share * load
		if r.rpe == nil {
			w.lacks[d] = true
		}
	}
	if uncounted {
		o.all.uncounted++
	}
	o.all.elapsed += r.elapsed
}

// rests judges those that any work followed.
func (o *oracle) rests(r *told) {
	for i, l := range r.lines {
		followed := slices.ContainsFunc(r.lines[i:], func(m raw) bool {
			return m.Set != nil && (m.Set.Outcome != "skipped" || m.Set.TakenS > 0)
		})
		if l.Rest == nil || !followed {
			continue
		}
		day := min(number(r.moment(l)), o.latest)
		off := math.Round((l.Rest.TakenS-l.Rest.PrescribedS)*1000) / 1000
		tolerated := max(3, .05*l.Rest.PrescribedS)
		o.both(day, func(s *sums) {
			switch {
			case off < -tolerated:
				s.early++
			case off > tolerated:
				s.overrun++
			default:
				s.kept++
			}
		})
		if day > o.today-14 && day <= o.today {
			o.cut14.Prescribed++
			if off < -tolerated {
				o.cut14.Done++
			}
		}
	}
}
