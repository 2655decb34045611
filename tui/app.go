// Package tui holds the screens: to start the day's session or choose one, to run
// it, and to say afterwards how it was. They show what the flow, the engine and
// the catalogue hold, ask what the flow needs, and decide nothing.
package tui

import (
	"context"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"coldfloor/internal/engine"
	"coldfloor/internal/run"
	"coldfloor/internal/safetext"
	"coldfloor/tui/glyph"
	"coldfloor/tui/onscreen"
)

// Options says what is shown, and on what.
type Options struct {
	Flow    *run.Flow // not opened yet
	Reading Reading
	Glyphs  glyph.Set           // the characters that large figures are drawn with
	Font    safetext.Repertoire // what the terminal's font has; nil: not known
	Look    *lipgloss.Renderer
	Dull    bool    // the terminal's grounds are never bright
	Folder  string  // where session files are looked for
	Season  *Season // what the day's session comes from; nil: one is chosen from a list
	Begins  func()  // called each time that a session begins; nil: nothing
}

// stage is which screen is shown.
type stage int

const (
	opening   stage = iota // the journal is being read
	asking                 // a question
	choosing               // the list of sessions
	starting               // the run stands ready and waits for the sound device
	running                // the run
	measuring              // what came out of the last sets, before the form
	finishing              // the form
)

// App is the whole program on the screen. It is a tea.Model; make it with New.
type App struct {
	opts  Options
	style *style
	stage stage

	question question
	choose   chooseScreen
	run      runScreen
	finish   finishScreen
	results  resultsScreen
	form     form // whose the form is

	width, height int
	closing       string // what is said after the screen is gone
	err           error
}

// New returns the screen program.
func New(o Options) App {
	return App{opts: o, style: o.style(), width: 80, height: 24}
}

// style returns how everything looks.
func (o Options) style() *style {
	s := newStyle(o.Look, o.Glyphs, o.Flow.Language())
	if o.Font != nil && !s.ascii {
		s.show(o.Font)
	}
	if o.Dull {
		s.palette = s.palette.Dull()
	}
	return s
}

// Messages between the screens.
type (
	opened     struct{}
	answered   struct{ answer run.Answer }
	ready      struct{} // the sound device is there, or is not waited for any longer
	stopAsked  struct{}
	quitAsked  struct{}
	formLeft   struct{} // back to the form
	nextWanted struct{}
)

// Interrupt is the message for an interrupt from outside: the run is stopped
// and logged as it stands.
func Interrupt() tea.Msg { return stopAsked{} }

// Init begins by reading the journal.
func (m App) Init() tea.Cmd {
	return func() tea.Msg {
		m.opts.Flow.Open()
		return opened{}
	}
}

// Err returns what went wrong, after the program.
func (m App) Err() error { return m.err }

// Closing returns what there is to say after the screen is gone.
func (m App) Closing() string { return m.closing }

// Update acts on a message.
func (m App) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		return m.resized(msg.Width, msg.Height), nil
	case opened, nextWanted:
		return m.next()
	case answered:
		m.opts.Flow.Answer(msg.answer)
		return m.next()
	case dayChosen:
		return m.chooseDay(msg.day)
	case dayLeftOut:
		return m.leaveOut(msg.day)
	case listWanted:
		return m.list()
	case planChosen:
		m.opts.Flow.Choose(msg.plan, nil)
		return m.next()
	case ready:
		return m.started()
	case runEnded:
		return m.ended()
	case rated:
		return m.rated(msg.rating)
	case saved:
		return m.saved(msg)
	case resultsDone:
		return m.toForm()
	case formLeft:
		m.stage = finishing
		return m.resized(m.width, m.height), nil
	case quitAsked:
		return m, tea.Quit
	case stopAsked:
		if m.stage == running {
			m.run.run.Do(engine.Stop)
			m.closing = m.summary()
		}
		return m, tea.Quit
	}
	return m.updateStage(msg)
}

// updateStage passes a message on to the screen that is shown. Keys that were
// pressed so fast that they came as one are passed on one by one.
func (m App) updateStage(msg tea.Msg) (tea.Model, tea.Cmd) {
	if k, ok := msg.(tea.KeyMsg); ok && len(k.Runes) > 1 && !k.Paste {
		var cmds []tea.Cmd
		for _, r := range k.Runes {
			next, cmd := m.Update(tea.KeyMsg{Type: k.Type, Runes: []rune{r}, Alt: k.Alt})
			m = next.(App)
			cmds = append(cmds, cmd)
		}
		return m, tea.Batch(cmds...)
	}
	return m.updateShown(msg)
}

// updateShown passes a message on to the screen that is shown.
func (m App) updateShown(msg tea.Msg) (tea.Model, tea.Cmd) {
	var cmd tea.Cmd
	k, isKey := msg.(tea.KeyMsg)
	if isKey && (m.stage != finishing || m.finish.typing() == nil) {
		k = small(k)
		msg = k
	}
	switch {
	case isKey && k.Type == tea.KeyCtrlZ:
		if m.stage == running {
			m.run, cmd = m.run.turnAway()
		}
		return m, tea.Batch(cmd, onscreen.Suspend)
	case m.stage == running:
		m.run, cmd = m.run.Update(msg)
	case m.stage == finishing:
		m.finish, cmd = m.finish.Update(msg)
	case !isKey:
	case m.stage == measuring:
		m.results, cmd = m.results.Update(k)
	case m.stage == asking:
		m.question, cmd = m.question.Update(k, m.style, m.width, m.height)
	case m.stage == choosing:
		m.choose, cmd = m.choose.Update(k)
	case k.String() == "q" || k.String() == "ctrl+c":
		return m, tea.Quit
	}
	return m, cmd
}

// resized tells every screen of the window's size. Before the first such
// message the window is taken to be the usual one.
func (m App) resized(width, height int) App {
	m.width, m.height = width, height
	m.choose.width, m.choose.height = width, height
	if m.finish.style != nil {
		m.finish = m.finish.resized(width, height)
	}
	if m.run.run != nil {
		m.run = m.run.resized(width, height)
	}
	return m
}

// View draws the screen that is shown.
func (m App) View() string {
	switch m.stage {
	case asking:
		return m.question.View(m.style, m.width, m.height)
	case choosing:
		return m.choose.View()
	case starting, running:
		return m.run.View()
	case measuring:
		return m.results.View(m.width, m.height)
	case finishing:
		return m.finish.View()
	}
	return ""
}

// soundReady waits for the sound device.
func soundReady(a *run.Active) tea.Cmd {
	return func() tea.Msg {
		a.AwaitSound(context.Background())
		return ready{}
	}
}
