package weeks

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
)

// readLighter reads the weeks of which a share is done.
func (r *reader) readLighter() {
	seen := map[int]bool{}
	for _, m := range r.m.Mappings("lighter", MaxWeeks, "an entry of lighter", lighterKeys...) {
		m.Need("week", "keep")
		l := Lighter{Week: m.Int("week", 1, r.weeks(), 0), Pos: m.Marks()[""]}
		if l.Week > 0 && seen[l.Week] {
			m.Problem("week", fmt.Sprintf("week %d is made lighter twice", l.Week), "keep one of the two")
		}
		seen[l.Week] = true
		hint := "write what is kept, from 1% to 99%, such as 60%"
		if v, ok := m.Value("keep"); ok && strings.Trim(v.Word(), "0123456789.") == "" && v.Word() != "" {
			hint = "did you mean keep: " + v.Word() + "%?"
		}
		m.Scalar("keep", hint, func(text string) (err error) {
			l.Keep, err = ParsePercent(text)
			if err == nil && (l.Keep < 1000 || l.Keep > 99_000) {
				l.Keep, err = 0, errors.New("is not between 1% and 99%")
			}
			return err
		})
		r.p.Lighter = append(r.p.Lighter, l)
		r.lighter = append(r.lighter, m)
	}
}

// readHold reads the weeks that add nothing.
func (r *reader) readHold() {
	v, ok := r.m.Value("hold")
	if ok && !v.IsList() {
		v.Problem(`"hold" must be a list of weeks`, "write [5]")
		return
	}
	if ok {
		r.p.Hold = r.readWeeks(v)
	}
}

// ParseRange reads one day, or two with .. between them, the first not after
// the second. The error reads on from the text.
func ParseRange(text string) (Range, error) {
	first, last, two := strings.Cut(text, "..")
	from, err := units.ParseDate(strings.TrimSpace(first))
	if err != nil || !two {
		return Range{from, from}, err
	}
	to, err := units.ParseDate(strings.TrimSpace(last))
	if err == nil && to < from {
		err = errors.New("ends before it begins")
	}
	return Range{from, to}, err
}

// RangeHint says how to write days.
const RangeHint = "write a day as 2026-12-24, or days as 2026-12-24..2026-12-26"

// readMatches reads the days of competition.
func (r *reader) readMatches() {
	v, ok := r.m.Value("matches")
	if !ok {
		return
	}
	const hint = RangeHint + `, or "2027-01-23 14:00"`
	for _, item := range v.Items(maxList) {
		item.Scalar(hint, func(text string) error {
			if day, clock, timed := strings.Cut(text, " "); timed && !strings.Contains(text, "..") {
				return r.timedMatch(day, clock)
			}
			days, err := ParseRange(text)
			if err == nil && days.To-days.From >= maxAMatch {
				err = fmt.Errorf("is more than %d days", maxAMatch)
			}
			if err != nil {
				return err
			}
			for d := days.From; d <= days.To; d++ {
				r.p.Matches = append(r.p.Matches, Match{Date: d})
			}
			return nil
		})
	}
}

// timedMatch reads a day and a time.
func (r *reader) timedMatch(day, clock string) error {
	d, err := units.ParseDate(day)
	if err != nil {
		return err
	}
	at, err := units.ParseTimeOfDay(strings.TrimSpace(clock))
	if err != nil {
		return err
	}
	r.p.Matches = append(r.p.Matches, Match{d, &at})
	return nil
}

// readAway reads the days without training.
func (r *reader) readAway() {
	if v, ok := r.m.Value("away"); ok {
		r.p.Away = ReadAway(v)
	}
}

// ReadAway reads a list of days without training, as a plan and the players'
// file give it.
func ReadAway(v yamlread.Value) []Range {
	var all []Range
	for _, item := range v.Items(maxList) {
		item.Scalar(RangeHint, func(text string) error {
			days, err := ParseRange(text)
			if err == nil {
				all = append(all, days)
			}
			return err
		})
	}
	return all
}

// readMoves reads what is done on another day.
func (r *reader) readMoves() {
	v, ok := r.m.Value("move")
	if !ok {
		return
	}
	const hint = "write lines such as 2026-12-31: 2027-01-02, from: to"
	for _, pair := range v.Pairs(maxList, hint) {
		m := Move{Pos: pair.Key.Pos()}
		read := func(to *units.Date) func(string) error {
			return func(text string) (err error) {
				*to, err = units.ParseDate(text)
				return err
			}
		}
		from, to := pair.Key.Scalar(hint, read(&m.From)), pair.Value.Scalar(hint, read(&m.To))
		if !from || !to {
			continue
		}
		if i := slices.IndexFunc(r.p.Moves, func(o Move) bool { return o.From == m.From }); i >= 0 {
			pair.Key.Problem(fmt.Sprintf("%s is moved twice", m.From), fmt.Sprintf("it is in line %d already; keep one of them", r.p.Moves[i].Pos.Line))
			continue
		}
		r.p.Moves = append(r.p.Moves, m)
		r.moves = append(r.moves, pair)
	}
}
