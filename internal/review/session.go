package review

import (
	"coldfloor/internal/journal"
	"coldfloor/internal/units"
)

// SessionOf returns a run's figures, its rests judged with the tolerance.
func SessionOf(run *journal.Run, player string, t Tolerance) *Session {
	s := &Session{Run: run, Player: player}
	done := run.RoundsDone()
	s.Known = done != nil
	for i, b := range run.Blocks() {
		blk := Block{Title: b.Title, Share: Share{Prescribed: b.Rounds}}
		if i < len(done) {
			blk.Done = done[i]
		}
		s.Rounds = append(s.Rounds, blk)
		if !run.OnPaper() {
			s.Sets.Prescribed += b.Sets
		}
	}
	for i := range run.Sets {
		s.Reps.Done += run.Sets[i].Reps
		s.Reps.Prescribed += run.Sets[i].Planned
	}
	if run.Started != nil {
		s.Sets.Done = run.SetsDone().N
	}
	for i := range run.Rests {
		s.Rest.add(t, &run.Rests[i])
	}
	s.Load, s.Rated = run.Load()
	return s
}

// AllRounds returns the rounds of all blocks together, and false if nobody
// knows how many were done.
func (s *Session) AllRounds() (Share, bool) {
	var all Share
	for _, b := range s.Rounds {
		all.Done += b.Done
		all.Prescribed += b.Prescribed
	}
	return all, s.Known
}

// begun counts what is of the date that a session began on.
func (t *Total) begun(s *Session) {
	t.Sessions++
	if s.State == journal.Complete {
		t.Complete++
	}
	if rounds, known := s.AllRounds(); known {
		t.Rounds.Done += rounds.Done
		t.Rounds.Prescribed += rounds.Prescribed
	} else if s.Started != nil {
		t.RoundsUnknown++
	}
	t.Sets.Done += s.Sets.Done
	t.Sets.Prescribed += s.Sets.Prescribed
	t.Reps.Done += s.Reps.Done
	t.Reps.Prescribed += s.Reps.Prescribed
	if s.Rated {
		t.Rated++
	}
	if s.Painful() {
		t.Painful++
	}
}

// jumped counts foot contacts, of a session or of a day of it.
func (t *Total) jumped(n journal.Count) {
	t.Contacts += n.N
	if !n.Known {
		t.Uncounted++
	}
}

// whole counts all of a session.
func (t *Total) whole(s *Session) {
	t.begun(s)
	t.jumped(ContactsOf(s.Run))
	t.Elapsed += s.Elapsed
	t.Rest.Merge(&s.Rest)
}

// ContactsOf returns the foot contacts of a run. Of a run of which nobody said how
// much was done, and which had no jumps prescribed, there are none.
func ContactsOf(r *journal.Run) journal.Count {
	n := r.Contacts()
	if _, jumped := r.Jumped(); n.Unknown() && r.OnPaper() && !jumped {
		return journal.CountOf(0)
	}
	return n
}

// dated is a day's part of a session.
type dated struct {
	day      day
	part     float64
	contacts journal.Count
}

// days returns the days that a session was worked at, none after latest.
func (s *Session) days(latest day) []dated {
	var all []dated
	for _, d := range s.Run.Days() {
		part := dated{day: min(day(units.DateOf(d.Date)), latest), part: d.Part, contacts: d.Contacts}
		if d.Part == 1 {
			part.contacts = ContactsOf(s.Run)
		}
		all = append(all, part)
	}
	return all
}
