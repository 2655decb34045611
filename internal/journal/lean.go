package journal

import "time"

// lean is what a run keeps of what was left out of it.
type lean struct {
	ended    int  // sets that ended
	worked   bool // one of them was not skipped
	jumped   bool
	jumpedAt time.Time
	end      time.Time
	problems []string // with its lines
	stale    bool     // it has lines that the run was not made of

	own   *figures // nil: they are still coded
	coded []byte
}

// figures is what is seldom asked for of a lean run.
type figures struct {
	rounds               []int // as RoundsCounted
	sets, reps, contacts Count // as SetsDone, Reps and Contacts
	days                 []Day
	extents              []extent // that hold its lines
}

// figures returns the figures of a lean run.
func (r *Run) figures() *figures {
	if r.lean.own != nil {
		return r.lean.own
	}
	k, f := keeper{}, &figures{}
	k.Reading, k.Buf = true, r.lean.coded
	k.figures(f, r)
	return f
}

// extent is a stretch of a journal, of whole lines.
type extent struct {
	at, size int64
	before   int // lines that stand before it
}

// leanOf makes the lean run of its lines, which stand in those stretches.
func leanOf(lines []Entry, extents []extent, starts map[string]*Started) *Run {
	r, problems := build(lines)
	own := &figures{rounds: r.RoundsCounted(), sets: r.SetsDone(), reps: r.Reps(), contacts: r.Contacts(), days: r.Days(), extents: extents}
	l := &lean{ended: len(r.Sets), worked: r.anyWorked(), end: r.End(), own: own}
	l.jumpedAt, l.jumped = r.Jumped()
	for _, p := range problems {
		l.problems = append(l.problems, p.Error())
	}
	r.lean = l
	r.Sets, r.Rests, r.Measures, r.Amendments = nil, nil, nil, nil
	r.Started = shared(r.Started, starts)
	return r
}

// shared returns what was prescribed without the session's text, once for all
// runs of the same.
func shared(s *Started, starts map[string]*Started) *Started {
	if s == nil {
		return nil
	}
	plain := *s
	plain.Text = ""
	k := keeper{}
	k.started(&plain)
	if one := starts[string(k.Buf)]; one != nil {
		return one
	}
	starts[string(k.Buf)] = &plain
	return &plain
}

// extend takes the place of one more line.
func (f *figures) extend(e extent) {
	if n := len(f.extents); n > 0 {
		switch last := &f.extents[n-1]; {
		case last.at <= e.at && e.at+e.size <= last.at+last.size:
			return // a second record of the same line
		case last.at+last.size == e.at:
			last.size += e.size
			return
		}
	}
	f.extents = append(f.extents, e)
}
