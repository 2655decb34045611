package weeks

import (
	"errors"
	"fmt"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"coldfloor/internal/fault"
	"coldfloor/internal/nearest"
	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// weekdays are the days of the week as a file writes them, from Monday on.
var weekdays = []string{"mon", "tue", "wed", "thu", "fri", "sat", "sun"}

// weekday returns the day that a key stands for, and the nearest key to one
// that is none.
func weekday(key string) (day time.Weekday, near string, ok bool) {
	i := slices.Index(weekdays, key)
	if i >= 0 {
		return time.Weekday((i + 1) % 7), "", true
	}
	word := strings.ToLower(key)
	if len(word) > 3 {
		if i := slices.Index(weekdays, word[:3]); i >= 0 {
			return 0, weekdays[i], false
		}
	}
	return 0, nearest.Word(word, weekdays), false
}

// readDays reads the pattern of every week.
func (r *reader) readDays() {
	v, ok := r.m.Value("days")
	if !ok {
		return
	}
	const hint = "write a line such as mon: hallway-power for each day with a session"
	seen := map[time.Weekday]yamlread.Pos{}
	for _, pair := range v.Pairs(4*len(weekdays), hint) {
		word := pair.Key.Word()
		day, near, ok := weekday(word)
		if !ok {
			r.noDay(pair.Key, near)
			continue
		}
		if first, twice := seen[day]; twice {
			pair.Key.Problem(fmt.Sprintf("%q is given twice", word), fmt.Sprintf("it is in line %d already; write a list: [first, second]", first.Line))
			continue
		}
		seen[day] = pair.Key.Pos()
		for i, item := range pair.Value.OneOrMore(maxSlots) {
			r.readSlot(item, Slot{Weekday: day, Place: i + 1, Pos: item.Pos()})
		}
	}
	slices.SortStableFunc(r.p.Slots, func(a, b Slot) int { return (int(a.Weekday)+6)%7 - (int(b.Weekday)+6)%7 })
}

// noDay notes a key that is not a day of the week.
func (r *reader) noDay(key yamlread.Value, near string) {
	r.unread = true
	hint := "known here: " + strings.Join(weekdays, ", ")
	if near != "" {
		hint = "did you mean " + near + "?"
	}
	key.Problem(key.Quoted()+" is not a day of the week", hint)
}

// readSlot reads one session of a day: its name, or a mapping.
func (r *reader) readSlot(v yamlread.Value, s Slot) {
	if !v.IsMapping() {
		s.Session = v.Text(sessions.MaxText)
		r.addSlot(s)
		return
	}
	m := v.Mapping(slotKeys...)
	m.Need("session")
	s.Session = m.Text("session", sessions.MaxText)
	s.Pos = m.Marks().At("session")
	if name, ok := m.Value("session"); ok {
		s.Pos = name.Pos()
	}
	m.Scalar("at", units.TimeOfDayHint, func(text string) error {
		t, err := units.ParseTimeOfDay(text)
		if err == nil {
			s.At = &t
		}
		return err
	})
	if only, ok := m.Value("only"); ok {
		s.Only = r.readWeeks(only)
	}
	r.addSlot(s)
}

// addSlot takes in a slot and opens its session, or says at its name why it
// cannot be opened.
func (r *reader) addSlot(s Slot) {
	if s.Session == "" {
		r.unread = true
		return
	}
	r.p.Slots = append(r.p.Slots, s)
	if _, asked := r.p.bases[s.Session]; asked {
		return
	}
	base, err := r.find(s.Session)
	if err != nil {
		r.p.bases[s.Session] = nil
		message, hint := reason(s.Session, err)
		r.m.ProblemAt(s.Pos, message, hint)
		return
	}
	r.p.bases[s.Session] = base
	if n := utf8.RuneCountInString(base.Title + suffix(MaxWeeks)); n > sessions.MaxLabel {
		r.m.ProblemAt(s.Pos, "the title of this session leaves no room for the week after it", fmt.Sprintf("cut it to %d characters", sessions.MaxLabel-(n-utf8.RuneCountInString(base.Title))))
	}
}

// reason says shortly why a session cannot be opened: with the first problem
// of one that is wrong.
func reason(name string, err error) (message, hint string) {
	var problems yamlread.Problems
	if errors.As(err, &problems) && len(problems) > 0 {
		p := problems[0]
		more := ""
		if n := len(problems) - 1; n > 0 {
			more = fmt.Sprintf(", and %d more", n)
		}
		return fmt.Sprintf("the session %s has a problem in line %d: %s%s", strconv.Quote(filepath.Base(name)), p.Pos.Line, p.Message, more),
			join(p.Hint, "coldfloor check on that file says all")
	}
	return err.Error(), fault.Hint(err)
}

// join puts two hints together; either may be empty.
func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; " + b
}

// dashed is how weeks are written by who does not know of the two dots.
var dashed = regexp.MustCompile(`^[0-9]+-[0-9]+$`)

// readWeeks reads weeks of the plan: one, a list of them, or 1..4.
func (r *reader) readWeeks(v yamlread.Value) []int {
	var all []int
	for _, item := range v.OneOrMore(MaxWeeks) {
		hint := "write a list of weeks such as [1, 6], or 1..4"
		if dashed.MatchString(item.Word()) {
			hint = "did you mean " + strings.ReplaceAll(item.Word(), "-", "..") + "?"
		}
		item.Scalar(hint, func(text string) error {
			first, last, two := strings.Cut(text, "..")
			if !two {
				last = first
			}
			from, err := r.week(first)
			if err != nil {
				return err
			}
			to, err := r.week(last)
			if err != nil {
				return err
			}
			if to < from {
				return errors.New("ends before it begins")
			}
			for w := from; w <= to; w++ {
				if slices.Contains(all, w) {
					return fmt.Errorf("gives week %d twice", w)
				}
				all = append(all, w)
			}
			return nil
		})
	}
	slices.Sort(all)
	return all
}

// week reads the number of one week of the plan.
func (r *reader) week(text string) (int, error) {
	w, err := strconv.Atoi(text)
	switch {
	case err != nil || strconv.Itoa(w) != text:
		return 0, errors.New("is not a week")
	case w < 1 || w > r.weeks():
		return 0, fmt.Errorf("is not a week from 1 to %d", r.weeks())
	}
	return w, nil
}
