package report

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/report/reporttest"
	"coldfloor/internal/review"
	"coldfloor/internal/runs"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

const summer = `coldfloor: 1
title: Summer
starts: 2026-06-29
weeks: 4
days: {mon: hall.yaml, wed: hall.yaml}
lighter: [{week: 3, keep: 60%}]
hold: [2]
away: [2026-07-15]
`

const hall = `coldfloor: 1
title: Hall
blocks:
  - title: Up
    rounds: 3
    rest: 60s
    exercises:
      - {name: Pogo hops, reps: 10, rep: 1s, contacts: 1}
`

// hallRun is a run of the session, all of it done.
func hallRun(id string, at time.Time) runs.Run {
	r := &journal.Run{ID: id, Start: at, State: journal.Complete, Elapsed: 5 * time.Minute, Started: &journal.Started{Title: "Hall", Source: "/a/hall.yaml", Player: "Ana",
		Blocks: []journal.PlannedBlock{{Title: "Up", Rounds: 3, Sets: 3, Contacts: journal.CountOf(30)}}}}
	for i := range 3 {
		p := journal.Place{Block: 1, Round: i + 1, Exercise: 1}
		r.Sets = append(r.Sets, journal.Set{Place: p, Name: "Pogo hops", Outcome: journal.Done, TakenS: 10, Reps: 10, Planned: 10, Contacts: journal.CountOf(10), At: at.Add(time.Minute)})
		r.Rests = append(r.Rests, journal.Rest{Place: p, PrescribedS: 60, TakenS: 20 * float64(i+1), At: at.Add(2 * time.Minute), Left: i == 2})
	}
	return runs.Run{Run: r, Player: "Ana", Name: "Ana"}
}

// A plan of four weeks against what was done of it: on time and late, with pain,
// from paper with nothing said, missed, left out, and to come.
func TestPlanned(t *testing.T) {
	p, err := weeks.Parse("summer.yaml", []byte(summer), func(string) (*sessions.Session, error) { return sessions.Parse("hall.yaml", []byte(hall)) })
	if err != nil {
		t.Fatal(err)
	}
	r := review.New(review.Options{Now: reporttest.Now, Plan: func(string) *weeks.Plan { return p }})
	at := func(day int) time.Time { return time.Date(2026, 6, 29+day, 18, 0, 0, 0, time.UTC) }
	rpe, yes, level := 6.0, true, 7
	first, second, paper, other := hallRun("a", at(0)), hallRun("b", at(4)), hallRun("c", at(7)), hallRun("d", at(15))
	first.Rating.RPE = &rpe
	second.Rating.Pain, second.Said = &yes, []journal.Statement{{At: at(4), Pain: &yes, Where: "left knee", Level: &level, Note: "on landing"}, {At: at(4), Note: "slippery floor"}}
	paper.Started.Source, paper.Sets, paper.Rests = journal.Paper, nil, nil
	other.Started.Source, other.Started.Title = "else.yaml", "Something else"
	other.Sets[0].Easier, other.Sets[0].Variant = true, "Calf raises"
	other.Sets[1].Outcome = journal.Skipped
	for _, run := range []runs.Run{first, second, paper, other} {
		r.Add(run)
	}
	squad := r.Squad()
	golden(t, "planned.txt", textOf(t, squad, true))
	src, err := json.MarshalIndent(JSONOf(squad), "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "planned.json", append(src, '\n'))
	var page bytes.Buffer
	if err := Page(squad).Text(&page, false); err != nil || !bytes.Contains(page.Bytes(), []byte("1 of 3 and 2 more, 1 missed")) {
		t.Errorf("the page of the squad: %v\n%s", err, page.String())
	}
}

// What is planned for the day of the review stands apart from what is next.
func TestPlannedToday(t *testing.T) {
	p, err := weeks.Parse("two.yaml", []byte("coldfloor: 1\ntitle: Two\nstarts: 2026-07-13\nweeks: 2\ndays: {thu: hall.yaml}\n"), func(string) (*sessions.Session, error) { return sessions.Parse("hall.yaml", []byte(hall)) })
	if err != nil {
		t.Fatal(err)
	}
	r := review.New(review.Options{Now: reporttest.Now, Plan: func(string) *weeks.Plan { return p }})
	r.Add(hallRun("a", reporttest.Now.AddDate(0, 0, -9)))
	text := string(textOf(t, r.Squad(), true))
	for _, want := range []string{"today  Thu 16 Jul hall.yaml\n", "next   Thu 23 Jul, hall.yaml\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}
