package review

import (
	"coldfloor/internal/journal"
	"coldfloor/internal/units"
)

// Done returns the figures of a run that the player's Season holds.
func (p *Player) Done(r *journal.Run) *Session { return p.planned[r].session(p.Name) }

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
func (t *Total) begun(s *gist) {
	t.Sessions++
	if s.State == journal.Complete {
		t.Complete++
	}
	if s.known {
		t.Rounds.add(s.rounds)
	} else if s.Started != nil {
		t.RoundsUnknown++
	}
	t.Sets.add(s.sets)
	t.Reps.add(s.reps)
	if s.rated() {
		t.Rated++
	}
	if s.Painful() {
		t.Painful++
	}
}

func (s *Share) add(t Share) {
	s.Done += t.Done
	s.Prescribed += t.Prescribed
}

// jumped counts foot contacts, of a session or of a day of it.
func (t *Total) jumped(n journal.Count) {
	t.Contacts += n.N
	if !n.Known {
		t.Uncounted++
	}
}

// whole counts all of a session.
func (t *Total) whole(s *gist) {
	t.begun(s)
	t.jumped(ContactsOf(s.Run))
	t.Elapsed += s.Elapsed
	for i := range s.rests {
		t.Rest.take(&s.rests[i])
	}
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
func (s *gist) days(latest day) []dated {
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
