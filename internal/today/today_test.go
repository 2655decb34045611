package today

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// planOf reads a plan of two weeks of "jumps" and "floor".
func planOf(t *testing.T, more string) *weeks.Plan {
	t.Helper()
	p, err := weeks.Parse("plan.yaml", []byte("coldfloor: 1\ntitle: Winter\nstarts: 2026-12-07\nweeks: 2\n"+more), func(name string) (*sessions.Session, error) {
		contacts := 0
		if strings.HasPrefix(name, "jumps") {
			contacts = 1
		}
		return sessions.Parse(name, fmt.Appendf(nil, "coldfloor: 1\ntitle: %s\nblocks: [{title: Up, exercises: [{name: Work, reps: 10, contacts: %d}]}]", name, contacts))
	})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func moment(text string) time.Time {
	t, err := time.ParseInLocation("2006-01-02 15:04", text, time.Local)
	if err != nil {
		panic(err)
	}
	return t
}

// done is a run of a day's session, with jumps or without.
func done(p *weeks.Plan, d weeks.Planned, when string) *journal.Run {
	r := &journal.Run{ID: when, Start: moment(when), Elapsed: 10 * time.Minute, State: journal.Complete,
		Started: &journal.Started{Title: "any", Source: d.Slot.Session, Weeks: Started(p, d)}}
	s := journal.Set{Outcome: journal.Done, Name: "Work"}
	if strings.HasPrefix(d.Slot.Session, "jumps") {
		s.Contacts = journal.CountOf(10)
	}
	r.Sets = []journal.Set{s}
	return r
}

// told are moments, when the first session of the day was done, and what the
// screen says then.
var told = []struct {
	now  string
	done []string
	want string
}{
	{"2026-12-06 12:00", nil, `Winter
Sun 6 Dec, before the plan, which starts on Mon 7 Dec
today: nothing is planned
next: Mon 7 Dec, 18:30 jumps, week 1, 0:30, 1 set, 10 foot contacts
`},
	{"2026-12-07 17:00", nil, `Winter
Mon 7 Dec, week 1 of 2
today: 18:30 jumps, week 1, 0:30, 1 set, 10 foot contacts
next: Thu 10 Dec, floor, week 1, 0:30, 1 set
`},
	{"2026-12-07 20:00", []string{"2026-12-07 18:30"}, `Winter
Mon 7 Dec, week 1 of 2
today: 18:30 jumps, week 1, 0:30, 1 set, 10 foot contacts (done)
next: Thu 10 Dec, floor, week 1, 0:30, 1 set
`},
	{"2026-12-08 12:00", nil, `Winter
Tue 8 Dec, week 1 of 2
today: nothing is planned
next: Thu 10 Dec, floor, week 1, 0:30, 1 set
not done: Mon 7 Dec, jumps, week 1; today is free, and jumps before and after are 48 h away or more: do it, or leave it out
`},
	{"2026-12-09 12:00", nil, `Winter
Wed 9 Dec, week 1 of 2
today: nothing is planned
next: Thu 10 Dec, floor, week 1, 0:30, 1 set
not done: Mon 7 Dec, jumps, week 1; the next jumps are in 24 h, and 48 h should lie between: leave it out
`},
	{"2026-12-10 12:00", []string{"2026-12-10 10:00"}, `Winter
Thu 10 Dec, week 1 of 2
today: floor, week 1, 0:30, 1 set (done)
today: jumps, week 1, 0:30, 1 set, 10 foot contacts
next: Mon 14 Dec, 18:30 jumps, week 2, 0:20, 1 set, 5 foot contacts
not done: Mon 7 Dec, jumps, week 1; today has its own session, and a missed one is not added to it: leave it out
`},
	{"2026-12-11 12:00", []string{"2026-12-07 18:30", "2026-12-10 10:00"}, `Winter
Fri 11 Dec, week 1 of 2
a match tomorrow
today: nothing is planned
next: Mon 14 Dec, 18:30 jumps, week 2, 0:20, 1 set, 5 foot contacts
not done: Thu 10 Dec, jumps, week 1; it has jumps, and there is a match tomorrow: leave it out
`},
	{"2026-12-21 12:00", nil, `Winter
Mon 21 Dec, after the plan, which ended on Sun 20 Dec
today: nothing is planned
not done: Thu 17 Dec, jumps, week 2; today is free, and jumps before and after are 48 h away or more: do it, or leave it out
not done: Thu 17 Dec, floor, week 2; one missed session a day is enough: leave it out
not done: Mon 14 Dec, jumps, week 2; likewise
`},
}

// TestLines reads a player's days as the screen tells them.
func TestLines(t *testing.T) {
	p := planOf(t, `days: {mon: {session: jumps, at: "18:30"}, thu: [floor, jumps]}
matches: [2026-12-12]
lighter: [{week: 2, keep: 50%}]
`)
	for _, c := range told {
		var runs []*journal.Run
		for _, when := range c.done {
			runs = append(runs, done(p, p.On(units.DateOf(moment(when)))[0], when))
		}
		if got := strings.Join(Of(p, runs, moment(c.now), 48*time.Hour).Lines(&text.English), "\n") + "\n"; got != c.want {
			t.Errorf("%s:\n%swant\n%s", c.now, got, c.want)
		}
	}
}

// TestLastJumps holds an offer against the time since the last jumps, on both
// sides of it.
func TestLastJumps(t *testing.T) {
	p := planOf(t, "days: {mon: jumps, tue: [jumps]}\n")
	runs := []*journal.Run{done(p, p.Days()[0], "2026-12-07 18:30")}
	for at, offer := range map[string]bool{"2026-12-09 18:00": false, "2026-12-09 18:41": true} {
		d := Of(p, runs, moment(at), 48*time.Hour)
		if len(d.Missed) != 1 || d.Missed[0].Offer != offer {
			t.Errorf("%s: %+v", at, d.Missed)
		}
	}
}

// TestStarted holds what a run says of its day.
func TestStarted(t *testing.T) {
	p := planOf(t, "days: {mon: [floor, jumps]}\nmove: {2026-12-14: 2026-12-16}\n")
	got := *Started(p, p.Days()[3])
	want := journal.Weeks{Title: "Winter", Starts: "2026-12-07", Week: 2, Date: "2026-12-16", Place: 2, Session: "jumps"}
	if got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	if day := On(p, nil, units.Date(p.Starts+9), 0); day.Current == nil || day.Current.Place != 1 {
		t.Errorf("of the moved day: %+v", day.Current)
	}
}

// TestInGerman reads a day in another language.
func TestInGerman(t *testing.T) {
	p := planOf(t, "days: {mon: jumps, thu: floor}\nmatches: [2026-12-09]\n")
	d := Of(p, nil, moment("2026-12-08 12:00"), 48*time.Hour)
	const want = `Winter
Di 8. Dez, Woche 1 von 2
morgen ein Spiel
heute: nichts geplant
als Nächstes: Do 10. Dez, floor, 0:30, 1 Satz
nicht gemacht: Mo 7. Dez, jumps; sie hat Sprünge und morgen ist ein Spiel: lass sie aus`
	got := strings.ReplaceAll(strings.Join(d.Lines(&text.German), "\n"), ", Woche 1,", ",")
	if got = strings.ReplaceAll(got, "jumps, Woche 1;", "jumps;"); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
}

// Contacts that nobody counted make those of the day a least figure.
func TestContactsAtLeast(t *testing.T) {
	p, err := weeks.Parse("plan.yaml", []byte("coldfloor: 1\ntitle: T\nstarts: 2026-12-07\nweeks: 1\ndays: {mon: a.yaml}\n"), func(string) (*sessions.Session, error) {
		return sessions.Parse("a.yaml", []byte("coldfloor: 1\ntitle: S\nblocks: [{title: Up, exercises: [{name: Hop, reps: 3, contacts: 1}, {name: Tuck jumps, reps: 5}]}]"))
	})
	if err != nil {
		t.Fatal(err)
	}
	for l, want := range map[*text.Language]string{&text.English: "at least 3 foot contacts", &text.German: "mindestens 3 Bodenkontakte"} {
		if got := strings.Join(Of(p, nil, moment("2026-12-07 12:00"), 0).Lines(l), "\n"); !strings.Contains(got, want) {
			t.Errorf("lacks %q in\n%s", want, got)
		}
	}
}
