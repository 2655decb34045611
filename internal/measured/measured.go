// Package measured holds what a player measured at home (a jump's length, a
// reach on the wall, a count, a time) and what can be said of it: each day's
// mean, the typical error, and whether a change is more than that error.
//
// The typical error is the pooled standard deviation of the tries that count
// within a day (the error of a single try; Hopkins, Sports Med 2000;30:1–15,
// gives the definition from two tests, which holds the change from day to day
// too and is larger). The first day of an exercise is learning and is left out
// of it and of every change: 410 untaught adults jumped 12 cm further at once
// on their second day, and no further on the next (Marin-Jimenez et al., Eur J
// Sport Sci 2024, doi 10.1002/ejsc.12182). A day is shown by its mean before
// its best, for the mean shows a change better (Claudino et al., J Sci Med
// Sport 2017;20:397–402).
//
// Only results of one exercise, measure and way of measuring are compared:
// ways differ by more than players do (Chow et al., Appl Sci 2023;13:2142).
package measured

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/units"
)

// Result is one try.
type Result struct {
	Name     string    // of the exercise
	Measure  string    // distance, height, count or time
	Way      string    // how it was measured; may be empty
	Side     string    // left, right or both
	At       time.Time // of its set; its date is the player's
	Value    *float64  // cm, cm, a count, or s; nil: the player left it out
	Practice bool      // it does not count
}

// Series is the results of one exercise, measure, way and side.
type Series struct {
	Name, Measure, Way, Side string // as first written
	Days                     []Day  // that have a result, the earliest first
}

// Day is the tries of one day, in their order.
type Day struct {
	Date     units.Date
	Tries    []float64 // that count
	Practice []float64
	LeftOut  int // tries that the player gave no number for
}

// Mean returns the mean of the tries that count, and false if there are none.
func (d *Day) Mean() (float64, bool) {
	if len(d.Tries) == 0 {
		return 0, false
	}
	sum := 0.0
	for _, x := range d.Tries {
		sum += x
	}
	return sum / float64(len(d.Tries)), true
}

// Best returns the largest try that counts, and false if there is none or if
// more is not certainly better, as of a time.
func (s *Series) Best(d *Day) (float64, bool) {
	if len(d.Tries) == 0 || s.Measure == "time" {
		return 0, false
	}
	return slices.Max(d.Tries), true
}

// Unit returns the unit of a series' figures, and nothing for a count.
func (s *Series) Unit() string {
	switch s.Measure {
	case "distance", "height":
		return "cm"
	case "time":
		return "s"
	}
	return ""
}

// key is what results must have in common to be compared.
type key struct{ name, measure, way, side string }

func keyOf(r *Result) key { return key{fold(r.Name), r.Measure, fold(r.Way), r.Side} }

// fold makes names that differ in case or spaces the same.
func fold(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

// Of sorts results into series, by name, way and side. Those of a day come in
// the order of their times.
func Of(results []Result) []*Series {
	results = slices.Clone(results)
	slices.SortStableFunc(results, func(a, b Result) int { return a.At.Compare(b.At) })
	byKey := map[key]*Series{}
	for i := range results {
		r := &results[i]
		s := byKey[keyOf(r)]
		if s == nil {
			s = &Series{Name: r.Name, Measure: r.Measure, Way: r.Way, Side: r.Side}
			byKey[keyOf(r)] = s
		}
		s.add(r)
	}
	var all []*Series
	for _, s := range byKey {
		all = append(all, s)
	}
	slices.SortFunc(all, func(a, b *Series) int {
		return cmp.Or(strings.Compare(fold(a.Name), fold(b.Name)), strings.Compare(a.Measure, b.Measure),
			strings.Compare(fold(a.Way), fold(b.Way)), strings.Compare(a.Side, b.Side))
	})
	return all
}

// add puts a result on its day.
func (s *Series) add(r *Result) {
	on := units.DateOf(r.At)
	i, known := slices.BinarySearchFunc(s.Days, on, func(d Day, at units.Date) int { return cmp.Compare(d.Date, at) })
	if !known {
		s.Days = slices.Insert(s.Days, i, Day{Date: on})
	}
	d := &s.Days[i]
	switch {
	case r.Value == nil:
		d.LeftOut++
	case r.Practice:
		d.Practice = append(d.Practice, *r.Value)
	default:
		d.Tries = append(d.Tries, *r.Value)
	}
}

// counting returns the days with tries that count, the first one left out, and
// false if there is not even that.
func (s *Series) counting() (days []*Day, begun bool) {
	for i := range s.Days {
		if len(s.Days[i].Tries) == 0 {
			continue
		}
		if !begun {
			begun = true
			continue
		}
		days = append(days, &s.Days[i])
	}
	return days, begun
}
