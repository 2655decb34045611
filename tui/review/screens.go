package review

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"coldfloor/internal/logbook"
	"coldfloor/internal/report"
	"coldfloor/internal/review"
	"coldfloor/internal/safetext"
)

// view is one of a player's views.
type view int

const (
	overviewView view = iota
	weeksView
	restView
	loadView
	painView
	plannedView
	exercisesView
	testsView
	sessionsView
	meaningView
)

var viewNames = [...]string{"overview", "weeks", "rest", "load", "pain", "plan", "exercises", "tests", "sessions", "meaning"}

// titleLine says whose review this is, and that there was pain.
func (m *Model) titleLine() string {
	right := m.opts.Squad.Now.Format("2006-01-02 15:04")
	if m.screen == onSquad {
		return m.between(m.style.strong.Render(fmt.Sprintf("Squad of %d", len(m.opts.Squad.Players))), right)
	}
	p := m.current()
	if p.Painful > 0 {
		right = m.style.pain.Render(" PAIN ") + " " + right
	}
	return m.between(m.style.strong.Render(safetext.Clean(p.Name)), right)
}

// viewLine says what of it is shown.
func (m *Model) viewLine() string {
	switch m.screen {
	case onSquad:
		return m.between(m.style.quiet.Render(m.sortedBy()), m.position())
	case onSession:
		return m.between(m.style.quiet.Render("a session, set by set"), m.position())
	}
	var parts []string
	for v, n := range viewNames {
		if view(v) == m.view {
			parts = append(parts, m.style.strong.Render("["+n+"]"))
		} else {
			parts = append(parts, m.style.quiet.Render(n))
		}
	}
	all := strings.Join(parts, " ")
	if safetext.Width(strings.Join(viewNames[:], " "))+len("[]")+len(m.position())+1 > m.width {
		all = m.style.strong.Render("["+viewNames[m.view]+"]") + m.style.quiet.Render(fmt.Sprintf(" %d of %d", m.view+1, len(viewNames)))
	}
	return m.between(all, m.position())
}

// playerPage is one view of a player.
func (m *Model) playerPage() page {
	p := m.current()
	switch m.view {
	case overviewView:
		return m.sections(report.Overview(p))
	case weeksView:
		return m.sections(report.Weeks(p))
	case restView:
		return m.sections(report.Rests(p))
	case loadView:
		return m.sections(report.Load(p))
	case painView:
		return m.sections(painSection(p))
	case plannedView:
		return m.sections(plannedSection(p, m.opts.Squad.Tolerance))
	case exercisesView:
		return m.sections(orElse(report.Exercises(p), "everything was done as prescribed"))
	case testsView:
		return m.sections(orElse(report.Tests(p), "nothing was measured yet; a session with measure: asks for the result of each try"))
	case sessionsView:
		return m.sessionsPage(p)
	}
	meaning := append(report.Meaning(m.opts.Squad), report.Fact{Name: "left out", Lines: leftOut(m.opts.Squad)})
	return m.sections(report.Section{Facts: meaning})
}

func leftOut(s *review.Squad) []string {
	if left := report.LeftOut(s); len(left) > 0 {
		return left
	}
	return []string{"nothing"}
}

// painSection is every statement of pain, and every other note. It is no table:
// nothing of it is cut.
func painSection(p *review.Player) report.Section {
	pain, notes := report.PainNotes(p), report.Notes(p)
	s := report.Section{Notes: pain.Notes}
	if len(pain.Table.Rows) == 0 {
		s.Facts = []report.Fact{{Name: "pain", Lines: []string{"none reported"}}}
	}
	for _, row := range pain.Table.Rows {
		of := "no number given"
		if _, err := strconv.Atoi(row[1]); err == nil {
			of = row[1] + " of 10"
		}
		s.Facts = append(s.Facts, fact(row[0], "PAIN, "+of+", "+row[2], row[3], row[4]))
	}
	for _, row := range notes.Table.Rows {
		s.Facts = append(s.Facts, fact(row[0], row[1], row[2]))
	}
	return s
}

// fact is a fact without empty lines.
func fact(name string, lines ...string) report.Fact {
	return report.Fact{Name: name, Lines: slices.DeleteFunc(lines, func(l string) bool { return l == "" })}
}

// plannedSection is the plan that a player is held against, if any.
func plannedSection(p *review.Player, t review.Tolerance) report.Section {
	if p.Season == nil {
		return report.Section{Notes: []string{"no plan was given: coldfloor review --plan WEEKS holds what was done against one"}}
	}
	return report.Planned(p, t)
}

// orElse returns a section, or that there is nothing in it.
func orElse(s report.Section, otherwise string) report.Section {
	if len(s.Facts) == 0 && len(s.Table.Rows) == 0 {
		s.Notes = []string{otherwise}
	}
	return s
}

// Two charts stand side by side from this width on.
const twoCharts = 110

// sections sets a section for the window.
func (m *Model) sections(s report.Section) page {
	p := page{selected: -1}
	p.lines = append(p.lines, factLines(s.Facts, m.width, func(n string) string { return m.style.strong.Render(n) })...)
	if len(s.Facts) > 0 {
		p.lines = append(p.lines, "")
	}
	p.lines = append(p.lines, m.charts(s.Charts)...)
	if len(s.Table.Rows) > 0 {
		header, rows := tableLines(s.Table, m.width, narrowOf(s))
		p.lines = append(append(p.lines, m.style.strong.Render(header)), rows...)
	}
	for _, n := range s.Notes {
		p.lines = append(append(p.lines, ""), safetext.Wrap(n, m.width, 10)...)
	}
	for len(p.lines) > 0 && p.lines[len(p.lines)-1] == "" {
		p.lines = p.lines[:len(p.lines)-1]
	}
	return p
}

// narrowOf says how a section's table is made to fit.
func narrowOf(s report.Section) narrow {
	switch s.Title {
	case "Rest kept":
		return narrow{none, []int{7, 8, 6, 1}}
	case "Load":
		return narrow{13, []int{10, 9, 1, 2, 3, 4, 5, 6, 7, 13, 12}}
	case "Planned and done":
		return narrow{12, []int{1, 8, 7, 12, 3}}
	case "Tests at home":
		return narrow{0, []int{5, 3}}
	case "Not as prescribed":
		return narrow{0, []int{6, 5, 1}}
	}
	return narrow{none, []int{7, 4, 1, 6}}
}

// charts draws charts one below the other, or two by two in a wide window.
func (m *Model) charts(all []report.Chart) []string {
	height := min(max(8, m.room()-1), 14)
	if len(all) > 2 && m.room() >= 30 {
		height = min(m.room()/((len(all)+1)/2)-1, 18)
	}
	var lines []string
	if m.width < twoCharts {
		for i := range all {
			lines = append(lines, m.style.chartLines(&all[i], m.width, height)...)
		}
		return lines
	}
	const gap = 4
	wide := (m.width - gap) / 2
	for i := 0; i < len(all); i += 2 {
		left := m.style.chartLines(&all[i], wide, height)
		if i+1 == len(all) {
			lines = append(lines, left...)
			break
		}
		lines = append(lines, beside(left, m.style.chartLines(&all[i+1], wide, height), wide+gap)...)
	}
	return lines
}

// sessionsPage is the sessions by week, the latest first.
func (m *Model) sessionsPage(p *review.Player) page {
	list := report.SessionList(p)
	header, rows := tableLines(list.Table, m.width-len(cursorMark), narrow{1, []int{5, 4, 7, 3, 9, 2, 6, 8}})
	out := page{lines: []string{m.style.strong.Render(blankMark + header)}, fixed: 1, selected: 1}
	week := ""
	for i, s := range p.Recent {
		if w := monday(s.Start); w != week {
			week = w
			out.lines = append(out.lines, m.style.quiet.Render(safetext.Fit(weekLine(p, w), m.width)))
		}
		if i == m.session && i > 0 { // the first one is seen with its week
			out.selected = len(out.lines)
		}
		out.lines = append(out.lines, m.sessionRow(rows[i], i == m.session, s.Painful()))
	}
	for _, n := range list.Notes {
		out.lines = append(out.lines, safetext.Wrap(n, m.width, 4)...)
	}
	if m.session == len(p.Recent)-1 && m.session > 0 { // the last one with what is said below
		out.selected = len(out.lines) - 1
	}
	return out
}

// monday returns the date of the Monday of a session's week, where the player
// was.
func monday(t time.Time) string {
	return t.AddDate(0, 0, -(int(t.Weekday())+6)%7).Format("2006-01-02")
}

// weekLine says what a week came to.
func weekLine(p *review.Player, week string) string {
	for i := range p.Weeks {
		if w := &p.Weeks[i]; w.Monday.Format("2006-01-02") == week {
			return "week from " + week + ": " + report.WeekLine(w)
		}
	}
	return "week from " + week
}

// sessionPage is one session, set by set and rest by rest.
func (m *Model) sessionPage() page {
	text := logbook.Show(m.current().Recent[m.session].Run, func(string) bool { return false })
	return page{lines: strings.Split(strings.TrimRight(text, "\n"), "\n"), selected: -1}
}
