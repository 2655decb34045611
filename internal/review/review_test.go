package review

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/journal"
	"coldfloor/internal/runs"
	"coldfloor/internal/trainingload"
)

var (
	zone   = time.FixedZone("", 3600)
	monday = time.Date(2026, 1, 5, 18, 0, 0, 0, zone)
)

// session is a run of one block, rated and over in an hour.
func session(id string, start time.Time, rpe float64) runs.Run {
	r := &journal.Run{ID: id, Start: start, State: journal.Complete, Elapsed: time.Hour,
		Started: &journal.Started{Title: "Hallway", Blocks: []journal.PlannedBlock{{Title: "Up", Rounds: 3, Sets: 3, Contacts: journal.CountOf(30)}}}}
	for i := range 3 {
		r.Sets = append(r.Sets, journal.Set{Place: journal.Place{Block: 1, Round: i + 1, Exercise: 1}, Outcome: "done", Reps: 10, Planned: 10, Contacts: journal.CountOf(10)})
	}
	if rpe >= 0 {
		r.Rating.RPE = &rpe
	}
	return runs.Run{Run: r, Player: "Ana"}
}

// reviewed reviews runs at now.
func reviewed(now time.Time, all ...runs.Run) *Squad {
	r := New(Options{Now: now})
	for _, run := range all {
		r.Add(run)
	}
	return r.Squad()
}

// The daily loads of the week are those of load's own test: 480, 0, 360, 0,
// 520, 150, 0.
func TestWeek(t *testing.T) {
	var all []runs.Run
	for i, l := range []float64{480, 0, 360, 0, 520, 150, 0} {
		if l > 0 {
			all = append(all, session(string(rune('a'+i)), monday.AddDate(0, 0, i), l/60))
		}
	}
	p := reviewed(monday.AddDate(0, 0, 7), all...).Players[0]
	if len(p.Weeks) != 2 || !p.Weeks[1].Open || p.Weeks[0].Open {
		t.Fatalf("weeks: %+v", p.Weeks)
	}
	w := p.Weeks[0]
	m, s, why := w.Monotony()
	if why != "" || math.Abs(m-0.9238) > 5e-5 || math.Abs(s-1394.90) > 5e-3 {
		t.Errorf("monotony %v, strain %v, %q", m, s, why)
	}
	if w.Sessions != 4 || w.Rounds != (Share{12, 12}) || w.Sets != (Share{12, 12}) || w.Contacts != 120 || w.Elapsed != 4*time.Hour {
		t.Errorf("the week comes to %+v", w.Total)
	}
	if _, _, why := p.Weeks[1].Monotony(); why != "the week is not over" {
		t.Errorf("an open week: %q", why)
	}
	// The seven days up to Monday: Tuesday's 0 to today's 0.
	if p.Seven.Total != 1030 || p.Seven.Sessions != 3 {
		t.Errorf("the last seven days: %+v", p.Seven)
	}
}

func TestWeekWithoutMonotony(t *testing.T) {
	next := monday.AddDate(0, 0, 7)
	var alike []runs.Run
	for i := range 7 {
		alike = append(alike, session(string(rune('a'+i)), monday.AddDate(0, 0, i), 5))
	}
	for why, all := range map[string][]runs.Run{
		"a session is not rated":   {session("a", monday, 5), session("b", monday, -1)},
		"2 sessions are not rated": {session("a", monday, -1), session("b", monday, -1)},
		"no load":                  {session("a", monday, 0)},
		"every day is alike":       alike,
	} {
		if m, s, got := reviewed(next, all...).Players[0].Weeks[0].Monotony(); got != why || m != 0 || s != 0 {
			t.Errorf("monotony %v, strain %v, %q; want %q", m, s, got, why)
		}
	}
}

// 21 days of 30, then 7 of 50: the values stand in the tests of an open R
// package.
func TestAverages(t *testing.T) {
	var all []runs.Run
	for i := range 28 {
		l := 30.0
		if i >= 21 {
			l = 50
		}
		r := session(string(rune('A'+i)), monday.AddDate(0, 0, i), l/6)
		r.Elapsed = 6 * time.Minute
		all = append(all, r)
	}
	p := reviewed(monday.AddDate(0, 0, 27).Add(2*time.Hour), all...).Players[0]
	d, ok := p.LastDay()
	if !ok || len(p.Days) != 28 || math.Abs(d.Short-47.3303) > 5e-5 || math.Abs(d.Long-37.8720) > 5e-5 {
		t.Errorf("%d days, the last %+v", len(p.Days), d)
	}
}

func TestRestVerdicts(t *testing.T) {
	for _, c := range []struct {
		prescribed, taken float64
		end               string
		deviation         time.Duration
		want              Verdict
	}{
		{75, 75, "clock", 0, Kept},
		{75, 71.25, "skip", -3750 * time.Millisecond, Kept}, // 5 % of 75 s
		{75, 71.249, "skip", -3751 * time.Millisecond, Early},
		{30, 27, "skip", -3 * time.Second, Kept},
		{30, 26.9, "skip", -3100 * time.Millisecond, Early},
		{180, 189, "clock", 9 * time.Second, Kept},
		{180, 190, "clock", 10 * time.Second, Overrun},
		{75, 10, "back", -65 * time.Second, Early}, // work followed all the same
		{75, 10, "repeat", -65 * time.Second, Early},
	} {
		d, v := DefaultTolerance.Judge(&journal.Rest{PrescribedS: c.prescribed, TakenS: c.taken, End: c.end})
		if d != c.deviation || v != c.want {
			t.Errorf("%v of %v by %s: %v, %s; want %v, %s", c.taken, c.prescribed, c.end, d, v, c.deviation, c.want)
		}
	}
	if _, v := DefaultTolerance.Judge(&journal.Rest{PrescribedS: 75, TakenS: 10, End: "stop", Left: true}); v != Left {
		t.Errorf("a rest that no work followed: %s", v)
	}
}

func TestWhatIsLeftOut(t *testing.T) {
	rehearsal, withdrawn, empty := session("a", monday, 5), session("b", monday, 5), session("c", monday, -1)
	rehearsal.Started.Speed = 60
	withdrawn.Withdrawn = true
	empty.State, empty.Sets = journal.Unfinished, nil
	s := reviewed(monday.AddDate(0, 0, 1), rehearsal, withdrawn, empty)
	if len(s.Players) != 0 || s.Rehearsals != 1 || s.Withdrawn != 1 || s.Empty != 1 {
		t.Errorf("got %+v", s)
	}
}

func TestPaperAndLostStart(t *testing.T) {
	paper, lost := session("a", monday, 5), session("b", monday, 5)
	paper.Started.Source, paper.Sets, paper.Rating.Rounds = journal.Paper, nil, []int{2}
	lost.Started = nil
	p := reviewed(monday.AddDate(0, 0, 1), paper, lost).Players[0]
	if p.Rounds != (Share{2, 3}) || p.Sets != (Share{}) || p.Contacts != 20+30 || p.Sessions != 2 {
		t.Errorf("got %+v", p.Total)
	}
}

func TestPainIsKept(t *testing.T) {
	var all []runs.Run
	for i := range MaxPain + 5 {
		r := session(string(rune(0x4e00+i)), monday.AddDate(0, 0, i), 5)
		yes, where := true, "left knee"
		r.Rating.Pain, r.Said = &yes, []journal.Statement{{Pain: &yes, Where: where}}
		all = append(all, r)
	}
	no := false
	calm := session("z", monday.AddDate(0, 0, 300), 5)
	calm.Rating.Pain = &no
	p := reviewed(monday.AddDate(1, 0, 0), append(all, calm)...).Players[0]
	if p.Painful != MaxPain+5 || len(p.Pain) != MaxPain || !p.Pain[0].Start.Equal(monday.AddDate(0, 0, MaxPain+4)) || p.Pain[0].Where != "left knee" {
		t.Errorf("%d painful, %d notes, the first %+v", p.Painful, len(p.Pain), p.Pain[0])
	}
}

func TestJumps(t *testing.T) {
	quiet, ahead := session("b", monday.AddDate(0, 0, 1), 5), session("c", monday.AddDate(0, 0, 9), 5)
	for i := range quiet.Sets {
		quiet.Sets[i].Contacts = journal.CountOf(0)
	}
	now := monday.AddDate(0, 0, 2)
	if p := reviewed(now, session("a", monday, 5), quiet, ahead).Players[0]; !p.Jumps.Ahead || p.Jumps.Since != 0 || p.Ahead != 1 || p.Sessions != 3 || len(p.Weeks) != 1 {
		t.Errorf("a session dated ahead was done before now all the same: %+v, %d ahead of %d, %d weeks", p.Jumps, p.Ahead, p.Sessions, len(p.Weeks))
	}
	p := reviewed(now, session("a", monday, 5), quiet).Players[0]
	if p.Jumps == nil || p.Jumps.Since != 47*time.Hour || p.Jumps.Contacts != journal.CountOf(30) ||
		!p.Jumps.Earliest.Equal(monday.Add(49*time.Hour)) || !p.Jumps.Full.Equal(monday.Add(73*time.Hour)) {
		t.Errorf("jumps: %+v", p.Jumps)
	}
}

// A date is that of the place where the player was: 23:30 on a Sunday there is
// that Sunday, whatever the date is where the review is read.
func TestDateIsThePlayers(t *testing.T) {
	late := time.Date(2026, 1, 11, 23, 30, 0, 0, time.FixedZone("", -5*3600))
	p := reviewed(late.Add(48*time.Hour).UTC(), session("a", late, 5)).Players[0]
	if w := p.Weeks[0]; w.Daily[6] != 300 || !w.Monday.Equal(time.Date(2026, 1, 5, 0, 0, 0, 0, time.UTC)) {
		t.Errorf("week of %v: %v", w.Monday, w.Daily)
	}
	// A player east of here may be in tomorrow already.
	east := time.Date(2026, 1, 12, 6, 0, 0, 0, time.FixedZone("", 13*3600))
	p = reviewed(east.Add(2*time.Hour).In(zone), session("a", east, 5)).Players[0]
	if p.Ahead != 0 || len(p.Weeks) != 1 {
		t.Errorf("%d ahead, %d weeks", p.Ahead, len(p.Weeks))
	}
}

func TestMonday(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := day(rapid.IntRange(-30_000, 60_000).Draw(t, "day"))
		m := d.monday()
		if m.date().Weekday() != time.Monday || d < m || d-m > 6 || dayOf(d.date()) != d {
			t.Fatalf("the Monday of %v is %v", d.date(), m.date())
		}
	})
}

// The order in which runs come changes nothing.
func TestOrderOfRunsDoesNotMatter(t *testing.T) {
	var all []runs.Run
	for i := range 40 {
		all = append(all, session(string(rune('A'+i)), monday.AddDate(0, 0, i*3/2), float64(i%10)))
	}
	now := monday.AddDate(0, 0, 61)
	want := reviewed(now, all...).Players[0]
	rapid.Check(t, func(t *rapid.T) {
		got := reviewed(now, rapid.Permutation(all).Draw(t, "order")...).Players[0]
		if len(got.Weeks) != len(want.Weeks) || got.Sessions != want.Sessions || got.LastTitle != want.LastTitle {
			t.Fatalf("got %+v, want %+v", got.Total, want.Total)
		}
		for i := range got.Weeks {
			if got.Weeks[i].Daily != want.Weeks[i].Daily {
				t.Fatalf("week %d: %v, want %v", i, got.Weeks[i].Daily, want.Weeks[i].Daily)
			}
		}
		for i := range got.Recent {
			if got.Recent[i].ID != want.Recent[i].ID {
				t.Fatalf("session %d is %s, want %s", i, got.Recent[i].ID, want.Recent[i].ID)
			}
		}
	})
}

func TestIntervalIsTheCoachs(t *testing.T) {
	r := New(Options{Now: monday.AddDate(0, 0, 1), JumpsEarliest: 24 * time.Hour, JumpsFull: 48 * time.Hour})
	r.Add(session("a", monday, 5))
	if j := r.Squad().Players[0].Jumps; !j.Earliest.Equal(monday.Add(25*time.Hour)) || j.Full.Sub(j.Earliest) != 24*time.Hour {
		t.Errorf("got %+v", j)
	}
	if trainingload.EarliestAfter != 48*time.Hour || trainingload.FullAfter != 72*time.Hour { // NSCA Essentials, from memory
		t.Error("the published interval is 48 to 72 h")
	}
}
