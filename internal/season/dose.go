package season

import (
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
)

// Dose is what a day of the plan asks for.
type Dose struct {
	Length             time.Duration
	Rounds, Sets, Reps int           // rounds of all blocks; both sides of reps
	Contacts           journal.Count // foot contacts; not all known if there are jumps that the session does not count
}

// Dose returns what a day asks for, in the week of its dose.
func (s *Season) Dose(d *Day) Dose {
	if s.doses == nil {
		s.doses = map[doseOf]Dose{}
	}
	key := doseOf{d.Slot.Session, d.Planned.Dose}
	dose, ok := s.doses[key]
	if !ok {
		p := plan.Of(s.Plan.Session(d.Planned))
		dose = Dose{Length: p.Total, Sets: len(p.Sets), Reps: p.Reps, Contacts: journal.Count{N: p.Contacts, Known: jumps.AllCounted(p.Session.Blocks...)}}
		for _, b := range p.Blocks {
			dose.Rounds += b.Rounds
		}
		s.doses[key] = dose
	}
	return dose
}

// doseOf names a session of one week.
type doseOf struct {
	session string
	week    int
}
