package review

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/runs"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// club is a folder of journals that changes at random: they grow, are copied,
// part, are edited and damaged, and so is what is kept beside them.
type club struct {
	*rand.Rand
	t    *testing.T
	dir  string
	now  time.Time
	next int // series of runs
}

// newClub makes a folder of a few players' journals.
func newClub(t *testing.T, seed uint64) *club {
	c := &club{Rand: rand.New(rand.NewPCG(seed, 5)), t: t, dir: t.TempDir(), now: time.Date(2026, 3, 26, 20, 0, 0, 0, zones[0])}
	for i := range 1 + c.IntN(3) {
		c.write(fmt.Sprintf("p%d.jsonl", i), c.sessions(c.player(), 8+c.IntN(12)))
	}
	return c
}

func (c *club) chance(part float64) bool { return c.Float64() < part }

func (c *club) player() string { return []string{"Ana", "Bea", "ana ", ""}[c.IntN(4)] }

// sessions returns the lines of new sessions, now and then not in order.
func (c *club) sessions(player string, n int) []byte {
	c.next++
	m := &maker{Rand: c.Rand, now: c.now, player: player, series: fmt.Sprintf("%03d", c.next)}
	for i := range n {
		m.session(i)
	}
	return c.text(m.lines, c.chance(.1))
}

// text encodes lines; some are sealed.
func (c *club) text(lines []journal.Line, shuffled bool) []byte {
	var all [][]byte
	for i := range lines {
		text, err := json.Marshal(lines[i])
		if err == nil && c.chance(.5) {
			text, err = journal.Encode(&lines[i])
			text = bytes.TrimSpace(text)
		}
		if err != nil {
			c.t.Fatal(err)
		}
		all = append(all, text)
	}
	if shuffled {
		c.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	}
	return append(bytes.Join(all, []byte("\n")), '\n')
}

func (c *club) write(name string, text []byte) {
	if err := os.WriteFile(filepath.Join(c.dir, name), text, 0o600); err != nil {
		c.t.Fatal(err)
	}
}

// one returns a file of those that fit a pattern, and its text; empty: there is
// none.
func (c *club) one(pattern string) (name string, text []byte) {
	all, err := filepath.Glob(filepath.Join(c.dir, pattern))
	if err != nil {
		c.t.Fatal(err)
	}
	if len(all) == 0 {
		return "", nil
	}
	path := all[c.IntN(len(all))]
	if text, err = os.ReadFile(path); err != nil {
		c.t.Fatal(err)
	}
	return filepath.Base(path), text
}

// part returns so many lines from the beginning of a journal.
func (c *club) part(text []byte) []byte {
	lines := bytes.SplitAfter(text, []byte("\n"))
	return bytes.Join(lines[:c.IntN(len(lines))], nil)
}

// amendment returns a line about a run of a journal.
func (c *club) amendment(text []byte) []byte {
	var l journal.Line
	lines := bytes.Split(text, []byte("\n"))
	if json.Unmarshal(lines[c.IntN(len(lines))], &l) != nil {
		return nil
	}
	rpe := float64(c.IntN(11))
	more := journal.Line{V: journal.Version, Run: l.Run, N: l.N + 1 + c.IntN(30), At: l.At.Add(time.Duration(c.IntN(100)) * time.Hour), Event: journal.EventRating, Rating: &journal.Rating{RPE: &rpe}}
	if c.chance(.2) {
		more.Event, more.Rating = journal.EventWithdraw, nil
	}
	return c.text([]journal.Line{more}, false)
}

// changes are what may happen between two reviews.
var changes = []struct {
	name string
	do   func(*club)
}{
	{"nothing", func(*club) {}},
	{"a week more", func(c *club) {
		name, text := c.one("*.jsonl")
		c.write(name, append(text, c.sessions(c.player(), 3)...))
	}},
	{"a word about an earlier session", func(c *club) {
		name, text := c.one("*.jsonl")
		c.write(name, append(text, c.amendment(text)...))
	}},
	{"a copy", func(c *club) {
		name, text := c.one("*.jsonl")
		if c.chance(.5) {
			text = c.part(text)
		}
		c.write([]string{"z-", "a-"}[c.IntN(2)]+name, text)
	}},
	{"copies that part", func(c *club) {
		name, text := c.one("*.jsonl")
		c.write("b-"+name, append(slices.Clone(text), c.amendment(text)...))
		c.write(name, append(text, c.amendment(text)...))
	}},
	{"a small file", func(c *club) { c.write(fmt.Sprintf("w%d.jsonl", c.next), c.sessions(c.player(), 1+c.IntN(4))) }},
	{"an edit that keeps the length", func(c *club) {
		name, text := c.one("*.jsonl")
		for range 50 {
			if i := c.IntN(max(1, len(text))); i < len(text) && text[i] >= '1' && text[i] <= '8' {
				text[i]++
				break
			}
		}
		c.write(name, text)
	}},
	{"a line taken out", func(c *club) {
		name, text := c.one("*.jsonl")
		lines := bytes.SplitAfter(text, []byte("\n"))
		i := c.IntN(len(lines))
		c.write(name, bytes.Join(slices.Delete(lines, i, i+1), nil))
	}},
	{"half a line, and then the rest", func(c *club) {
		name, text := c.one("*.jsonl")
		more := c.sessions(c.player(), 1)
		at := c.IntN(len(more))
		if c.chance(.5) {
			at = len(more) - 1 // only its end is wanting
		}
		c.write(name, append(slices.Clone(text), more[:at]...))
		c.hold("half a line")
		c.write(name, append(text, more...))
	}},
	{"a journal gone", func(c *club) {
		if all, _ := filepath.Glob(filepath.Join(c.dir, "*.jsonl")); len(all) > 1 {
			name, _ := c.one("*.jsonl")
			_ = os.Remove(filepath.Join(c.dir, name))
		}
	}},
	{"what is kept gone", func(c *club) {
		if name, _ := c.one(".*.review"); name != "" {
			_ = os.Remove(filepath.Join(c.dir, name))
		}
	}},
	{"what is kept cut", func(c *club) {
		if name, text := c.one(".*.review"); name != "" {
			c.write(name, text[:c.IntN(len(text)+1)])
		}
	}},
	{"what is kept damaged", func(c *club) {
		if name, text := c.one(".*.review"); len(text) > 0 {
			text[c.IntN(len(text))] ^= 1 << c.IntN(8)
			c.write(name, text)
		}
	}},
	{"what is kept of another", func(c *club) {
		a, _ := c.one(".*.review")
		if _, text := c.one(".*.review"); a != "" {
			c.write(a, text)
		}
	}},
}

// plan is one that the players are held against.
func (c *club) plan() *weeks.Plan {
	p, err := weeks.Parse("w.yaml", []byte("coldfloor: 1\ntitle: W\nstarts: 2026-02-02\nweeks: 9\ndays:\n  mon: hall.yaml\n  thu: hall.yaml\n"), func(name string) (*sessions.Session, error) {
		return sessions.Parse(name, []byte("coldfloor: 1\ntitle: Hall\nblocks:\n  - title: Up\n    exercises:\n      - {name: Hops, reps: 10, contacts: 1}\n"))
	})
	if err != nil {
		c.t.Fatal(err)
	}
	return p
}

// review reviews the folder.
func (c *club) review(plan *weeks.Plan) (*Squad, []runs.File) {
	s, files, err := Of([]string{c.dir}, Options{Now: c.now, Recent: 5, Plan: func(string) *weeks.Plan { return plan }}, runs.Options{Bound: []int{1, 1 << 20}[c.IntN(2)], TempDir: c.t.TempDir()})
	if err != nil {
		c.t.Fatal(err)
	}
	return s, files
}

// hold holds the review with what is kept against that without.
func (c *club) hold(what string) {
	c.t.Helper()
	plan := c.plan()
	with, files := c.review(plan)
	kept := c.kept()
	for name := range kept {
		_ = os.Remove(filepath.Join(c.dir, name))
	}
	without, anew := c.review(plan)
	for name, text := range kept {
		c.write(name, text)
	}
	for i := range files { // whatever they are made of, they say the same
		if fmt.Sprint(files[i]) != fmt.Sprint(anew[i]) {
			c.t.Fatalf("%s: %v, and anew %v", what, files[i], anew[i])
		}
	}
	c.same(what, with, without)
	c.sameAsPile(what, with)
}

// kept returns what is kept in the folder, by the names.
func (c *club) kept() map[string][]byte {
	all := map[string][]byte{}
	paths, _ := filepath.Glob(filepath.Join(c.dir, ".*.review"))
	for _, p := range paths {
		text, err := os.ReadFile(p)
		if err != nil {
			c.t.Fatal(err)
		}
		all[filepath.Base(p)] = text
	}
	return all
}

// same holds two reviews against each other, to the last bit.
func (c *club) same(what string, a, b *Squad) {
	c.t.Helper()
	for i := range min(len(a.Players), len(b.Players)) {
		p, q := a.Players[i], b.Players[i]
		for _, s := range []*Player{p, q} {
			for _, g := range s.planned {
				if g.Counts() {
					g.session(s.Name)
				}
			}
		}
		if x, y := doneOf(p), doneOf(q); !reflect.DeepEqual(x, y) {
			c.t.Fatalf("%s: of the plan %v, and anew %v", what, x, y)
		}
		p.planned, q.planned = nil, nil
		if !reflect.DeepEqual(p, q) {
			c.t.Fatalf("%s:\n%+v\nand anew\n%+v", what, p, q)
		}
	}
	if !reflect.DeepEqual(a, b) {
		c.t.Fatalf("%s: %+v, and anew %+v", what, a, b)
	}
}

// doneOf returns the figures of the runs done for days of the plan.
func doneOf(p *Player) (all []Session) {
	for _, w := range p.Season.Weeks {
		for _, d := range w.Sessions {
			for _, r := range d.Runs {
				if r.Counts() {
					all = append(all, *p.Done(r))
				}
			}
		}
	}
	return all
}

// sameAsPile holds the review against one of whole runs.
func (c *club) sameAsPile(what string, s *Squad) {
	c.t.Helper()
	pile, err := runs.Gather([]string{c.dir}, runs.Options{})
	if err != nil {
		c.t.Fatal(err)
	}
	defer pile.Close()
	r := New(Options{Now: c.now, Recent: 5})
	if err := pile.Each(func(run runs.Run) error { r.Add(run); return nil }); err != nil {
		c.t.Fatal(err)
	}
	other := r.Squad()
	if x, y := outline(s), outline(other); !maps.Equal(x, y) {
		c.t.Fatalf("%s: %v, and of whole runs %v", what, x, y)
	}
}

// outline is what of a squad does not depend on the order of the runs.
func outline(s *Squad) map[string]string {
	all := map[string]string{"": fmt.Sprint(s.Rehearsals, s.Withdrawn, s.Empty, s.Differ, s.Missing, s.Namesakes)}
	for _, p := range s.Players {
		var recent []string
		for _, x := range p.Recent {
			recent = append(recent, fmt.Sprint(x.ID, x.Sets, x.Rest.Count, len(x.Run.Sets), len(x.Amendments)))
		}
		all[p.Name] = fmt.Sprint(figuresOf(&p.Total), p.First.Unix(), p.Last.Unix(), p.Elsewhere, p.NotBegun, len(p.Weeks), len(p.Pain), p.Exercises, recent)
	}
	return all
}

// Whatever happens to journals and to what is kept beside them, the review is
// that of the journals.
func TestKeptIsNeverTrusted(t *testing.T) {
	clubs, steps := 30, 12
	if testing.Short() {
		clubs = 6
	}
	for seed := range uint64(clubs) {
		c := newClub(t, seed)
		c.hold("new")
		for range steps {
			change := changes[c.IntN(len(changes))]
			change.do(c)
			c.hold(fmt.Sprintf("club %d, %s", seed, change.name))
		}
	}
}
