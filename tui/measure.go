package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/safetext"
	"coldfloor/internal/text"
	"coldfloor/sessions"
)

// entry is a result while it is typed.
type entry struct {
	text  string
	wrong bool // what was entered is no result
}

// mostTyped is how many characters a result may have.
const mostTyped = 8

// typed takes a key in, and reports whether it was one of those that results are
// typed with. Answered tells that the result of t is known, or left out by
// Escape: then value is nil.
func (e entry) typed(k tea.KeyMsg, m sessions.Measure) (after entry, value *float64, answered, taken bool) {
	switch k.Type {
	case tea.KeyBackspace:
		e.text, e.wrong = e.text[:max(0, len(e.text)-1)], false
		return e, nil, false, true
	case tea.KeyEsc:
		return entry{}, nil, true, true
	case tea.KeyEnter:
		v, err := m.ParseResult(e.text)
		if err != nil {
			e.wrong = true
			return e, nil, false, true
		}
		return entry{}, &v, true, true
	case tea.KeyRunes:
		if s := string(k.Runes); isNumber(s) {
			if len(e.text)+len(s) <= mostTyped {
				e.text += s
			}
			e.wrong = false
			return e, nil, false, true
		}
	}
	return e, nil, false, false
}

// isNumber reports whether s holds nothing but what numbers are typed with.
func isNumber(s string) bool { return s != "" && strings.Trim(s, "0123456789.,") == "" }

// line shows what was typed so far, with its unit.
func (e entry) line(m sessions.Measure) string {
	return strings.TrimSpace(e.text + "_ " + m.Unit())
}

// hint says what the keys do, or what is wrong with what was entered.
func (e entry) hint(l *text.Language, m sessions.Measure) string {
	if e.wrong {
		return l.Screen.OneMore + ": " + l.NoResult(m)
	}
	return l.Screen.KeepResult
}

// nameOf returns the name of the exercise of a try, made safe to show.
func nameOf(l *text.Language, p *plan.Plan, t plan.Try) string {
	return safetext.Clean(l.Name(p.Steps[p.Sets[t.Set].First].Name))
}

// measures reports whether what is pressed now may be a result: in a rest after
// a try whose result is due.
func (m runScreen) measures() bool {
	v := m.run.View()
	return len(m.run.Due()) > 0 && m.run.Plan().Steps[v.Step].Kind != plan.Work
}

// measure takes a key in while a result is due, and reports whether it was
// meant for that. A number that is typed into the work that follows does not
// end it.
func (m runScreen) measure(k tea.KeyMsg) (runScreen, bool) {
	due := m.run.Due()
	if len(due) == 0 {
		return m, false
	}
	if !m.measures() {
		return m, k.Type == tea.KeyRunes && isNumber(string(k.Runes))
	}
	after, value, answered, taken := m.entry.typed(k, due[0].Measure)
	m.entry = after
	if answered {
		m.run.Measured(due[0], value)
	}
	return m, taken
}

// asksResult returns the lines that ask for a result, and what stands at the
// foot meanwhile; nil if none is due.
func (m runScreen) asksResult() (lines []string, foot string) {
	if !m.measures() {
		return nil, ""
	}
	t := m.run.Due()[0]
	foot = m.entry.hint(m.style.lang, t.Measure)
	if named := nameOf(m.style.lang, m.run.Plan(), t) + ": " + foot; !m.entry.wrong && ansi.StringWidth(named) <= m.width {
		foot = named // the keys are worth more than the name
	}
	return []string{m.style.lang.Try(t), m.entry.line(t.Measure)}, foot
}

// resultsScreen asks, without a limit of time, for the results that are still
// due at the end of a session.
type resultsScreen struct {
	run   *run.Active
	entry entry
	said  []string // what was answered here
	style *style
}

// resultsDone is sent when no result is due any longer.
type resultsDone struct{}

// Update acts on a key.
func (r resultsScreen) Update(k tea.KeyMsg) (resultsScreen, tea.Cmd) {
	if k.Type == tea.KeyCtrlC {
		for _, t := range r.run.Due() {
			r.run.Measured(t, nil)
		}
	}
	if due := r.run.Due(); len(due) > 0 {
		text := r.entry.text
		var value *float64
		var answered bool
		if r.entry, value, answered, _ = r.entry.typed(k, due[0].Measure); answered {
			r.said = append(r.said, r.answer(due[0], text, value))
			r.run.Measured(due[0], value)
		}
	}
	if len(r.run.Due()) == 0 {
		return r, func() tea.Msg { return resultsDone{} }
	}
	return r, nil
}

// answer says what was answered.
func (r resultsScreen) answer(t plan.Try, text string, value *float64) string {
	said := r.style.lang.Screen.LeftOut
	if value != nil {
		said = strings.TrimSpace(text + " " + t.Measure.Unit())
	}
	return nameOf(r.style.lang, r.run.Plan(), t) + ", " + r.style.lang.Try(t) + ": " + said
}

// View draws the screen: what was answered, what is asked, and how much is
// still to come.
func (r resultsScreen) View(width, height int) string {
	due := r.run.Due()
	if len(due) == 0 {
		return ""
	}
	t := due[0]
	lines := []string{titleBar(r.style, r.style.lang.Screen.Results, width), ""}
	room := max(0, height-8)
	for _, s := range r.said[max(0, len(r.said)-room):] {
		lines = append(lines, r.style.quiet.Render(safetext.Fit(" "+s, width)))
	}
	lines = append(lines, r.style.strong.Render(safetext.Fit(" "+nameOf(r.style.lang, r.run.Plan(), t)+", "+r.style.lang.Try(t), width)),
		r.style.strong.Render(safetext.Fit(" "+r.entry.line(t.Measure), width)))
	if t.Way != "" {
		lines = append(lines, r.style.note.Render(safetext.Fit(" "+safetext.Clean(r.style.lang.Name(t.Way)), width)))
	}
	lines = append(lines, "", safetext.Fit(" "+r.entry.hint(r.style.lang, t.Measure), width))
	if n := len(due) - 1; n > 0 {
		lines = append(lines, safetext.Fit(" "+r.style.lang.Screen.MoreResults(n), width))
	}
	lines = append(lines, r.closeup(t, width, height-len(lines)-1)...)
	return r.style.screen(lines, width, height)
}

// closeup returns what is asked, what was typed and what the keys do in large
// letters, for a player who stands away; nothing where there is no room for the
// first two.
func (r resultsScreen) closeup(t plan.Try, width, rows int) []string {
	high := (rows - 2) / 2
	if high < 3 {
		return nil
	}
	asked, _ := r.style.letters(nameOf(r.style.lang, r.run.Plan(), t)+", "+r.style.lang.Try(t), width-2, high, mostText)
	typed, _ := r.style.letters(r.entry.line(t.Measure), width-2, high, float64(max(mostText, rows/4)))
	if asked == nil || typed == nil {
		return nil
	}
	lines := append([]string{""}, asked...)
	lines = append(append(lines, ""), typed...)
	if hint, _ := r.style.letters(r.entry.hint(r.style.lang, t.Measure), width-2, rows-len(lines)-1, mostAnswer); hint != nil {
		lines = append(append(lines, ""), hint...)
	}
	for i, l := range lines {
		lines[i] = r.style.strong.Render(strings.TrimRight(l, " "))
	}
	return lines
}
