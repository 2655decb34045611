package compose

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// draft is a plan of weeks that is being written.
type draft struct {
	WeeksAnswers
	days    []slot
	lighter map[int]int
}

// slot is one day of the pattern.
type slot struct {
	day     time.Weekday
	session string
	jumps   bool
}

// render writes the draft with its reasons.
func (d draft) render() ([]byte, error) {
	var w writer
	w.line(0, "# yaml-language-server: $schema=weeks.schema.json")
	w.line(0, "# A draft: change what does not fit, and check it against the ranges with")
	w.line(0, "# coldfloor check. coldfloor preview shows it week by week.")
	w.line(0, "coldfloor: 1")
	w.line(0, "title: %s from %s", units.Count(d.Count, "week"), d.Starts)
	w.line(0, "level: %s", d.Player.Level)
	w.line(0, "starts: %s", d.Starts)
	w.line(0, "weeks: %d", d.Count)
	w.line(0, "days:")
	for _, s := range d.days {
		about := "no jumps"
		if s.jumps {
			about = "jumps"
		}
		if only := d.only(s); only != "" {
			w.line(2, "%s: {session: %s, only: [%s]} # %s, not before a match", dayNames[s.day], s.session, only, about)
			continue
		}
		w.line(2, "%s: %s # %s", dayNames[s.day], s.session, about)
	}
	if err := d.grow(&w); err != nil {
		return nil, err
	}
	d.ends(&w)
	return []byte(w.String()), nil
}

// only lists the weeks of a session with jumps if a match keeps some of them
// from it.
func (d draft) only(s slot) string {
	if !s.jumps {
		return ""
	}
	var kept []string
	for w := 1; w <= d.Count; w++ {
		if !d.meetsMatch(s.day, w) {
			kept = append(kept, fmt.Sprint(w))
		}
	}
	if len(kept) == d.Count {
		return ""
	}
	return strings.Join(kept, ", ")
}

// freeWeeks counts the weeks in which no match keeps jumps from a day.
func (d draft) freeWeeks(day time.Weekday) (n int) {
	for w := 1; w <= d.Count; w++ {
		if !d.meetsMatch(day, w) {
			n++
		}
	}
	return n
}

// meetsMatch reports whether a match is on the day of a week or the day after.
func (d draft) meetsMatch(day time.Weekday, week int) bool {
	date := d.Starts + units.Date(7*(week-1)+(int(day)-int(d.Starts.Weekday())+7)%7)
	return slices.Contains(d.Matches, date) || slices.Contains(d.Matches, date+1)
}

// grow writes the one value that grows: reps of the first jumps with reps, by
// one every other week and two at most.
func (d draft) grow(w *writer) error {
	for _, s := range d.days {
		if !s.jumps || !d.grows(s) {
			continue
		}
		b, _ := sessions.FindBuiltin(s.session)
		base, err := b.Session()
		if err != nil {
			return err
		}
		for _, block := range base.Blocks {
			for _, e := range block.Exercises {
				if block.Part == sessions.Main && e.Reps > 0 && e.Contacts > 0 {
					w.line(0, "grow: # one thing at a time, slowly")
					w.line(2, "- {in: %s, block: %q, exercise: %q, what: reps, by: 1, every: 2, limit: %d}", s.session, block.Title, e.Name, e.Reps+2)
					return nil
				}
			}
		}
	}
	return nil
}

// grows reports whether the session is done in a week in which a value that
// grows from week 2 has grown.
func (d draft) grows(s slot) bool {
	grown := false
	for w := 2; w <= d.Count; w++ {
		grown = grown || d.lighter[w] == 0
		if grown && !d.meetsMatch(s.day, w) {
			return true
		}
	}
	return false
}

// ends writes the lighter weeks and the matches.
func (d draft) ends(w *writer) {
	if len(d.lighter) > 0 {
		w.line(0, "lighter: # every session stays, with less in it")
		for _, week := range slices.Sorted(maps.Keys(d.lighter)) {
			w.line(2, "- {week: %d, keep: %d%%}", week, d.lighter[week])
		}
	}
	if len(d.Matches) > 0 {
		var days []string
		for _, m := range slices.Compact(slices.Sorted(slices.Values(d.Matches))) {
			days = append(days, m.String())
		}
		w.line(0, "matches: [%s]", strings.Join(days, ", "))
	}
}
