package journal

import "time"

// figures is what a lean run keeps of what was left out of it, and of where the
// journal has it.
type figures struct {
	rounds               []int // as RoundsCounted
	sets, reps, contacts Count // as SetsDone, Reps and Contacts
	ended                int   // sets that ended
	worked               bool  // one of them was not skipped
	jumped               bool
	jumpedAt, end        time.Time
	days                 []Day

	extents  []extent
	problems []string // with its lines
	stale    bool     // it has lines that the run was not made of
}

// extent is a stretch of a journal, of whole lines.
type extent struct {
	at, size int64
	before   int // lines that stand before it
}

// leanOf makes the lean run of its lines, which stand in those stretches.
func leanOf(lines []Entry, extents []extent, starts map[string]*Started) *Run {
	r, problems := build(lines)
	f := &figures{rounds: r.RoundsCounted(), sets: r.SetsDone(), reps: r.Reps(), contacts: r.Contacts(),
		ended: len(r.Sets), worked: r.anyWorked(), end: r.End(), days: r.Days(), extents: extents}
	f.jumpedAt, f.jumped = r.Jumped()
	for _, p := range problems {
		f.problems = append(f.problems, p.Error())
	}
	r.lean = f
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
