package journalgen

import (
	"bufio"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// Habit is what a made-up player does otherwise than prescribed. Days are
// counted back from the day of the review.
type Habit struct {
	Name   string
	Hidden string // what a coach is to find; empty: nothing

	Days   []int                                            // of the week, Monday 0; nil: Monday, Wednesday, Friday
	Cuts   func(ago int) float64                            // part of the rests that are cut short
	Absent func(ago int) bool                               // the session is not done
	Says   func(ago int) (where string, level int, ok bool) // of pain; a level below 0 is none
	Silent func(ago int) bool                               // the session is not rated
}

// Squad is twelve singles players of a badminton club, off-season, some of whom
// hide something.
var Squad = []Habit{
	{Name: "Ana"},
	{Name: "Bo", Hidden: "cuts four rests of five for two weeks", Cuts: func(ago int) float64 { return pick(ago < 14, .8, .05) }},
	{Name: "Cleo", Hidden: "pain 7 of 10, new", Says: func(ago int) (string, int, bool) { return "right achilles", 7, ago < 3 }},
	{Name: "Dag", Hidden: "vanished three weeks ago", Absent: func(ago int) bool { return ago < 21 }},
	{Name: "Eli"},
	{Name: "Finn", Hidden: "the same knee for weeks", Says: func(ago int) (string, int, bool) { return "left knee", 3, ago < 45 }},
	{Name: "Gro", Hidden: "trains every day", Days: []int{0, 1, 2, 3, 4, 5, 6}, Absent: func(ago int) bool { return ago > 10 && ago%7 > 3 }},
	{Name: "Hal", Hidden: "rates nothing", Silent: func(int) bool { return true }},
	{Name: "Ida", Hidden: "cuts rests a little more than before", Cuts: func(ago int) float64 { return pick(ago < 14, .35, .1) }},
	{Name: "Jon", Hidden: "comes once a week", Absent: func(ago int) bool { return ago%7 != 2 }},
	{Name: "Kit", Hidden: "hurt long ago, and well since", Says: func(ago int) (string, int, bool) { return "lower back", 6, ago > 60 && ago < 75 }},
	{Name: "Lea"},
}

func pick(first bool, a, b float64) float64 {
	if first {
		return a
	}
	return b
}

// WriteSquad writes the journals of Squad into dir, a file a player: so many
// weeks up to the day of now.
func WriteSquad(dir string, weeks int, now time.Time) error {
	s, err := sessions.Parse("made-up.yaml", []byte(text))
	if err != nil {
		return err
	}
	for i, h := range Squad {
		f, err := os.Create(filepath.Join(dir, strings.ToLower(h.Name)+".jsonl"))
		if err != nil {
			return err
		}
		g := generator{Options: Options{Player: h.Name}, plan: plan.Of(s), rand: rand.New(rand.NewPCG(uint64(i), 12)), out: bufio.NewWriter(f)}
		if err := h.write(&g, weeks, now); err != nil {
			return err
		}
		if err := g.out.Flush(); err != nil {
			return err
		}
		if err := f.Close(); err != nil {
			return err
		}
	}
	return nil
}

// write writes a player's sessions.
func (h *Habit) write(g *generator, weeks int, now time.Time) error {
	days := h.Days
	if days == nil {
		days = []int{0, 2, 4}
	}
	for ago := 7 * weeks; ago >= 0; ago-- {
		at := time.Date(now.Year(), now.Month(), now.Day()-ago, 16, 0, 0, 0, now.Location())
		weekday := (int(at.Weekday()) + 6) % 7
		if !slices.Contains(days, weekday) || h.Absent != nil && h.Absent(ago) || at.Add(3*time.Hour).After(now) {
			continue
		}
		lines := g.lines(at)
		for i := range lines {
			h.change(g, &lines[i], ago)
		}
		if err := g.write(lines); err != nil {
			return err
		}
	}
	return nil
}

// change makes a line as the player's habit has it.
func (h *Habit) change(g *generator, l *journal.Line, ago int) {
	switch l.Event {
	case journal.EventRest:
		cuts := .06
		if h.Cuts != nil {
			cuts = h.Cuts(ago)
		}
		l.Rest.TakenS, l.Rest.End = l.Rest.PrescribedS, "clock"
		if g.rand.Float64() < cuts {
			l.Rest.TakenS, l.Rest.End = l.Rest.PrescribedS*(.2+.3*g.rand.Float64()), "skip"
		}
	case journal.EventRating:
		rpe, no := float64(4+g.rand.IntN(4)), false
		*l.Rating = journal.Rating{RPE: &rpe, Pain: &no}
		if h.Silent != nil && h.Silent(ago) {
			l.Rating.RPE = nil
		}
		if h.Says == nil {
			return
		}
		if where, level, ok := h.Says(ago); ok {
			yes := true
			l.Rating.Pain, l.Rating.Where = &yes, &where
			if level >= 0 {
				l.Rating.PainLevel = &level
			}
		}
	}
}
