package tui

import (
	"coldfloor/internal/text"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/help"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/internal/journal"
	"coldfloor/internal/safetext"
)

// rated is sent when the form is left, with what was given.
type rated struct{ rating journal.Rating }

// maxNote bounds what can be typed into a line of the form, in characters.
const maxNote = 500

// finishScreen is the form after a session. Every line of it may be skipped.
type finishScreen struct {
	blocks  []journal.PlannedBlock
	counted []int // rounds as they were counted, a block each
	rounds  []int // as the player says
	rpe     int   // notSaid or 0 to 10
	pain    int   // notSaid, no or yes
	where   textinput.Model
	note    textinput.Model
	head    string // what was done, in a line

	style style
	keys  formKeys
	help  help.Model
	at    int // the line with the cursor

	width, height int
}

// Answers of a line that has not been touched, and to yes or no.
const (
	notSaid = -1
	no      = 0
	yes     = 1
)

// formKeys are the keys of the form.
type formKeys struct {
	Up, Next, Less, More, Done, Leave key.Binding
}

func newFormKeys(t *text.Keys) formKeys {
	bind := func(name, help string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, help))
	}
	return formKeys{
		Up:    bind("↑", t.Up, "up", "shift+tab"),
		Next:  bind("enter", t.NextField, "down", "tab", "enter"),
		Less:  bind("←", t.Less, "left", "-"),
		More:  bind("→", t.Greater, "right", "+"),
		Done:  bind("ctrl+s", t.Save, "ctrl+s"),
		Leave: bind("esc", t.Save, "esc", "ctrl+c"),
	}
}

// ShortHelp returns the bindings for the foot of the screen.
func (k formKeys) ShortHelp() []key.Binding {
	return []key.Binding{k.Next, k.Less, k.More, k.Leave}
}

// newFinishScreen returns the form for a run of the blocks given in which those
// rounds were counted; nil if they are not known.
func newFinishScreen(blocks []journal.PlannedBlock, counted []int, head string, s style) finishScreen {
	if len(counted) != len(blocks) {
		blocks, counted = nil, nil
	}
	input := func(hint string) textinput.Model {
		t := textinput.New()
		t.Prompt, t.Placeholder, t.CharLimit = "", hint, maxNote
		t.PlaceholderStyle = s.quiet
		t.Cursor.SetMode(cursor.CursorStatic) // nothing on the screen blinks
		return t
	}
	return finishScreen{blocks: blocks, counted: counted, rounds: slices.Clone(counted), rpe: notSaid, pain: notSaid,
		where: input(s.lang.Form.Where), note: input(s.lang.Form.NoteHint), head: head,
		style: s, keys: newFormKeys(&s.lang.Keys), help: s.help(), at: len(counted)}
}

// The lines of the form after those for the blocks, counted from the last
// block on. The place of the pain is passed over unless there is any.
const (
	lineRPE = iota
	linePain
	lineWhere
	lineNote
	lineSave
)

// resized returns the form for another size of the window.
func (m finishScreen) resized(width, height int) finishScreen {
	m.width, m.height = width, height
	wide := max(4, width-m.labelWidth()-5)
	m.where.Width, m.note.Width = wide, wide
	return m
}

// line returns which line has the cursor, counted from the last block on;
// below zero for a block.
func (m finishScreen) line() int { return m.at - len(m.rounds) }

// typing returns the text that is typed into, if any.
func (m *finishScreen) typing() *textinput.Model {
	switch m.line() {
	case lineWhere:
		return &m.where
	case lineNote:
		return &m.note
	}
	return nil
}

// Update acts on a message.
func (m finishScreen) Update(msg tea.Msg) (finishScreen, tea.Cmd) {
	k, isKey := msg.(tea.KeyMsg)
	input := m.typing()
	switch {
	case !isKey:
		return m, nil
	case key.Matches(k, m.keys.Leave), key.Matches(k, m.keys.Done), m.line() == lineSave && k.Type == tea.KeyEnter:
		return m, func() tea.Msg { return rated{m.rating()} }
	case key.Matches(k, m.keys.Up):
		return m.move(-1)
	case key.Matches(k, m.keys.Next):
		return m.move(1)
	case input != nil:
		var cmd tea.Cmd
		*input, cmd = input.Update(msg)
		return m, cmd
	case key.Matches(k, m.keys.Less):
		return m.turn(-1), nil
	case key.Matches(k, m.keys.More):
		return m.turn(1), nil
	}
	return m.typed(k.String()), nil
}

// move moves the cursor by one line.
func (m finishScreen) move(by int) (finishScreen, tea.Cmd) {
	m.at = max(0, min(len(m.rounds)+lineSave, m.at+by))
	if m.line() == lineWhere && m.pain != yes {
		m.at += by
	}
	m.where.Blur()
	m.note.Blur()
	if input := m.typing(); input != nil {
		return m, input.Focus()
	}
	return m, nil
}

// turn changes the number or the answer at the cursor by one.
func (m finishScreen) turn(by int) finishScreen {
	switch line := m.line(); {
	case line < 0:
		return m.setRounds(m.rounds[m.at] + by)
	case line == lineRPE:
		m.rpe = max(notSaid, min(10, m.rpe+by))
	case line == linePain:
		m.pain = max(notSaid, min(yes, m.pain+by))
	}
	return m
}

// setRounds sets the rounds of the block at the cursor.
func (m finishScreen) setRounds(n int) finishScreen {
	m.rounds = slices.Clone(m.rounds)
	m.rounds[m.at] = max(0, min(m.blocks[m.at].Rounds, n))
	return m
}

// typed takes a figure, or the first letter of yes or no. A 1 and then a 0
// make ten.
func (m finishScreen) typed(s string) finishScreen {
	n, err := strconv.Atoi(s)
	figure := err == nil && len(s) == 1
	switch line := m.line(); {
	case line < 0 && figure:
		if ten := m.rounds[m.at]*10 + n; ten <= m.blocks[m.at].Rounds && m.rounds[m.at] > 0 {
			n = ten
		}
		return m.setRounds(n)
	case line == lineRPE && figure:
		if m.rpe == 1 && n == 0 {
			n = 10
		}
		m.rpe = n
	case line == linePain && s == "y":
		m.pain = yes
	case line == linePain && s == "n":
		m.pain = no
	}
	return m
}

// rating returns what was said; what was not touched is left out.
func (m finishScreen) rating() journal.Rating {
	var r journal.Rating
	if !slices.Equal(m.rounds, m.counted) {
		r.Rounds = m.rounds
	}
	if m.rpe != notSaid {
		v := float64(m.rpe)
		r.RPE = &v
	}
	if m.pain != notSaid {
		pain := m.pain == yes
		r.Pain = &pain
		if where := strings.TrimSpace(m.where.Value()); pain && where != "" {
			r.Where = &where
		}
	}
	if note := strings.TrimSpace(m.note.Value()); note != "" {
		r.Note = &note
	}
	return r
}

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
	top := max(0, min(m.at-room/2, len(body)-room))
	lines = append(lines, body[top:min(len(body), top+room)]...)
	if len(lines)+len(scale) <= foot {
		lines = append(lines, scale...)
	}
	for len(lines) < foot {
		lines = append(lines, "")
	}
	for _, l := range remark {
		lines = append(lines, m.style.quiet.Render(l))
	}
	h := m.help
	h.Width = m.width
	lines = append(lines, cut(h.ShortHelpView(m.keys.ShortHelp()), m.width))
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
	for _, l := range safetext.Wrap(m.style.lang.Form.Scale(), min(m.width-4, 76), 4) {
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
	case line == linePain, line == lineWhere:
		return m.style.lang.Form.PainHint
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
		all = append(all, formLine{b.Title, m.style.lang.Form.Rounds(m.rounds[i], b.Rounds)})
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

// labelWidth returns how wide the labels are, in cells.
func (m finishScreen) labelWidth() int { return max(15, min(36, m.width/3)) }

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
func (m finishScreen) field(t textinput.Model) string {
	if !t.Focused() {
		if t.Value() == "" {
			return m.style.quiet.Render(safetext.Fit(t.Placeholder, t.Width))
		}
		return safetext.Fit(t.Value(), t.Width)
	}
	return t.View()
}
