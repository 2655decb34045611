package preview

import (
	"encoding/json"
	"fmt"
	"io"
	"testing"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/sessions/weeks"
)

// BenchmarkWeeks measures the preview of 52 weeks of three sessions, files and
// all, against the preview of one of them: the "ratio" it reports.
func BenchmarkWeeks(b *testing.B) {
	src := []byte(`coldfloor: 1
title: A year
starts: 2026-12-07
weeks: 52
days: {mon: hallway-power, wed: shadow-corners, fri: quick-feet}
grow: [{in: hallway-power, exercise: Pogo hops, what: reps, by: 1, limit: 14}, {in: quick-feet, what: rest, by: -1s}]
lighter: [{week: 4, keep: 60%}]
`)
	year := func() {
		p, err := weeks.Parse("year.yaml", src, weeks.From("."))
		if err != nil {
			b.Fatal(err)
		}
		if err := WeeksText(io.Discard, plan.OfWeeks(p), nil); err != nil {
			b.Fatal(err)
		}
	}
	session := func() {
		o, err := weeks.Open("quick-feet")
		if err != nil {
			b.Fatal(err)
		}
		if err := Text(io.Discard, plan.Of(o.Session), nil, nil); err != nil {
			b.Fatal(err)
		}
	}
	var one, all time.Duration
	for b.Loop() { // side by side, so that a busy machine slows both
		begin := time.Now()
		session()
		between := time.Now()
		year()
		one, all = one+between.Sub(begin), all+time.Since(between)
	}
	b.ReportMetric(float64(all)/float64(one), "ratio")
}

// TestWeeksAddUp holds the figures of a plan of weeks against the sums of the
// plans of its days, and a week's against those of its sessions.
func TestWeeksAddUp(t *testing.T) {
	b, _ := weeks.FindBuiltin("off-season-six-weeks")
	p, err := b.Plan()
	if err != nil {
		t.Fatal(err)
	}
	d := OfWeeks(plan.OfWeeks(p))
	var all Totals
	for _, w := range d.Weeks {
		var sum Totals
		for i, day := range w.Days {
			s := plan.Of(p.Session(p.Weeks()[w.Week-1].Days[i]))
			if day.Totals != totals(s.Totals) {
				t.Errorf("%s: %+v, want %+v", day.Title, day.Totals, totals(s.Totals))
			}
			sum = plus(sum, day.Totals)
		}
		if fmt.Sprint(sum) != fmt.Sprint(w.Totals) {
			t.Errorf("week %d: %+v, want %+v", w.Week, w.Totals, sum)
		}
		all = plus(all, w.Totals)
	}
	if fmt.Sprint(all) != fmt.Sprint(d.Totals) {
		t.Errorf("all: %+v, want %+v", d.Totals, all)
	}
	text, err := json.Marshal(d)
	if err != nil || !json.Valid(text) {
		t.Error(err)
	}
}

func plus(a, b Totals) Totals {
	a.TotalS += b.TotalS
	a.WorkS += b.WorkS
	a.RestS += b.RestS
	a.ChangeS += b.ChangeS
	a.Sets += b.Sets
	a.Reps += b.Reps
	a.Contacts += b.Contacts
	return a
}
