package check

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// RunWeeks returns what the rules find in a plan of weeks: first of the plan's
// own file, and then of each file of a session, in the order of the week. What
// is found of a session in several weeks is one finding with its weeks. Within
// is how long the sessions of a week may take together. All of it is a coach's,
// and English.
func RunWeeks(p *weeks.Plan, o Options) []FileFindings {
	o.Player.Level = cmp.Or(p.Level, o.Player.Level)
	o.Language = &text.English
	w := &weeksChecker{checker: checker{o: o, w: &o.Language.Findings}, p: plan.OfWeeks(p)}
	for _, r := range rules {
		if r.runWeeks != nil && !slices.Contains(o.Player.Off, r.Name) {
			w.rule = r.Name
			r.runWeeks(w)
		}
	}
	sortFindings(w.found)
	files := []FileFindings{{File: p.Name, Findings: w.found}}
	o.Within, o.Jumps = 0, nil
	return append(files, ofSessions(w.p, o)...)
}

// weeksChecker is one run of the rules for plans of weeks.
type weeksChecker struct {
	checker
	p *plan.Weeks
}

// sortFindings puts findings in the order of the file.
func sortFindings(found []Finding) {
	slices.SortStableFunc(found, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.Pos.Line, b.Pos.Line), cmp.Compare(a.Pos.Column, b.Pos.Column))
	})
}

// sameFinding names what is one finding in many weeks: what is said of one
// place, except for the figures in it.
type sameFinding struct {
	rule     string
	severity Severity
	pos      yamlread.Pos
	words    string
}

// merged is a finding with its weeks.
type merged struct {
	Finding
	weeks  []int
	varies bool // its figures are not the same in every week
	of     int  // the week whose figures it has
	weight plan.Totals
}

// ofSessions runs the rules for sessions over the session of every week.
func ofSessions(p *plan.Weeks, o Options) []FileFindings {
	type source struct {
		file  string
		found map[sameFinding]*merged
		order []sameFinding
	}
	byName := map[string]*source{}
	var names []string
	done := map[*sessions.Session]bool{}
	for _, w := range p.List {
		for _, d := range w.Sessions {
			if done[d.Session] {
				continue
			}
			done[d.Session] = true
			s := byName[d.Slot.Session]
			if s == nil {
				s = &source{file: d.Session.Name, found: map[sameFinding]*merged{}}
				byName[d.Slot.Session] = s
				names = append(names, d.Slot.Session)
			}
			for _, f := range Run(d.Plan, o) {
				key := sameFinding{f.Rule, f.Severity, f.Pos, withoutFigures(f.Message)}
				if s.found[key] == nil {
					s.found[key] = &merged{}
					s.order = append(s.order, key)
				}
				s.found[key].add(f, d.Dose, d.Totals)
			}
		}
	}
	var files []FileFindings
	for _, name := range names {
		s := byName[name]
		file := FileFindings{File: s.file}
		for _, key := range s.order {
			file.Findings = append(file.Findings, s.found[key].finding())
		}
		sortFindings(file.Findings)
		files = append(files, file)
	}
	return files
}

// withoutFigures returns a message without its digits.
func withoutFigures(message string) string {
	return strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' || r == '.' {
			return -1
		}
		return r
	}, message)
}

// add takes in the finding of one more week. It is told with the figures of
// the week that asks the most.
func (m *merged) add(f Finding, week int, t plan.Totals) {
	m.varies = m.varies || len(m.weeks) > 0 && f.Message != m.Message
	if len(m.weeks) == 0 || cmp.Or(cmp.Compare(t.Contacts, m.weight.Contacts), cmp.Compare(t.Work, m.weight.Work)) > 0 {
		m.Finding, m.of, m.weight = f, week, t
	}
	m.weeks = append(m.weeks, week)
}

// finding returns the finding with its weeks.
func (m *merged) finding() Finding {
	f := m.Finding
	f.Message += " (" + weekList(m.weeks)
	if m.varies {
		f.Message += fmt.Sprintf("; figures of week %d", m.of)
	}
	f.Message += ")"
	with := map[string]any{"weeks": m.weeks}
	for k, v := range f.Figures {
		with[k] = v
	}
	f.Figures = with
	return f
}

// weekList writes weeks as "week 4" or "weeks 1–3, 5".
func weekList(list []int) string {
	list = slices.Compact(slices.Sorted(slices.Values(list)))
	var parts []string
	for i := 0; i < len(list); {
		j := i
		for j+1 < len(list) && list[j+1] == list[j]+1 {
			j++
		}
		switch {
		case j == i:
			parts = append(parts, fmt.Sprint(list[i]))
		case j == i+1:
			parts = append(parts, fmt.Sprintf("%d, %d", list[i], list[j]))
		default:
			parts = append(parts, fmt.Sprintf("%d–%d", list[i], list[j]))
		}
		i = j + 1
	}
	if len(list) == 1 {
		return "week " + parts[0]
	}
	return "weeks " + strings.Join(parts, ", ")
}

// jumping reports whether a session of the plan has jumps outside what only
// prepares, counted or not.
func jumping(d plan.DayPlan) bool {
	if d.Contacts > 0 {
		return true
	}
	for i := range d.Session.Blocks {
		b := &d.Session.Blocks[i]
		for j := range b.Exercises {
			if b.Part == sessions.Main && jumps.Is(&b.Exercises[j]) {
				return true
			}
		}
	}
	return false
}

// jumpDates returns the dates with jumps, in order, each with the first of its
// sessions that has some.
func (w *weeksChecker) jumpDates() (days []plan.DayPlan) {
	for _, week := range w.p.List {
		for _, d := range week.Sessions {
			if jumping(d) && (len(days) == 0 || days[len(days)-1].Date != d.Date) {
				days = append(days, d)
			}
		}
	}
	return days
}

// matches returns the days of competition in order.
func (w *weeksChecker) matches() []units.Date {
	var days []units.Date
	for _, m := range w.p.Matches {
		days = append(days, m.Date)
	}
	slices.Sort(days)
	return slices.Compact(days)
}

// limitHigh returns the upper end of a limit as a whole number.
func (w *weeksChecker) limitHigh(key string) int { return int(settings.Range(w.limit(key)).High) }
