package tui

import (
	"fmt"
	"strconv"

	"github.com/charmbracelet/bubbles/textinput"

	"coldfloor/internal/safetext"
	"coldfloor/tui/keyline"
)

// View draws the form. Where it is higher than the window, the lines around
// the cursor are shown.
func (m finishScreen) View() string {
	body := m.body()
	lines := []string{titleBar(m.style, m.head, m.width)}
	remark := safetext.Wrap(m.remark(), m.width, 2)
	foot := m.height - len(remark) - 1
	scale := m.closeup(foot - 1 - len(body))
	if scale == nil {
		scale = m.scale()
	}
	room := max(1, min(3, foot-1), foot-1-len(scale)) // the scale is worth more than lines that can be moved to
	room = min(room, len(body))
	top := max(0, min(m.at-room/2, len(body)-room))
	lines = append(lines, m.style.inSight(body, top, room, m.width)...)
	if len(lines)+len(scale) <= foot {
		lines = append(lines, scale...)
	}
	for len(lines) < foot {
		lines = append(lines, "")
	}
	for _, l := range remark {
		lines = append(lines, m.style.quiet.Render(l))
	}
	keys, _ := keyline.Fit(*m.style.help, m.keys.at(m.line()), m.width)
	lines = append(lines, keys)
	return m.style.screen(lines, m.width, m.height)
}

// scale returns the words of the effort's figures, where the cursor is at it.
func (m finishScreen) scale() []string {
	if m.line() != lineRPE {
		return nil
	}
	var lines []string
	if m.height >= 15 {
		lines = append(lines, "")
	}
	for _, l := range safetext.WrapParts(m.style.lang.Form.Scale(), min(m.width-4, 76)) {
		lines = append(lines, m.style.quiet.Render("  "+l))
	}
	return lines
}

// remark says what the line at the cursor is for.
func (m finishScreen) remark() string {
	switch line := m.line(); {
	case line < 0:
		return m.style.lang.Form.RoundsHint
	case line == lineRPE:
		return m.style.lang.Form.EffortHint(m.style.lang.Form.AskAfter)
	case line == linePain:
		return m.style.lang.Form.PainHint
	case line == lineWhere:
		return m.style.lang.Form.WhereHint
	}
	return m.style.lang.Form.Optional
}

// formLine is a line of the form.
type formLine struct{ label, value string }

// entries returns the lines of the form. The place of the pain is blank unless
// there is any.
func (m finishScreen) entries() []formLine {
	var all []formLine
	for i, b := range m.blocks {
		all = append(all, formLine{m.style.lang.Name(b.Title), m.style.lang.Form.Rounds(m.rounds[i], b.Rounds)})
	}
	where := formLine{}
	if m.pain == yes {
		where = formLine{"  " + m.style.lang.Form.Where, m.field(m.where)}
	}
	return append(all, formLine{m.style.lang.Form.Effort, m.effort()}, formLine{m.style.lang.Form.Pain, m.painText()}, where,
		formLine{m.style.lang.Form.Note, m.field(m.note)}, formLine{m.style.lang.Form.Save, ""})
}

// painText says what was answered about pain.
func (m finishScreen) painText() string {
	switch m.pain {
	case no:
		return m.style.lang.Form.No
	case yes:
		return m.style.lang.Form.Yes
	}
	return m.style.lang.Form.NotAnswered
}

// current returns the line at the cursor as text.
func (m finishScreen) current() (label, value string) {
	switch e := m.entries()[m.at]; m.line() {
	case lineWhere:
		return m.style.lang.Form.Where, safetext.Clean(m.where.Value())
	case lineNote:
		return e.label, safetext.Clean(m.note.Value())
	default:
		return safetext.Clean(e.label), e.value
	}
}

// body draws the lines of the form.
func (m finishScreen) body() []string {
	var lines []string
	for i, e := range m.entries() {
		mark, look := "  ", m.style.note
		if i == m.at {
			mark, look = "> ", m.style.strong
		}
		wide := m.labelWidth()
		lines = append(lines, look.Render(mark+safetext.Pad(e.label, wide)+" ")+cut(e.value, m.width-wide-3))
	}
	return lines
}

// labelWidth returns how wide the labels are, in cells: in a narrow window no wider
// than what is answered.
func (m finishScreen) labelWidth() int { return max(min(15, (m.width-3)/2), min(36, m.width/3)) }

// effort says the effort in a figure and, where it has one, its word.
func (m finishScreen) effort() string {
	if m.rpe == notSaid {
		return m.style.lang.Form.NotAnswered
	}
	if word := m.style.lang.Form.RPE[m.rpe]; word != "" {
		return fmt.Sprintf("%d  %s", m.rpe, word)
	}
	return strconv.Itoa(m.rpe)
}

// field draws a text that is typed.
func (m finishScreen) field(t *textinput.Model) string {
	if !t.Focused() {
		if t.Value() == "" {
			return m.style.quiet.Render(safetext.Fit(t.Placeholder, t.Width))
		}
		return safetext.Fit(t.Value(), t.Width)
	}
	return t.View()
}
