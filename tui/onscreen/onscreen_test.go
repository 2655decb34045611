package onscreen

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/vt"
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
		var m tea.Model = shown{Model: late(0), screen: newPainter(&out, kind{})}
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
	q := quiet{&window{File: f}}
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

// TestWindowIsGivenBackEmpty: where there is no second screen the picture does
// not stay behind the shell's lines, and none is drawn over them.
func TestWindowIsGivenBackEmpty(t *testing.T) {
	f, err := os.Create(filepath.Join(t.TempDir(), "terminal"))
	if err != nil {
		t.Fatal(err)
	}
	w := &window{File: f}
	screen := vt.NewEmulator(20, 4)
	p := newPainter(w, kind{console: true})
	p.resized(20, 4)
	for _, s := range []string{"\x1b[?1049h", "\x1b[2J", "\x1b[H", "rest\n0:42", "\x1b[2K\r", "\x1b[?1049l", "rest\n0:41"} {
		if s[0] == '\x1b' {
			_, _ = quiet{w}.WriteString(s)
			continue
		}
		p.draw(s)
	}
	f.Close()
	got, err := os.ReadFile(f.Name())
	if err != nil || !strings.Contains(string(got), "0:42") {
		t.Fatalf("%q was written; %v", got, err)
	}
	without := strings.NewReplacer("\x1b[?1049h", "", "\x1b[?1049l", "") // as the console, which knows neither
	_, _ = screen.Write([]byte(without.Replace(string(got)) + "$ "))
	if shown := strings.TrimSpace(screen.String()); shown != "$" {
		t.Errorf("%q is left on the screen", shown)
	}
}
