package onscreen

import (
	"os"
	"path/filepath"
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
	const picture = "\x1b[1Hone\x1b[K\r\ntwo\x1b[K"
	size := tea.WindowSizeMsg{Width: 6, Height: 2}
	for name, c := range map[string]struct {
		msgs []tea.Msg
		want string
	}{
		"size last":           {[]tea.Msg{told{}, told{}, told{}, size, told{}}, picture},
		"no size, no picture": {[]tea.Msg{told{}, told{}, told{}}, ""},
		"nothing to show yet": {[]tea.Msg{size, told{}, told{}}, "\x1b[1H\x1b[K\r\n\x1b[K\x1b[1Hone\r\ntwo"},
		"back from a stop":    {[]tea.Msg{told{}, size, tea.ResumeMsg{}}, picture + picture},
	} {
		var out strings.Builder
		var m tea.Model = shown{Model: late(0), screen: newPainter(&out, false)}
		for _, msg := range c.msgs {
			m, _ = m.Update(msg)
		}
		if out.String() != c.want {
			t.Errorf("%s: %q was written, want %q", name, out.String(), c.want)
		}
	}
}

// TestQuietPassesOnSettingsAlone: what puts the terminal into a mode reaches
// it, a picture of Bubble Tea's does not.
func TestQuietPassesOnSettingsAlone(t *testing.T) {
	f, err := os.Create(filepath.Join(t.TempDir(), "terminal"))
	if err != nil {
		t.Fatal(err)
	}
	q := quiet{f}
	for _, s := range []string{"\x1b[?1049h", "\x1b[2J\x1b[H", "\x1b[H \x1b[K\x1b[1;0H", "\r \x1b[K\r", "\x1b[?25l", "\x1b[2K\r"} {
		if n, err := q.WriteString(s); n != len(s) || err != nil {
			t.Errorf("%q: %d, %v", s, n, err)
		}
	}
	f.Close()
	got, err := os.ReadFile(f.Name())
	if want := "\x1b[?1049h\x1b[2J\x1b[H\x1b[?25l\x1b[2K\r"; err != nil || string(got) != want {
		t.Errorf("%q got through, want %q; %v", got, want, err)
	}
}
