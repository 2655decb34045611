package compose

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"coldfloor/internal/check"
	"coldfloor/internal/fault"
	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// WeeksAnswers is what a plan of weeks is drafted by.
type WeeksAnswers struct {
	Player  settings.Player // whose level and room it is for; a level is needed
	Starts  units.Date
	Count   int            // weeks, 1 to weeks.MaxWeeks
	Days    []time.Weekday // with a session, 1 to 6
	Matches []units.Date
}

// candidates are the built-in sessions of each level, those with jumps and
// those without, the better fitting first.
var candidates = map[sessions.Level]struct{ jumps, quiet []string }{
	sessions.Beginner:     {[]string{"first-hops"}, []string{"ten-minutes"}},
	sessions.Intermediate: {[]string{"hallway-power", "quick-feet", "first-hops"}, []string{"shadow-corners", "ten-minutes"}},
	sessions.Advanced:     {[]string{"deep-court", "hallway-power", "quick-feet", "first-hops"}, []string{"deep-rallies", "shadow-corners", "ten-minutes"}},
}

// Weeks drafts a plan of weeks of built-in sessions that fit the player's
// level and room: at most two days with jumps a week, as far apart as the days
// allow; one value that grows; every fourth week lighter, and the one of the
// first match. The error says what to answer differently.
func Weeks(a WeeksAnswers) ([]byte, error) {
	if err := a.check(); err != nil {
		return nil, err
	}
	jumps, quiet := a.fitting(candidates[a.Player.Level].jumps), a.fitting(candidates[a.Player.Level].quiet)
	if len(quiet) == 0 {
		return nil, fault.New("draft sessions for it with coldfloor new, and name them in a plan of your own", "no built-in session fits a room of %s", a.Player.Room)
	}
	// Matches, lighter weeks and days can stand in each other's way: the first
	// way of doing it that check has nothing against is taken.
	var last []byte
	for _, way := range []struct{ jumpDays, every int }{{2, 4}, {2, 0}, {1, 4}, {1, 0}, {0, 4}, {0, 6}} {
		d := draft{WeeksAnswers: a, lighter: a.lighterWeeks(way.every)}
		d.lay(jumps, way.jumpDays, quiet[0])
		src, err := d.render()
		if err != nil {
			return nil, err
		}
		if last = src; a.passes(src) {
			break
		}
	}
	return last, nil
}

// lay gives each day its session, at most so many of them one with jumps.
func (d *draft) lay(jumps []string, most int, quiet string) {
	jumpDays := d.jumpDays(most)
	for _, day := range monday(d.Days) {
		s := slot{day: day, session: quiet}
		if at := slices.Index(jumpDays, day); at >= 0 && len(jumps) > 0 && d.freeWeeks(day) > 0 {
			s.session, s.jumps = jumps[min(at, len(jumps)-1)], true
		}
		d.days = append(d.days, s)
	}
	for w := range d.lighter {
		if !slices.ContainsFunc(d.days, func(s slot) bool { return !s.jumps || !d.meetsMatch(s.day, w) }) {
			delete(d.lighter, w)
		}
	}
}

// passes reports whether check has nothing against a draft but notes.
func (a WeeksAnswers) passes(src []byte) bool {
	p, err := weeks.Parse("draft", src, weeks.From("."))
	return err == nil && check.AllSound(check.RunWeeks(p, check.Options{Player: a.Player}))
}

// check refuses answers that no plan can be made of.
func (a WeeksAnswers) check() error {
	switch {
	case a.Count < 1 || a.Count > weeks.MaxWeeks:
		return fmt.Errorf("there are from 1 to %d weeks in a plan", weeks.MaxWeeks)
	case len(a.Days) < 1 || len(a.Days) > 6:
		return errors.New("there are sessions on 1 to 6 days of a week, and one is left free")
	case candidates[a.Player.Level].quiet == nil:
		return errors.New("the level of the player is beginner, intermediate or advanced")
	}
	return nil
}

// fitting returns the sessions of which check has no error and no warning for
// the player and the room.
func (a WeeksAnswers) fitting(names []string) (fit []string) {
	for _, name := range names {
		b, ok := sessions.FindBuiltin(name)
		if !ok {
			continue
		}
		if s, err := b.Session(); err == nil && check.Sound(check.Run(plan.Of(s), check.Options{Player: a.Player})) {
			fit = append(fit, name)
		}
	}
	return fit
}

// monday puts days in the order of the week, from Monday on.
func monday(days []time.Weekday) []time.Weekday {
	return slices.SortedFunc(slices.Values(days), func(a, b time.Weekday) int { return (int(a)+6)%7 - (int(b)+6)%7 })
}

// jumpDays chooses at most so many days with jumps: two if any two are two days
// or more apart, else one; those furthest apart, then those that no match
// follows.
func (a WeeksAnswers) jumpDays(most int) []time.Weekday {
	days := monday(a.Days)
	slices.SortStableFunc(days, func(x, y time.Weekday) int { return a.hindered(x) - a.hindered(y) })
	best, least := days[:min(1, most)], -1
	if most < 2 {
		return slices.Clone(best)
	}
	for i, x := range days {
		for _, y := range days[i+1:] {
			gap := (int(y) - int(x) + 7) % 7
			gap = min(gap, 7-gap)
			if score := 10*gap - a.hindered(x) - a.hindered(y); gap >= 2 && score > least {
				best, least = []time.Weekday{x, y}, score
			}
		}
	}
	return slices.Clone(best)
}

// hindered counts the matches on a weekday or the day after it.
func (a WeeksAnswers) hindered(day time.Weekday) (n int) {
	for _, m := range a.Matches {
		if m.Weekday() == day || (m-1).Weekday() == day {
			n++
		}
	}
	return n
}

// lighterWeeks returns what is kept of which weeks, in percent: every so many,
// none for 0, and the week of the first match.
func (a WeeksAnswers) lighterWeeks(every int) map[int]int {
	lighter := map[int]int{}
	for w := every; every > 0 && w <= a.Count; w += every {
		lighter[w] = 60
	}
	if len(a.Matches) == 0 {
		return lighter
	}
	first := slices.Min(a.Matches)
	w := int(first-a.Starts)/7 + 1
	if first >= a.Starts && w > 1 && w <= a.Count+1 {
		w = min(w, a.Count)
		delete(lighter, w-1)
		delete(lighter, w+1)
		lighter[w] = 50
	}
	return lighter
}

// dayNames are the weekdays as a plan writes them.
var dayNames = []string{"sun", "mon", "tue", "wed", "thu", "fri", "sat"}

// ParseDays reads weekdays with commas between them; the error reads on from
// the text.
func ParseDays(text string) ([]time.Weekday, error) {
	var days []time.Weekday
	for word := range strings.SplitSeq(text, ",") {
		name, err := oneOf(word, slices.Concat(dayNames[1:], dayNames[:1])...) // from Monday
		if err != nil {
			return nil, oneOfSeveral(text, word, err)
		}
		day := time.Weekday(slices.Index(dayNames, name))
		if slices.Contains(days, day) {
			return nil, fmt.Errorf("names %s twice", name)
		}
		days = append(days, day)
	}
	return days, nil
}

// ParseMatches reads days of competition with commas between them; none is an
// answer. The error reads on from the text.
func ParseMatches(text string) ([]units.Date, error) {
	if text = strings.TrimSpace(text); text == "" || text == "none" {
		return nil, nil
	}
	var days []units.Date
	for word := range strings.SplitSeq(text, ",") {
		d, err := units.ParseDate(strings.TrimSpace(word))
		if err != nil {
			return nil, oneOfSeveral(text, word, err)
		}
		days = append(days, d)
	}
	return days, nil
}

// ParseCount reads how many weeks a plan has; the error reads on from the text.
func ParseCount(text string) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil || n < 1 || n > weeks.MaxWeeks {
		return 0, fmt.Errorf("is not a number from 1 to %d", weeks.MaxWeeks)
	}
	return n, nil
}
