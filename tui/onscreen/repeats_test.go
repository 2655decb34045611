//go:build unix

package onscreen

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/tui/ground"
)

// bar is a model that shows a bar, which every key but q changes.
type bar int

func (bar) Init() tea.Cmd  { return nil }
func (b bar) View() string { return strings.Repeat([]string{"▄", "▀"}[b%2], 30) }
func (b bar) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch k, ok := msg.(tea.KeyMsg); {
	case ok && k.String() == "q":
		return b, tea.Quit
	case ok:
		return b + 1, nil
	}
	return b, nil
}

// TestRepeatsWhatTheTerminalDoes: a terminal is asked once, below the first
// picture, and has characters repeated that it was seen to repeat, and no others.
// Its answers are no keys.
func TestRepeatsWhatTheTerminalDoes(t *testing.T) {
	for answer, want := range map[string]bool{"\x1b[2;4R\x1b[2;4R": true, "\x1b[2;4R\x1b[2;2R": false, "\x1b[2;2R\x1b[2;2R": false} {
		x := onTerminal(t)
		end := x.run(t, bar(0), "▄▄▄")
		x.await(t, ground.RequestRepeats, 1)
		if _, err := x.keys.WriteString(answer); err != nil {
			t.Fatal(err)
		}
		keys := 0
		for until := time.Now().Add(20 * time.Second); time.Now().Before(until) && x.count("\x1b[29b") == 0 && (want || keys < 40); keys++ {
			drawn := x.count("▀") + x.count("▄")
			if _, err := x.keys.WriteString("x"); err != nil {
				t.Fatal(err)
			}
			for x.count("▀")+x.count("▄") == drawn && time.Now().Before(until) {
				time.Sleep(time.Millisecond)
			}
		}
		if got := x.count("▄\x1b[29b")+x.count("▀\x1b[29b") > 0; got != want {
			t.Errorf("%q: a character is repeated: %v", answer, got)
		}
		if last := end().(bar); int(last) != keys {
			t.Errorf("%q: %d keys came through, want %d", answer, last, keys)
		}
		if n := x.count(ground.RequestRepeats); n != 1 {
			t.Errorf("asked %d times", n)
		}
	}
}
