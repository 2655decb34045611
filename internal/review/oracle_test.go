package review

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/runs"
)

// second returns the second reading of a journal.
func second(t *testing.T, text []byte, now time.Time) *oracle {
	o := &oracle{now: now, today: number(now), all: newSums(), weeks: map[int]*sums{}, begun: map[int]int{}, worked: map[int]bool{}}
	byRun := map[string]map[int]raw{}
	for _, line := range strings.Split(strings.TrimSpace(string(text)), "\n") {
		var l raw
		if err := json.Unmarshal([]byte(line), &l); err != nil {
			t.Fatal(err)
		}
		if byRun[l.Run] == nil {
			byRun[l.Run] = map[int]raw{}
		}
		byRun[l.Run][l.N] = l
	}
	for _, lines := range byRun {
		var inOrder []raw
		for n := 1; n <= len(lines); n++ {
			inOrder = append(inOrder, lines[n])
		}
		o.read(inOrder)
	}
	return o
}

// A hundred and twenty journals, read a second time from the package's words.
func TestAgainstASecondReading(t *testing.T) {
	now := time.Date(2026, 3, 26, 20, 0, 0, 0, zones[0]) // a Thursday
	for seed := range uint64(120) {
		text := journalOf(seed, now)
		path := filepath.Join(t.TempDir(), "a.jsonl")
		if err := os.WriteFile(path, text, 0o600); err != nil {
			t.Fatal(err)
		}
		squad, _, err := Of([]string{path}, Options{Now: now}, runs.Options{})
		if err != nil {
			t.Fatal(err)
		}
		o := second(t, text, now)
		if len(squad.Players) == 0 {
			if o.all.sessions != 0 {
				t.Fatalf("journal %d: nobody, want %d sessions", seed, o.all.sessions)
			}
			continue
		}
		o.hold(t, seed, squad.Players[0])
	}
}

// hold holds a review against the oracle.
func (o *oracle) hold(t *testing.T, seed uint64, p *Player) {
	t.Helper()
	if got, want := figuresOf(&p.Total), o.all.figures(); got != want {
		t.Errorf("journal %d: all\ngot  %+v\nwant %+v", seed, got, want)
	}
	for i := range p.Weeks {
		w := &p.Weeks[i]
		monday := number(w.Monday)
		want := o.week(monday)
		if got := figuresOf(&w.Total); got != want.figures() {
			t.Errorf("journal %d: week from %s\ngot  %+v\nwant %+v", seed, w.Monday.Format(time.DateOnly), got, want.figures())
		}
		for d := range 7 {
			if math.Abs(w.Daily[d]-want.load[monday+d]) > 1e-6 || w.Unknown[d] != want.lacks[monday+d] {
				t.Errorf("journal %d: day %d of the week from %s: load %v, unknown %v; want %v, %v", seed, d, w.Monday.Format(time.DateOnly),
					w.Daily[d], w.Unknown[d], want.load[monday+d], want.lacks[monday+d])
			}
		}
	}
	sessions, since, running := 0, 0, 0
	for d, n := range o.begun {
		if d > o.today-14 && d <= o.today {
			sessions += n
		}
	}
	for ; !o.worked[o.today-since]; since++ {
	}
	for d := o.today; o.worked[d] || d == o.today; d-- {
		if o.worked[d] {
			running++
		}
	}
	s := &p.Standing
	if s.Sessions != sessions || s.Cut != o.cut14 || s.Since != since || s.Running != running || len(p.Pain) != o.pains {
		t.Errorf("journal %d: standing %+v and %d statements; want %d sessions, %v cut, since %d, running %d, %d statements", seed, s, len(p.Pain), sessions, o.cut14, since, running, o.pains)
	}
	switch {
	case p.Jumps == nil && !o.jumps.IsZero(), p.Jumps != nil && !p.Jumps.At.Equal(o.jumps):
		t.Errorf("journal %d: last jumps %+v, want %v", seed, p.Jumps, o.jumps)
	}
}

// comparable figures, lengths to the millisecond.
type figures struct {
	sessions, complete, rated, painful, unknown, contacts, uncounted, kept, early, overrun int
	rounds, sets, reps                                                                     Share
	elapsed                                                                                int64
}

func figuresOf(t *Total) figures {
	return figures{t.Sessions, t.Complete, t.Rated, t.Painful, t.RoundsUnknown, t.Contacts, t.Uncounted, t.Rest.Kept, t.Rest.Early, t.Rest.Overrun,
		t.Rounds, t.Sets, t.Reps, t.Elapsed.Round(10 * time.Millisecond).Milliseconds()}
}

func (s *sums) figures() figures {
	return figures{s.sessions, s.complete, s.rated, s.painful, s.unknown, s.contacts, s.uncounted, s.kept, s.early, s.overrun,
		s.rounds, s.sets, s.reps, int64(math.Round(s.elapsed*100)) * 10}
}
