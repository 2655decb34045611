// Package reporttest makes up a squad for the tests of what shows a review. No
// command imports it.
package reporttest

import (
	"fmt"
	"math"
	"math/rand/v2"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/review"
	"coldfloor/internal/runs"
)

// Now is when the made-up squad is reviewed: a Thursday evening.
var Now = time.Date(2026, 7, 16, 20, 0, 0, 0, time.UTC)

// weeks is how many weeks the players train, the one of Now among them.
const weeks = 14

// Names are those of the made-up players.
var Names = []string{"Player 1", "Player 2", "Player 3"}

// Squad returns the review of some players by these names, always the same for
// the same names. Each trains three times a week, rests nearly as prescribed,
// leaves a session unrated now and then, and reports pain twice.
func Squad(names ...string) *review.Squad {
	r := review.New(review.Options{Now: Now, Weeks: 60, Recent: 200})
	for i, name := range names {
		g := generator{rand: rand.New(rand.NewPCG(uint64(i), 7)), name: name, id: i}
		g.season(r)
	}
	return r.Squad()
}

// generator makes the sessions of one player up.
type generator struct {
	rand *rand.Rand
	name string
	id   int
	n    int
}

// season adds every session of the player.
func (g *generator) season(r *review.Reviewer) {
	monday := time.Date(2026, 7, 13, 18, 0, 0, 0, time.UTC).AddDate(0, 0, -7*(weeks-1))
	for w := range weeks {
		for _, day := range []int{0, 2, 4} {
			start := monday.AddDate(0, 0, 7*w+day).Add(time.Duration(g.rand.IntN(90)) * time.Minute)
			if start.Before(Now) && g.rand.IntN(12) > 0 {
				r.Add(runs.Run{Run: g.run(start, w), Player: g.name})
			}
		}
	}
}

// run makes one session of two blocks up; players put more effort in from week
// to week, with every fourth one easier.
func (g *generator) run(start time.Time, week int) *journal.Run {
	g.n++
	r := &journal.Run{ID: fmt.Sprintf("RUN%d%03d", g.id, g.n), Start: start, State: journal.Complete, Elapsed: 31 * time.Minute,
		Started: &journal.Started{Title: "Hallway speed", Source: "hallway.yaml", Player: g.name, TotalS: 1830, Blocks: []journal.PlannedBlock{
			{Title: "Up", Rounds: 3, Sets: 3, Contacts: journal.CountOf(30)}, {Title: "Across", Rounds: 3, Sets: 3, Contacts: journal.CountOf(24)}}}}
	last := 6
	if g.rand.IntN(8) == 0 {
		last, r.State = 5, journal.Stopped
	}
	for i := range last {
		block, round := i/3+1, i%3+1
		at := journal.Place{Block: block, Round: round, Exercise: 1}
		name, reps := "Pogo hops", 10
		if block == 2 {
			name, reps = "Skater jump", 8
		}
		r.Sets = append(r.Sets, journal.Set{Place: at, Name: name, Outcome: "done", End: "clock", PlannedS: 12, TakenS: 12,
			Reps: reps, Planned: reps, Contacts: journal.CountOf(reps), Sides: []string{"both"}, Paced: true})
		if i < last-1 {
			r.Rests = append(r.Rests, g.rest(at))
		}
	}
	g.rate(r, week)
	return r
}

// rest makes a rest of 75 s up: some are cut short, more run over.
func (g *generator) rest(at journal.Place) journal.Rest {
	off := math.Round(g.rand.NormFloat64()*40+15) / 10
	switch g.rand.IntN(6) {
	case 0:
		off -= 15
	case 1:
		off += 20
	}
	return journal.Rest{Place: at, PrescribedS: 75, TakenS: 75 + off, End: "clock"}
}

// rate says what the player said of a session.
func (g *generator) rate(r *journal.Run, week int) {
	if g.rand.IntN(20) == 0 {
		return
	}
	rpe := float64(3 + (week%4+week/4+g.rand.IntN(3))%7)
	if week%4 == 3 {
		rpe = 3
	}
	pain := g.n == 9 || g.n == 26
	r.Rating = journal.Rating{RPE: &rpe, Pain: &pain}
	if pain {
		where, note := "left knee", "on landing, from the third round on"
		r.Said = []journal.Statement{{Pain: &pain, Where: where, Note: note}}
	}
}
