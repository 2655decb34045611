// Package onscreen puts a Bubble Tea model on the terminal. It draws by itself,
// because Bubble Tea sends whole lines again, as often as its clock ticks: a
// picture is drawn after each message, at once, and only the cells that changed
// are sent. Nothing is done while nothing happens.
package onscreen

import (
	"os"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"coldfloor/tui/ground"
)

// ticksPerSecond is how often Bubble Tea looks whether it has anything to draw,
// which it never has. It cannot be less.
const ticksPerSecond = 1

// Program is a Bubble Tea program over the whole terminal.
type Program struct {
	*tea.Program
	clicks bool // the model is told of clicks
}

// New returns the program that shows m over the whole terminal. Look is told
// once it is known whether the terminal's background is dark or light, unless it
// is settled already. Clicks has the model told of clicks.
func New(m tea.Model, look *lipgloss.Renderer, clicks bool, more ...tea.ProgramOption) Program {
	out := &window{File: os.Stdout}
	o := append([]tea.ProgramOption{tea.WithAltScreen(), tea.WithFPS(ticksPerSecond), tea.WithOutput(quiet{out})}, more...)
	if clicks {
		o = append(o, tea.WithMouseCellMotion())
	}
	first := shown{Model: m, screen: newPainter(out, kindOf(os.Getenv))}
	if t := ground.Of(os.Stdin); t != nil {
		o = append(o, tea.WithInput(t))
		first.ask = tea.Batch(func() tea.Msg {
			t.Ask(os.Stdout, look)
			return told{} // the screen is drawn after every message
		}, func() tea.Msg {
			ascii, others := t.Repeats()
			return repeats{ascii, others}
		})
		first.screen.asks = ground.RequestRepeats
	}
	return Program{tea.NewProgram(first, o...), clicks}
}

// Run runs the program and returns what its model is at the end.
func (p Program) Run() (tea.Model, error) {
	defer p.mindJobs()()
	last, err := p.Program.Run()
	if s, ok := last.(shown); ok {
		last = s.Model
	}
	return last, err
}

// told is sent when the terminal has answered.
type told struct{}

// shown is a model whose pictures are put on the terminal.
type shown struct {
	tea.Model
	ask    tea.Cmd
	screen *painter
}

// Init implements tea.Model.
func (m shown) Init() tea.Cmd { return tea.Batch(m.Model.Init(), m.ask) }

// Update implements tea.Model.
func (m shown) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	var cmd tea.Cmd
	m.Model, cmd = m.Model.Update(msg)
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.screen.resized(msg.Width, msg.Height)
	case tea.ResumeMsg:
		m.screen.forget()
	case repeats:
		m.screen.reps = msg
	}
	m.screen.draw(m.Model.View())
	return m, cmd
}

// View implements tea.Model. There is nothing for Bubble Tea to draw.
func (m shown) View() string { return "" }
