// Package tui holds the screens: to choose a session, to run it, and to say
// afterwards how it was. They show what the engine, the journal and the
// catalogue hold, and keep nothing of their own beyond where the cursor is.
package tui

import (
	"coldfloor/internal/run"
	"errors"
	"fmt"
	"os"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"coldfloor/internal/cautions"
	"coldfloor/internal/engine"
	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
	"coldfloor/internal/words"
	"coldfloor/tui/glyph"
	"coldfloor/tui/onscreen"
)

// Options says what is shown, and on what.
type Options struct {
	Host    *run.Host
	Plan    *plan.Plan // the session to run; nil: one is chosen on the screen
	Journal string     // file; empty: without a log
	Reading Reading
	Glyphs  glyph.Set // the characters that large figures are drawn with
	Look    *lipgloss.Renderer
	Folder  string // where session files are looked for
}

// stage is which screen is shown.
type stage int

const (
	opening stage = iota // the journal is being read
	asking
	choosing
	running
	finishing
)

// App is the whole program on the screen. It is a tea.Model; make it with New.
type App struct {
	opts  Options
	style style
	stage stage
	log   run.Log

	question question
	choose   chooseScreen
	run      runScreen
	finish   finishScreen

	resume        *run.Resumption // to go on with, in place of a new run
	cautioned     bool
	width, height int
	closing       string // what is said after the screen is gone
	err           error
}

// New returns the screen program.
func New(o Options) App {
	return App{opts: o, style: newStyle(o.Look, o.Glyphs), width: 80, height: 24}
}

// Messages between the screens.
type (
	logOpened struct {
		log run.Log
		err error
	}
	wanted    int // the answer to a question
	stopAsked struct{}
)

const (
	wantNoLog wanted = iota
	wantGoOn
	wantAsIs
	wantNew
	wantStart
	wantLeave
)

// Interrupt is the message for an interrupt from outside: the run is stopped
// and logged as it stands.
func Interrupt() tea.Msg { return stopAsked{} }

// Init begins by reading the journal.
func (m App) Init() tea.Cmd {
	if m.opts.Journal == "" {
		return func() tea.Msg { return logOpened{} }
	}
	return func() tea.Msg {
		l, err := run.OpenLog(m.opts.Journal)
		return logOpened{l, err}
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
	case logOpened:
		return m.opened(msg)
	case wanted:
		return m.answered(msg)
	case planChosen:
		m.opts.Plan = msg.plan
		return m.begin()
	case runEnded:
		return m.ended()
	case rated:
		return m.rated(msg.rating)
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
	switch {
	case m.stage == running:
		m.run, cmd = m.run.Update(msg)
	case m.stage == finishing:
		m.finish, cmd = m.finish.Update(msg)
	case !isKey:
	case k.Type == tea.KeyCtrlZ:
		return m, tea.Suspend
	case m.stage == asking:
		m.question, cmd = m.question.Update(k, m.width, m.height)
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
	m.finish.width, m.finish.height = width, height
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
	case running:
		return m.run.View()
	case finishing:
		return m.finish.View()
	}
	return ""
}

// ask shows a question.
func (m App) ask(q question) (tea.Model, tea.Cmd) {
	m.stage, m.question = asking, q
	return m, nil
}

// opened goes on once the journal was read.
func (m App) opened(msg logOpened) (tea.Model, tea.Cmd) {
	if msg.err != nil {
		m.err = msg.err
		return m.ask(question{title: "The log cannot be written",
			text: []string{msg.err.Error(), fault.Hint(msg.err), "What you do would not be kept. Run without a log?"},
			answers: []answer{newAnswer(wantNoLog, "run without a log", "r"),
				newAnswer(wantLeave, "leave", "q", "esc", "ctrl+c")}})
	}
	m.log = msg.log
	m.opts.Host.Journal = msg.log.Journal
	if len(m.log.Unfinished) > 0 {
		return m.askUnfinished(m.log.Unfinished[0])
	}
	return m.settled()
}

// askUnfinished asks what is to become of a run that did not end.
func (m App) askUnfinished(r *journal.Run) (tea.Model, tea.Cmd) {
	done := 0
	for _, s := range r.Sets {
		if s.Outcome == string(engine.Done) {
			done++
		}
	}
	planned := 0
	for _, b := range r.Blocks() {
		planned += b.Sets
	}
	q := question{title: "A session did not end",
		text: []string{fmt.Sprintf("%s, begun %s at %s: %d of %d sets done.", r.Title(), ago(r.Start, time.Now()),
			r.Start.Local().Format("15:04"), done, planned)}}
	re, err := run.Resume(r)
	if err == nil {
		m.resume = re
		q.answers = append(q.answers, newAnswer(wantGoOn, "go on from where it stopped", "g", "enter"))
	} else {
		q.text = append(q.text, "It cannot be gone on with: "+err.Error())
	}
	q.answers = append(q.answers, newAnswer(wantAsIs, "log it as it stands", "l"),
		newAnswer(wantNew, "leave it for later", "n", "esc"), newAnswer(wantLeave, "leave", "q", "ctrl+c"))
	return m.ask(q)
}

// answered acts on an answer.
func (m App) answered(w wanted) (tea.Model, tea.Cmd) {
	switch w {
	case wantNoLog:
		m.err = nil
		return m.settled()
	case wantGoOn:
		m.opts.Plan = m.resume.Plan
		return m.begin()
	case wantAsIs:
		if err := m.log.Journal.CloseAsIs(m.log.Unfinished[0].ID); err != nil {
			m.err = err
			return m, tea.Quit
		}
		m.resume = nil
		m.log.Unfinished = m.log.Unfinished[1:]
		if len(m.log.Unfinished) > 0 {
			return m.askUnfinished(m.log.Unfinished[0])
		}
		return m.settled()
	case wantNew:
		m.resume = nil
		return m.settled()
	case wantStart:
		return m.begin()
	}
	return m, tea.Quit
}

// settled goes on once it is known whether there is a log, and what to do with
// a run that did not end.
func (m App) settled() (tea.Model, tea.Cmd) {
	if m.opts.Plan != nil {
		return m.begin()
	}
	offers, problems := run.Catalogue(m.opts.Folder)
	run.When(offers, m.log.Runs)
	m.choose = newChooseScreen(offers, problems, time.Now(), m.style)
	m.stage = choosing
	return m.resized(m.width, m.height), nil
}

// begin starts the run, after the cautions where it is the first.
func (m App) begin() (tea.Model, tea.Cmd) {
	if m.log.First() && m.log.Journal != nil && !m.cautioned {
		m.cautioned = true
		return m.ask(question{title: "Before the first session", text: cautions.FirstRun(),
			answers: []answer{newAnswer(wantStart, "start", "enter"), newAnswer(wantLeave, "leave", "q", "esc", "ctrl+c")}})
	}
	run, err := m.set()
	if err != nil {
		m.err = err
		return m, tea.Quit
	}
	m.stage = running
	m.run = newRunScreen(run, m.style, m.opts.Reading)
	m = m.resized(m.width, m.height)
	var cmd tea.Cmd
	m.run, cmd = m.run.start()
	return m, cmd
}

// set sets the run up: a new one, or the rest of one that did not end.
func (m App) set() (*run.Active, error) {
	if m.resume != nil {
		return m.opts.Host.GoOn(m.resume)
	}
	return m.opts.Host.Begin(m.opts.Plan)
}

// ended goes on to the form, or leaves where there is no log to keep it.
func (m App) ended() (tea.Model, tea.Cmd) {
	m.closing = m.summary()
	if !m.run.run.Logged() {
		return m, tea.Quit
	}
	m.stage = finishing
	m.finish = newFinishScreen(m.run.run.Plan(), m.run.run.Rounds(), m.summary(), m.style)
	return m.resized(m.width, m.height), nil
}

// summary says in a line what was done.
func (m App) summary() string {
	p := m.run.run.Plan()
	rounds, of := 0, 0
	for i, n := range m.run.run.Rounds() {
		rounds += n
		of += p.Blocks[i].Rounds
	}
	return fmt.Sprintf("%s: %s of %s, %d of %d rounds", safetext.Clean(p.Session.Title), units.Clock(m.run.run.View().Clock),
		units.Clock(p.Total), rounds, of)
}

// rated logs what was said, and leaves; after a last caution where it was of
// pain.
func (m App) rated(r journal.Rating) (tea.Model, tea.Cmd) {
	m.run.run.Rate(r)
	m.closing += "\n" + words.Logged
	if r.Pain == nil || !*r.Pain {
		return m, tea.Quit
	}
	return m.ask(question{title: "Pain noted", text: []string{cautions.PainNoted},
		answers: []answer{newAnswer(wantLeave, "leave", "enter", "q", "esc", "ctrl+c")}})
}

// Run shows the program on the terminal until it ends, and says what there is
// to say after it. Signals sends what arrives from outside: Interrupt stops
// the run; anything else leaves it as it stands.
func Run(o Options, signals <-chan os.Signal) (closing string, err error) {
	p := onscreen.Program(New(o), o.Look, tea.WithMouseCellMotion(), tea.WithoutSignalHandler())
	done := make(chan struct{})
	defer close(done)
	go func() {
		select {
		case s := <-signals:
			if s == os.Interrupt {
				p.Send(Interrupt())
				return
			}
			p.Quit()
		case <-done:
		}
	}()
	last, err := onscreen.Run(p)
	app, ok := last.(App)
	if !ok {
		return "", err
	}
	if app.stage == running && app.closing == "" {
		app.closing = words.Kept
	}
	return app.Closing(), errors.Join(err, app.Err())
}
