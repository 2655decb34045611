package onscreen

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
)

// late is a model that has nothing to show before its second message.
type late int

func (m late) Init() tea.Cmd                           { return nil }
func (m late) Update(msg tea.Msg) (tea.Model, tea.Cmd) { return m + 1, nil }
func (m late) View() string {
	if m < 2 {
		return ""
	}
	return "one\ntwo"
}

func TestFirstPictureIsShownAtOnceAndOnce(t *testing.T) {
	const picture = "\x1b[Hone\r\ntwo"
	size := tea.WindowSizeMsg{Width: 80, Height: 24}
	for name, c := range map[string]struct {
		msgs []tea.Msg
		want string
	}{
		"size first":           {[]tea.Msg{size, told{}, told{}, size}, picture},
		"size last":            {[]tea.Msg{told{}, told{}, told{}, size, told{}}, picture},
		"no size, no picture":  {[]tea.Msg{told{}, told{}, told{}}, ""},
		"nothing to show, yet": {[]tea.Msg{size}, ""},
	} {
		var out strings.Builder
		var m tea.Model = opening{Model: late(0), out: &out}
		for _, msg := range c.msgs {
			m, _ = m.Update(msg)
		}
		if out.String() != c.want {
			t.Errorf("%s: %q was written, want %q", name, out.String(), c.want)
		}
	}
}
