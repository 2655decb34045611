package review

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/runs"
)

// today is the Monday of the ninth week, in the evening.
var today = monday.AddDate(0, 0, 8*7).Add(4 * time.Hour)

// regular is the runs of a player who trains on Mondays, Wednesdays and Fridays
// for eight weeks, each changed by as many days before today as it lies back.
func regular(name string, change func(r *journal.Run, ago int) (keep bool)) []runs.Run {
	var all []runs.Run
	for w := range 9 {
		for _, d := range []int{0, 2, 4} {
			at := monday.AddDate(0, 0, 7*w+d)
			if at.After(today) {
				continue
			}
			r := session(fmt.Sprint(name, w, d), at, 5)
			r.Player, r.Name = name, name
			for range 4 {
				r.Rests = append(r.Rests, journal.Rest{PrescribedS: 60, TakenS: 60, At: at.Add(time.Hour)})
			}
			if change == nil || change(r.Run, int(today.Sub(at).Hours()/24)) {
				all = append(all, r)
			}
		}
	}
	return all
}

func hurt(r *journal.Run, where string, level int) {
	yes := true
	r.Rating.Pain = &yes
	said := journal.Statement{At: r.Start.Add(time.Hour), Pain: &yes, Where: where}
	if level >= 0 {
		said.Level = &level
	}
	r.Said = append(r.Said, said)
}

func cutRests(r *journal.Run) {
	for i := range r.Rests[:3] {
		r.Rests[i].TakenS = 20
	}
}

// hidden is a squad with a trouble in each player but two.
func hidden() *Squad {
	var all []runs.Run
	for name, change := range map[string]func(*journal.Run, int) bool{
		"calm": nil,
		"cuts": func(r *journal.Run, ago int) bool {
			if ago < Fortnight {
				cutRests(r)
			}
			return true
		},
		"cut long ago": func(r *journal.Run, ago int) bool {
			if ago >= Fortnight {
				cutRests(r)
			}
			return true
		},
		"gone": func(_ *journal.Run, ago int) bool { return ago >= 20 },
		"old knee": func(r *journal.Run, ago int) bool {
			if ago < 30 && ago%7 == 0 {
				hurt(r, "left knee", 3)
			}
			return true
		},
		"new hip": func(r *journal.Run, ago int) bool {
			if ago == 3 {
				hurt(r, "right hip", 2)
			}
			return true
		},
		"strong": func(r *journal.Run, ago int) bool {
			switch {
			case ago == 5:
				hurt(r, "achilles", 7)
			case ago < 40:
				hurt(r, "achilles", 2)
			}
			return true
		},
	} {
		all = append(all, regular(name, change)...)
	}
	return reviewed(today, all...)
}

func order(s *Squad) string {
	var names []string
	for _, p := range s.Players {
		names = append(names, p.Name)
	}
	return strings.Join(names, ", ")
}

// Trouble comes first: pain of 6 or more or new, any pain, away, rests cut.
func TestTroubleFirst(t *testing.T) {
	s := hidden()
	if got, want := order(s), "strong, new hip, old knee, gone, cuts, calm, cut long ago"; got != want {
		t.Errorf("the squad is %s, want %s", got, want)
	}
	for _, c := range []struct {
		by      Column
		reverse bool
		first   string
	}{
		{ByName, false, "calm"}, {ByName, true, "strong"}, {ByLast, false, "gone"}, {ByRest, false, "cuts"},
		{BySessions, false, "gone"}, {ByPain, false, "strong"}, {ByJumps, true, "gone"},
	} {
		if s.Sort(c.by, c.reverse); s.Players[0].Name != c.first {
			t.Errorf("by %s, reversed %v: %s, want %s first", c.by, c.reverse, order(s), c.first)
		}
	}
	s.Sort(ByRest, false)
	if got := order(s); !strings.HasPrefix(got, "cuts, gone, ") {
		t.Errorf("whose rests nobody knows is not the best, nor the worst: %s", got)
	}
}

func TestStanding(t *testing.T) {
	s := hidden()
	s.Sort(ByName, false)
	byName := map[string]*Player{}
	for _, p := range s.Players {
		byName[p.Name] = p
	}
	calm, cuts, gone, strong := &byName["calm"].Standing, &byName["cuts"].Standing, &byName["gone"].Standing, byName["strong"]
	if calm.Since != 0 || calm.Sessions != 6 || calm.Cut != (Share{0, 24}) || calm.CutBefore != (Share{0, 76}) || calm.Running != 1 ||
		calm.Contacts != journal.CountOf(30) || calm.ContactsUsual != (Usual{Mean: 90, Weeks: 4}) ||
		calm.Load != (Usual{Mean: 900, Weeks: 1}) || calm.LoadUsual != (Usual{Mean: 900, Weeks: 4}) {
		t.Errorf("calm: %+v", calm)
	}
	if cuts.Cut != (Share{18, 24}) || cuts.CutBefore != (Share{0, 76}) || cuts.Trouble != CutsRests {
		t.Errorf("cuts: %+v", cuts)
	}
	if gone.Since != 21 || gone.Sessions != 0 || gone.Cut != (Share{}) || gone.Trouble != Away {
		t.Errorf("gone: %+v", gone)
	}
	if pain, recent := strong.GravestPain(); !recent || *pain.Level != 7 || pain.New || strong.Standing.Trouble != HurtsBadly {
		t.Errorf("strong: %+v", pain)
	}
	if pain, _ := byName["new hip"].GravestPain(); !pain.New || !pain.Severe() {
		t.Errorf("new hip: %+v", pain)
	}
}

// What is not known makes a least figure, or none, and never a good one.
func TestStandingOfTheUnknown(t *testing.T) {
	p := reviewed(today, regular("ana", func(r *journal.Run, ago int) bool {
		if ago == 0 {
			r.Rating.RPE = nil
			r.Sets[1].Contacts = journal.Count{}
		}
		return true
	})...).Players[0]
	s := &p.Standing
	if s.Contacts != (journal.Count{N: 20}) || !s.Load.AtLeast || s.Load.Mean != 600 || p.Uncounted != 1 {
		t.Errorf("got %+v", s)
	}
	if d, _ := p.LastDay(); !d.ShortAtLeast || !d.LongAtLeast || p.Days[len(p.Days)-2].ShortAtLeast {
		t.Errorf("the averages: %+v", d)
	}
	if w := p.Weeks[len(p.Weeks)-1]; w.Lacks() != 1 || !w.Unknown[0] {
		t.Errorf("the week: %+v", w)
	}
	expected := New(Options{Now: today, Players: []string{"Bea"}})
	if all := expected.Squad().Players; len(all) != 1 || all[0].Name != "Bea" || all[0].Standing.Known {
		t.Errorf("who has logged nothing is in the squad: %+v", all)
	}
}

// A session that was gone on with on another day counts on each of its days.
func TestSessionOfTwoDays(t *testing.T) {
	r := session("a", monday, 5)
	for i := range r.Sets {
		r.Sets[i].TakenS, r.Sets[i].At = 10, monday.Add(time.Minute)
	}
	r.Sets[2].At, r.Sets[2].TakenS = monday.AddDate(0, 0, 3), 20
	p := reviewed(monday.AddDate(0, 0, 3).Add(time.Minute), r).Players[0]
	w := p.Weeks[0]
	if w.Daily[0] != 150 || w.Daily[3] != 150 || p.Days[3].Contacts != 10 || w.Contacts != 30 || w.Sessions != 1 || w.Elapsed != time.Hour {
		t.Errorf("the week: %+v", w)
	}
	if p.Jumps.Since != time.Minute || p.Standing.Since != 0 {
		t.Errorf("the last jumps were %v ago", p.Jumps.Since)
	}
}

// A set that was done again counts its reps and contacts twice, and once
// towards its round; a rest that work followed is judged whatever ended it.
func TestRepeatedSets(t *testing.T) {
	r := session("a", monday, 5)
	r.Sets = append(r.Sets, r.Sets[0])
	r.Rests = []journal.Rest{{PrescribedS: 60, TakenS: 8, End: "repeat"}, {PrescribedS: 60, TakenS: 8, End: "back"}, {PrescribedS: 60, TakenS: 8, End: "stop", Left: true}}
	p := reviewed(monday.Add(time.Hour), r).Players[0]
	if p.Contacts != 40 || p.Reps != (Share{40, 40}) || p.Rounds != (Share{3, 3}) || p.Sets != (Share{3, 3}) || p.Rest.Early != 2 || p.Rest.Count != 2 {
		t.Errorf("got %+v", p.Total)
	}
}

func TestExercises(t *testing.T) {
	r := session("a", monday, 5)
	for i := range r.Sets {
		r.Sets[i].Name = "Pogo hops"
	}
	r.Sets[0].Easier, r.Sets[0].Variant = true, "Calf raises"
	r.Sets[1].Outcome = journal.Partial
	r.Sets[2].Outcome = journal.Skipped
	r.Started.Blocks[0].Sets = 5
	p := reviewed(monday.Add(time.Hour), r).Players[0]
	want := Exercise{Name: "Pogo hops", Sets: 3, Partial: 1, Skipped: 1, Easier: 1, Variant: "Calf raises", Last: monday, latest: monday}
	if len(p.Exercises) != 1 || p.Exercises[0] != want || p.NotBegun != 2 {
		t.Errorf("got %+v and %d not begun", p.Exercises, p.NotBegun)
	}
}

// A statement of pain that was a slip, and a note without pain.
func TestSlipsAndNotes(t *testing.T) {
	r := session("a", monday, 5)
	yes, no := true, false
	r.Rating.Pain = &no
	r.Said = []journal.Statement{{At: monday, Pain: &yes, Where: "left knee", Slip: true}, {At: monday.Add(time.Minute), Note: "slippery floor"}}
	p := reviewed(monday.Add(time.Hour), r).Players[0]
	if len(p.Pain) != 0 || p.Painful != 0 || len(p.Notes) != 1 || p.Notes[0].Text != "slippery floor" {
		t.Errorf("pain %+v, notes %+v", p.Pain, p.Notes)
	}
}
