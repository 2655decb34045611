package season

import (
	"testing"
	"time"

	"coldfloor/internal/journal"
)

// What a day, a week and a stretch of days can be asked.
func TestAsking(t *testing.T) {
	s := Of(winter(t), []*journal.Run{done("a", "up.yaml", "2026-12-08"), done("b", "else.yaml", "2026-12-09")}, date("2026-12-12"))
	if all := s.On(date("2026-12-11")); len(all) != 2 || all[0].Slot.Session != "up.yaml" {
		t.Errorf("on Friday: %d", len(all))
	}
	if open := s.Open(); len(open) != 3 || open[0].Date != date("2026-12-09") {
		t.Errorf("%d open", len(open))
	}
	if missed := s.Missed(); len(missed) != 0 {
		t.Errorf("%d missed", len(missed))
	}
	if next := s.Next(); next == nil || next.Date != date("2026-12-14") {
		t.Errorf("next %v", next)
	}
	if n := s.Between(date("2026-12-07"), date("2026-12-09")); n != (Count{Planned: 2, Done: 1, Late: 1, Due: 1, Come: 2}) {
		t.Errorf("three days: %+v", n)
	}
	if len(s.Others) != 1 || s.Others[0].ID != "b" {
		t.Errorf("others: %d", len(s.Others))
	}
	over := Of(winter(t), nil, date("2027-02-01"))
	if over.Next() != nil || len(over.Missed()) != 11 {
		t.Errorf("after the plan: next %v, %d missed", over.Next(), len(over.Missed()))
	}
}

// The dose of a day is that of its session in the week of its dose.
func TestDose(t *testing.T) {
	s := Of(winter(t), nil, date("2026-12-12"))
	d := s.On(date("2026-12-07"))[0]
	want := Dose{Length: 30 * time.Second, Rounds: 1, Sets: 1, Reps: 10, Contacts: journal.CountOf(10)} // 10 s of lead-in, ten reps of 2 s
	if got := s.Dose(d); got != want || s.Dose(d) != want {
		t.Errorf("got %+v", got)
	}
}

// A day that was done before its date is one of those that have come: never
// more is done than was asked.
func TestDoneAhead(t *testing.T) {
	s := Of(winter(t), []*journal.Run{done("a", "up.yaml", "2026-12-06")}, date("2026-12-06"))
	if c := s.Weeks[0].Count(s.Today); c.Done != 1 || c.Come != 1 {
		t.Errorf("%d done of %d", c.Done, c.Come)
	}
}
