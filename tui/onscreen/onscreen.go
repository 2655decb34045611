// Package onscreen puts a Bubble Tea model on the terminal.
package onscreen

import (
	"io"
	"os"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"coldfloor/tui/ground"
)

// framesPerSecond bounds how often the terminal is written to. Nothing moves
// faster than the keys; this is how late a frame may be. Bubble Tea wakes this
// often even where nothing changes: measured side by side on a virtual machine,
// with sound, 2.5 % of a core at 30, 2.9 % at 60 and 3.9 % at 120.
const framesPerSecond = 20

// Program returns the program that shows m over the whole terminal. Look is
// told once it is known whether the terminal's background is dark or light.
func Program(m tea.Model, look *lipgloss.Renderer, more ...tea.ProgramOption) *tea.Program {
	o := append([]tea.ProgramOption{tea.WithAltScreen(), tea.WithFPS(framesPerSecond)}, more...)
	first := opening{Model: m, out: os.Stdout}
	if t := ground.Of(os.Stdin); t != nil {
		o = append(o, tea.WithInput(t))
		first.ask = func() tea.Msg {
			t.Ask(os.Stdout, look)
			return told{} // the screen is drawn after every message
		}
	}
	return tea.NewProgram(first, o...)
}

// Run runs p, which is from Program, and returns what its model is at the end.
func Run(p *tea.Program) (tea.Model, error) {
	last, err := p.Run()
	if o, ok := last.(opening); ok {
		last = o.Model
	}
	return last, err
}

// told is sent when the terminal has answered.
type told struct{}

// opening is a model before its first picture. It asks the terminal for its
// background, and shows the picture as soon as there is one in the window's
// size, a frame earlier than Bubble Tea, which then writes the same again.
type opening struct {
	tea.Model
	ask   tea.Cmd
	out   io.Writer
	sized bool
}

// Init implements tea.Model.
func (m opening) Init() tea.Cmd { return tea.Batch(m.Model.Init(), m.ask) }

// Update implements tea.Model.
func (m opening) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	next, cmd := m.Model.Update(msg)
	if _, ok := msg.(tea.WindowSizeMsg); ok {
		m.sized = true
	}
	if picture := next.View(); m.sized && picture != "" {
		_, _ = io.WriteString(m.out, ansi.CursorHomePosition+strings.ReplaceAll(picture, "\n", "\r\n"))
		return next, cmd
	}
	m.Model = next
	return m, cmd
}
