package review

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"coldfloor/internal/runs"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

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
	c.sameAsPile(what, with, plan)
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
func (c *club) sameAsPile(what string, s *Squad, plan *weeks.Plan) {
	c.t.Helper()
	pile, err := runs.Gather([]string{c.dir}, runs.Options{})
	if err != nil {
		c.t.Fatal(err)
	}
	defer pile.Close()
	r := New(Options{Now: c.now, Recent: 5, Plan: func(string) *weeks.Plan { return plan }})
	if err := pile.Each(func(run runs.Run) error { r.Add(run); return nil }); err != nil {
		c.t.Fatal(err)
	}
	other := r.Squad()
	x, y := outline(s), outline(other)
	for name := range x {
		if x[name] != y[name] {
			c.t.Fatalf("%s: %q:\n%s\nand of whole runs\n%s", what, name, x[name], y[name])
		}
	}
	if len(x) != len(y) {
		c.t.Fatalf("%s: %d players, and of whole runs %d", what, len(x), len(y))
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

// clubs is how many folders change at random.
var clubs = flag.Int("clubs", 12, "folders of journals that change at random")

// Whatever happens to journals and to what is kept beside them, the review is
// that of the journals.
func TestKeptIsNeverTrusted(t *testing.T) {
	const steps = 12
	for seed := range uint64(*clubs) {
		c := newClub(t, seed)
		c.hold("new")
		for range steps {
			change := changes[c.IntN(len(changes))]
			change.do(c)
			c.hold(fmt.Sprintf("club %d, %s", seed, change.name))
		}
	}
}
