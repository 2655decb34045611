// Package journalgen makes journals of any size for the tests of what reads
// them. No command imports it.
package journalgen

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// text is the session that every run is of: 13 sets, 12 rests.
const text = `coldfloor: 1
title: Hallway speed, made up
for: Badminton singles, off-season
level: intermediate
blocks:
  - title: Warm
    part: warm-up
    rest_after: 60s
    exercises:
      - name: Skip in place
        time: 60s
        contacts: 0
        cues: [Light feet, Tall hips]
  - title: Up
    trains: [vertical power]
    rounds: 4
    rest: 75s
    rest_after: 2m
    exercises:
      - name: Pogo hops
        reps: 10
        rep: 700ms
        contacts: 1
        cues: [Stiff ankles, Quiet floor]
        how: Bounce on the balls of the feet, knees almost straight.
  - title: Across
    trains: [change of direction]
    rounds: 4
    rest: 90s
    exercises:
      - name: Split squat
        reps_per_side: 5
        tempo: 3-1-1
        finish: hand
        rest: 30s
        load: none, or a 5 kg bag held at the chest
      - name: Skater jump
        reps_per_side: 4
        rep: 1.5s
        contacts: 1
        sides: alternate-reps
        cues: [Stick it, Knee over toes]
`

// Options says what to make.
type Options struct {
	Player   string // may be empty: then the journal names nobody
	Sessions int
	First    time.Time // of the first session; three a week follow
	Seed     uint64
}

// Truth is what was made, counted while it was made.
type Truth struct {
	Sessions, Lines, Sets, Rests, Contacts, Painful int
	Load                                            float64
	Deviations                                      []time.Duration // of every rest, in order
}

// add counts the figures of u too, except for the deviations.
func (t *Truth) add(u Truth) {
	t.Sessions += u.Sessions
	t.Lines += u.Lines
	t.Sets += u.Sets
	t.Rests += u.Rests
	t.Contacts += u.Contacts
	t.Painful += u.Painful
	t.Load += u.Load
}

// daysTo is where the three sessions of a week lie, from its first.
var daysTo = [3]int{0, 2, 4}

// Write writes one player's journal. The same options give the same bytes.
func Write(w io.Writer, o Options) (Truth, error) {
	s, err := sessions.Parse("made-up.yaml", []byte(text))
	if err != nil {
		return Truth{}, err
	}
	g := generator{Options: o, plan: plan.Of(s), rand: rand.New(rand.NewPCG(o.Seed, 1)), out: bufio.NewWriterSize(w, 256<<10)}
	for i := range o.Sessions {
		if err := g.session(o.First.AddDate(0, 0, i/3*7+daysTo[i%3])); err != nil {
			return g.truth, err
		}
	}
	return g.truth, g.out.Flush()
}

// Folder writes the journals of a squad into dir, a file a player, and returns
// what they hold together, without the deviations.
func Folder(dir string, players, sessionsEach int, first time.Time) (Truth, error) {
	var all Truth
	for i := range players {
		name := fmt.Sprintf("Player %03d", i+1)
		f, err := os.Create(filepath.Join(dir, fmt.Sprintf("player-%03d.jsonl", i+1)))
		if err != nil {
			return all, err
		}
		t, err := Write(f, Options{Player: name, Sessions: sessionsEach, First: first, Seed: uint64(i)})
		if err != nil {
			f.Close()
			return all, err
		}
		if err := f.Close(); err != nil {
			return all, err
		}
		all.add(t)
	}
	return all, nil
}

// generator writes one journal.
type generator struct {
	Options
	plan  *plan.Plan
	rand  *rand.Rand
	out   *bufio.Writer
	truth Truth

	run   string
	n     int
	start time.Time
	clock float64
}

// session writes one run, from its start to its rating.
func (g *generator) session(start time.Time) error { return g.write(g.lines(start)) }

// lines makes the lines of one run.
func (g *generator) lines(start time.Time) []journal.Line {
	g.run, g.n, g.start, g.clock = g.name(), 0, start.Add(time.Duration(g.rand.IntN(7200))*time.Second), 0
	g.truth.Sessions++
	lines := []journal.Line{{Event: journal.EventStarted, Started: g.started()}}
	last := g.plan.Sets[0]
	for _, step := range g.plan.Steps {
		switch step.Kind {
		case plan.Rest:
			lines = append(lines, journal.Line{Event: journal.EventRest, Rest: g.rest(step, last)})
		case plan.Work:
			if set := g.plan.Sets[step.Set]; g.plan.Steps[set.Last].Start == step.Start {
				last = set
				lines = append(lines, journal.Line{Event: journal.EventSet, Set: g.set(set)})
			}
		}
	}
	lines = append(lines, journal.Line{Event: journal.EventFinish, Finish: &journal.Finish{Outcome: "complete", ElapsedS: g.plan.Total.Seconds()}})
	return append(lines, journal.Line{Event: journal.EventRating, Rating: g.rating()})
}

// write writes the lines of one run.
func (g *generator) write(lines []journal.Line) error {
	for i := range lines {
		l := &lines[i]
		g.n++
		l.V, l.Run, l.N, l.Clock = journal.Version, g.run, g.n, math.Round(g.clock*1000)/1000
		l.At = g.start.Add(time.Duration(g.n) * time.Minute)
		text, err := journal.Encode(l)
		if err != nil {
			return err
		}
		if _, err := g.out.Write(text); err != nil {
			return err
		}
	}
	g.truth.Lines += len(lines)
	return nil
}

// name returns a run's name of the kind that the program gives.
func (g *generator) name() string {
	const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"
	b := make([]byte, 26)
	for i := range b {
		b[i] = letters[g.rand.IntN(len(letters))]
	}
	return string(b)
}

func (g *generator) started() *journal.Started {
	s := &journal.Started{Title: g.plan.Session.Title, Source: "/home/player/made-up.yaml", Text: text, Player: g.Player,
		TotalS: g.plan.Total.Seconds(), Program: "test"}
	for _, b := range g.plan.Blocks {
		s.Blocks = append(s.Blocks, journal.PlannedBlock{Title: b.Title, Rounds: b.Rounds, Sets: b.Sets, Contacts: journal.CountOf(b.Contacts)})
	}
	return s
}

func (g *generator) set(set plan.Set) *journal.Set {
	first := g.plan.Steps[set.First]
	e := g.plan.Exercise(set.First)
	s := &journal.Set{Place: journal.Place{Block: set.Block, Round: set.Round, Exercise: set.Exercise}, Name: e.Name, Outcome: "done",
		End: "clock", Paced: true, PlannedS: set.Work.Seconds(), TakenS: set.Work.Seconds(), Reps: set.Reps, Planned: set.Reps,
		Contacts: journal.CountOf(set.Contacts), Sides: []string{string(first.Side)}}
	if first.ByHand {
		s.ByHand, s.Paced, s.End = true, false, "finish"
		s.TakenS = math.Round(s.PlannedS*(0.9+0.4*g.rand.Float64())*1000) / 1000
		s.Sides = []string{"left", "right"}
	}
	g.clock += s.TakenS
	g.truth.Sets++
	g.truth.Contacts += set.Contacts
	return s
}

// rest returns a rest: most by the clock, some cut short, some overrun.
func (g *generator) rest(step plan.Step, after plan.Set) *journal.Rest {
	r := &journal.Rest{Place: journal.Place{Block: after.Block, Round: after.Round, Exercise: after.Exercise},
		PrescribedS: step.Length.Seconds(), TakenS: step.Length.Seconds(), End: "clock"}
	off := 0.0
	switch k := g.rand.IntN(10); {
	case k < 2:
		off, r.End = -math.Round(g.rand.Float64()*20_000)/1000, "skip"
	case k < 4:
		off = math.Round(g.rand.Float64()*30_000) / 1000
	}
	r.TakenS = math.Round((r.TakenS+off)*1000) / 1000
	g.clock += r.TakenS
	g.truth.Rests++
	g.truth.Deviations = append(g.truth.Deviations, time.Duration(math.Round(off*1000))*time.Millisecond)
	return r
}

func (g *generator) rating() *journal.Rating {
	rpe := float64(2 + g.rand.IntN(8))
	pain := g.rand.IntN(40) == 0
	r := &journal.Rating{RPE: &rpe, Pain: &pain, Rounds: []int{1, 4, 4}}
	if pain {
		where := "left knee"
		r.Where = &where
		g.truth.Painful++
	}
	g.truth.Load += rpe * g.plan.Total.Minutes()
	return r
}
