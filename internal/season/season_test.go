package season

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/journal"
	"coldfloor/internal/units"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// planText is two sessions on three days, with a day away in week 2 and one
// moved in week 3.
const planText = `coldfloor: 1
title: Winter
starts: 2026-12-07
weeks: 3
days:
  mon: up.yaml
  wed: across.yaml
  fri: [up.yaml, across.yaml]
away: [2026-12-16]
move: {2026-12-21: 2026-12-22}
`

// sessionText is a session of one exercise.
func sessionText(title string) string {
	return "coldfloor: 1\ntitle: " + title + "\nblocks:\n  - title: Up\n    exercises:\n      - {name: Pogo hops, reps: 10, contacts: 1}\n"
}

func winter(t testing.TB) *weeks.Plan {
	t.Helper()
	titles := map[string]string{"up.yaml": "Up and up", "across.yaml": "Across the hall"}
	p, err := weeks.Parse("winter.yaml", []byte(planText), func(name string) (*sessions.Session, error) {
		return sessions.Parse(name, []byte(sessionText(titles[name])))
	})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func date(s string) units.Date {
	d, err := units.ParseDate(s)
	if err != nil {
		panic(err)
	}
	return d
}

// done is a run of a session's file on a date.
func done(id, source, on string) *journal.Run {
	return &journal.Run{ID: id, Start: date(on).In(time.UTC, 18*60), State: journal.Complete,
		Started: &journal.Started{Title: "any", Source: "/home/ana/" + source},
		Sets:    []journal.Set{{Outcome: journal.Done}}}
}

// from is the same run, begun from the plan for a day.
func from(r *journal.Run, on string, place int, session string) *journal.Run {
	r.Started.Weeks = &journal.Weeks{Title: "Winter", Starts: "2026-12-07", Week: 1, Date: on, Place: place, Session: session}
	return r
}

// told is a season in a line a day.
func told(s *Season) string {
	var b strings.Builder
	for d := range s.days() {
		fmt.Fprintf(&b, "%s %d %s: %s", d.Date, d.Place, d.Slot.Session, d.State)
		for _, r := range d.Runs {
			fmt.Fprintf(&b, " %s", r.ID)
		}
		if late, ok := d.Late(); ok && late != 0 {
			fmt.Fprintf(&b, " %+d", late)
		}
		b.WriteByte('\n')
	}
	for _, r := range s.Others {
		fmt.Fprintf(&b, "other: %s\n", r.ID)
	}
	return b.String()
}

func TestMatch(t *testing.T) {
	skipped := from(done("skipped", "up.yaml", "2026-12-11"), "2026-12-11", 1, "up.yaml")
	skipped.State, skipped.Sets = journal.Stopped, nil
	rehearsal := done("rehearsal", "up.yaml", "2026-12-14")
	rehearsal.Started.Speed = 20
	paper := done("paper", "", "2026-12-13")
	paper.Started.Source, paper.Started.Title, paper.Sets = journal.Paper, "Across the hall, week 2", nil
	for name, c := range map[string]struct {
		runs  []*journal.Run
		today string
		want  string
	}{
		"nothing is missed before three days have passed": {nil, "2026-12-10", `2026-12-07 1 up.yaml: due
2026-12-09 1 across.yaml: due
2026-12-11 1 up.yaml: ahead
2026-12-11 2 across.yaml: ahead
`},
		"named, on time and late, and more than once": {[]*journal.Run{
			from(done("a", "up.yaml", "2026-12-15"), "2026-12-07", 1, "up.yaml"),
			from(done("b", "across.yaml", "2026-12-09"), "2026-12-09", 1, "across.yaml"),
			from(done("c", "across.yaml", "2026-12-10"), "2026-12-09", 1, "across.yaml"),
			skipped, rehearsal}, "2026-12-15", `2026-12-07 1 up.yaml: done a +8
2026-12-09 1 across.yaml: done b c
2026-12-11 1 up.yaml: skipped skipped
2026-12-11 2 across.yaml: missed
`},
		"by the date first, then by the nearest": {[]*journal.Run{
			done("a", "elsewhere/up.yaml", "2026-12-09"), // two days from both Mondays' and Friday's: the earlier
			done("b", "up.yaml", "2026-12-11"),
			done("c", "across.yaml", "2026-12-06"),
			paper,
			done("d", "other.yaml", "2026-12-08"),
		}, "2026-12-20", `2026-12-07 1 up.yaml: done a +2
2026-12-09 1 across.yaml: done c -3
2026-12-11 1 up.yaml: done b
2026-12-11 2 across.yaml: done paper +2
`},
	} {
		t.Run(name, func(t *testing.T) {
			s := Of(winter(t), c.runs, date(c.today))
			if got := told(s); !strings.HasPrefix(got, c.want) {
				t.Errorf("got\n%swant\n%s", got, c.want)
			}
		})
	}
	s := Of(winter(t), nil, date("2026-12-22"))
	if got := told(s); !strings.Contains(got, "2026-12-16 0 across.yaml: left out\n") || !strings.Contains(got, "2026-12-22 1 up.yaml: due\n") {
		t.Errorf("a day away is left out, and one that was moved is due on its new date:\n%s", got)
	}
	if n := s.Weeks[1].Count(s.Today); n.Planned != 3 || n.LeftOut != 1 || n.Missed != 3 || n.Due != 0 {
		t.Errorf("week 2: %+v", n)
	}
}

// A second reading of the rule, run by run: who says for which day goes there;
// then who has a day of their own date; then the nearest free day.
func TestMatchAgainstASecondReading(t *testing.T) {
	p := winter(t)
	rapid.Check(t, func(rt *rapid.T) {
		today := p.Starts + units.Date(rapid.IntRange(-3, 30).Draw(rt, "today"))
		var runs []*journal.Run
		for i := range rapid.IntRange(0, 9).Draw(rt, "runs") {
			on := p.Starts + units.Date(rapid.IntRange(-4, 26).Draw(rt, "on"))
			r := done(string(rune('a'+i)), rapid.SampledFrom([]string{"up.yaml", "across.yaml"}).Draw(rt, "session"), on.String())
			if rapid.Bool().Draw(rt, "named") {
				d := rapid.SampledFrom(p.Days()).Draw(rt, "day")
				r = from(r, d.Date.String(), d.Place, d.Slot.Session)
			}
			runs = append(runs, r)
		}
		want := secondReading(p, runs)
		s := Of(p, rapid.Permutation(runs).Draw(rt, "order"), today)
		i := 0
		for d := range s.days() {
			if d.State == LeftOut {
				continue
			}
			var ids []string
			for _, r := range d.Runs {
				ids = append(ids, r.ID)
			}
			slices.Sort(ids)
			if got := strings.Join(ids, ""); got != want[i] {
				rt.Fatalf("%s %d: got %q, want %q\n%s", d.Date, d.Place, got, want[i], told(s))
			}
			i++
		}
	})
}

// secondReading returns the runs of each day of the plan, by name.
func secondReading(p *weeks.Plan, runs []*journal.Run) []string {
	days := p.Days()
	filled := make([]string, len(days))
	var rest []*journal.Run
	for _, r := range runs {
		w := r.Started.Weeks
		if w == nil {
			rest = append(rest, r)
			continue
		}
		for i, d := range days {
			if d.Date.String() == w.Date && d.Place == w.Place {
				filled[i] += r.ID
			}
		}
	}
	slices.SortStableFunc(rest, func(a, b *journal.Run) int { return strings.Compare(began(a).String()+a.ID, began(b).String()+b.ID) })
	for pass := range 2 {
		var left []*journal.Run
		for _, r := range rest {
			best, at := 100, -1
			for i, d := range days {
				far := int(d.Date - began(r))
				if far < 0 {
					far = -far
				}
				if filled[i] == "" && strings.HasSuffix(r.Started.Source, d.Slot.Session) && far < best && (far == 0 || pass == 1 && far <= 3) {
					best, at = far, i
				}
			}
			if at < 0 {
				left = append(left, r)
				continue
			}
			filled[at] = r.ID
		}
		rest = left
	}
	for i := range filled {
		f := []byte(filled[i])
		slices.Sort(f)
		filled[i] = string(f)
	}
	return filled
}
