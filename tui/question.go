package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/internal/safetext"
	"coldfloor/tui/palette"
)

// answer is one way to answer a question: the key for it and the command that
// it gives.
type answer struct {
	key.Binding
	do tea.Cmd
}

// newAnswer returns an answer by any of the keys, the first of which is shown,
// that sends msg.
func newAnswer(msg tea.Msg, label string, keys ...string) answer {
	return answer{key.NewBinding(key.WithKeys(keys...), key.WithHelp(keys[0], label)), func() tea.Msg { return msg }}
}

// question is a screen that says something and waits for an answer. Text that
// is longer than the window is moved through by the arrow keys.
type question struct {
	title   string
	text    []string // paragraphs
	strong  int      // how many paragraphs, from the first, stand out
	answers []answer
	top     int // first line shown
}

// Update acts on a key.
func (q question) Update(k tea.KeyMsg, s *style, width, height int) (question, tea.Cmd) {
	for _, a := range q.answers {
		if key.Matches(k, a.Binding) {
			return q, a.do
		}
	}
	room := q.room(height)
	last := max(0, len(q.moved(s, width, height))-room)
	q.top = min(q.top, last)    // the window may have grown since
	screenful := max(1, room-2) // the lines between the signs for what is above and below
	switch k.String() {
	case "down", "j":
		q.top = min(last, q.top+1)
	case "up", "k":
		q.top = max(0, q.top-1)
	case "pgdown", " ":
		q.top = min(last, q.top+screenful)
	case "pgup":
		q.top = max(0, q.top-screenful)
	}
	return q, nil
}

// room returns how many lines of text a window has room for.
func (q question) room(height int) int {
	if q.low(height) {
		return max(1, height-1)
	}
	return height - 2 - len(q.answers)
}

// low reports whether the answers leave too little room to scroll the text in: then
// they scroll with it.
func (q question) low(height int) bool { return height-2-len(q.answers) < 3 }

// moved returns the lines that scroll: the text, and in a low window the answers.
func (q question) moved(s *style, width, height int) []string {
	lines := q.lines(width)
	if !q.low(height) {
		return lines
	}
	lines = append(lines, "")
	for _, a := range q.answers {
		lines = append(lines, safetext.Wrap(s.lang.Keys.Named(a.Help().Key)+": "+a.Help().Desc, width-2, 100)...)
	}
	return lines
}

// lines returns the text, wrapped, a blank line between two paragraphs unless
// both stand out.
func (q question) lines(width int) []string {
	var lines []string
	for i, p := range q.text {
		if i > 0 && i >= q.strong {
			lines = append(lines, "")
		}
		lines = append(lines, safetext.Wrap(p, min(width-2, 76), 100)...)
	}
	return lines
}

// heads returns how many lines of the text stand out.
func (q question) heads(width int) int {
	lead := q
	lead.text = q.text[:min(q.strong, len(q.text))]
	return len(lead.lines(width))
}

// View draws the screen: title, text, and a line for each answer at the foot; in
// large letters where there is room.
func (q question) View(s *style, width, height int) string {
	if large := q.large(s, width, height); large != nil {
		return s.screen(large, width, height)
	}
	lines := []string{titleBar(s, q.title, width)}
	text := q.moved(s, width, height)
	room := q.room(height)
	top := min(q.top, max(0, len(text)-room))
	heads := q.heads(width)
	for i, l := range text {
		if text[i] = " " + l; i < heads {
			text[i] = s.strong.Render(text[i])
		}
	}
	lines = append(lines, s.inSight(text, top, room, width)...)
	if q.low(height) {
		return s.screen(lines, width, height)
	}
	lines = append(lines, "")
	for _, a := range q.answers {
		h := a.Help()
		lines = append(lines, s.strong.Render(safetext.Pad(" "+s.lang.Keys.Named(h.Key), 8))+safetext.Fit(h.Desc, width-8))
	}
	return s.screen(lines, width, height)
}

// titleBar returns a bar across the window with a title.
func titleBar(s *style, title string, width int) string {
	if s.drab {
		return safetext.Fit("== "+title+" ==", width)
	}
	return s.fill(palette.Done).Render(safetext.Pad(" "+title, width))
}

// screen joins lines, cut to the window's height. A window too small for a
// frame gets the lines that fit, cut to its width.
func (s *style) screen(lines []string, width, height int) string {
	if len(lines) > height {
		lines = lines[:max(0, height)]
	}
	for i, l := range lines {
		lines[i] = cut(l, width)
	}
	return s.text(strings.Join(lines, "\n"))
}
