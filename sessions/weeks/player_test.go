package weeks_test

import (
	"strings"
	"testing"

	"coldfloor/internal/units"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

const variants = `coldfloor: 1
title: Two kinds of variant
blocks:
  - title: Up # the heart of it
    rounds: 2
    rest: 60s
    exercises:
      - {name: Pogo hops, reps: 10, rep: 700ms, contacts: 1, easier: {name: Heel raises, contacts: 0, tempo: 1-1-1}}
      - {name: Split squat, reps_per_side: 5, tempo: 3-1-1, easier: Split squat with both feet flat}
      - {name: Plank, time: 20s}
`

// TestWrittenFor puts the easier variants in place of their exercises, and
// keeps what they leave out.
func TestWrittenFor(t *testing.T) {
	p, err := weeks.Parse("plan.yaml", []byte("coldfloor: 1\ntitle: T\nstarts: 2026-12-07\nweeks: 2\ndays: {mon: a.yaml}\n"),
		func(name string) (*sessions.Session, error) { return sessions.Parse(name, []byte(variants)) })
	if err != nil {
		t.Fatal(err)
	}
	s, err := p.WrittenFor(p.Days()[0], []string{"pogo hops", "Split squat", "Plank", "Not there"})
	if err != nil {
		t.Fatal(err)
	}
	x := s.Blocks[0].Exercises
	if x[0].Name != "Heel raises" || x[0].Contacts != 0 || x[0].Rep.Seconds() != 3 || x[0].Reps != 10 {
		t.Errorf("Pogo hops became %+v", x[0])
	}
	if x[1].Name != "Split squat with both feet flat" || x[1].RepsPerSide != 5 || x[1].Rep.Seconds() != 5 || x[2].Name != "Plank" {
		t.Errorf("the others became %+v", x[1:])
	}
	if !strings.Contains(string(s.Source), "# the heart of it") || s.Title != "Two kinds of variant, week 1" {
		t.Errorf("written:\n%s", s.Source)
	}
}

// TestForPlayer leaves out what falls on a player's own days away, and keeps
// the plan's.
func TestForPlayer(t *testing.T) {
	p, err := weeks.Parse("plan.yaml", []byte("coldfloor: 1\ntitle: T\nstarts: 2026-12-07\nweeks: 3\ndays: {mon: a.yaml}\naway: [2026-12-14]\n"),
		func(name string) (*sessions.Session, error) { return sessions.Parse(name, []byte(variants)) })
	if err != nil {
		t.Fatal(err)
	}
	d, err := units.ParseDate("2026-12-20")
	if err != nil {
		t.Fatal(err)
	}
	mine, err := p.ForPlayer([]weeks.Range{{From: d, To: d + 3}})
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Days()) != 2 || len(mine.Days()) != 1 {
		t.Errorf("%d days of the plan, %d of the player's; want 2 and 1", len(p.Days()), len(mine.Days()))
	}
}
