// Package onscreen puts a Bubble Tea model on the terminal.
package onscreen

import (
	"os"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"coldfloor/tui/ground"
)

// Program returns the program that shows m over the whole terminal. Look is told
// once it is known whether the terminal's background is dark or light.
func Program(m tea.Model, look *lipgloss.Renderer, more ...tea.ProgramOption) *tea.Program {
	o := append([]tea.ProgramOption{tea.WithAltScreen(), tea.WithFPS(framesPerSecond)}, more...)
	if t := ground.Of(os.Stdin); t != nil {
		o = append(o, tea.WithInput(t))
		m = asking{m, func() tea.Msg {
			t.Ask(os.Stdout, look)
			return told{} // the screen is drawn after every message
		}}
	}
	return tea.NewProgram(m, o...)
}

// framesPerSecond bounds how often the terminal is written to, and is how late
// a frame may be, the first as well. The screen is looked at this often even
// where it stays the same.
const framesPerSecond = 60

// asking is a model whose terminal is asked for its background as it begins.
// With the first update it is the model alone.
type asking struct {
	tea.Model
	ask tea.Cmd
}

// Init implements tea.Model.
func (m asking) Init() tea.Cmd { return tea.Batch(m.Model.Init(), m.ask) }

// told is sent when the terminal has answered.
type told struct{}
