package tui

import (
	"slices"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/internal/engine"
	"coldfloor/internal/run"
	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
)

// next shows what the flow needs next.
func (m App) next() (tea.Model, tea.Cmd) {
	switch need := m.opts.Flow.Next(); {
	case need.Ask != nil:
		return m.ask(questionOf(need.Ask))
	case need.Rate != nil:
		return m.askEarlier(need.Rate)
	case need.Choose && m.opts.Season != nil && !m.opts.Flow.Narrowed():
		return m.showToday()
	case need.Choose:
		return m.list()
	case need.Start:
		return m.begin()
	}
	m.err = m.opts.Flow.Err()
	return m, tea.Quit
}

// ask shows a question.
func (m App) ask(q question) (tea.Model, tea.Cmd) {
	m.stage, m.question = asking, q
	return m, nil
}

// questionOf returns the screen for an Ask.
func questionOf(q *run.Ask) question {
	screen := question{title: q.Title}
	for _, p := range q.Text {
		screen.text = append(screen.text, strings.ReplaceAll(safetext.Clean(p), "\n", " "))
	}
	later := false // there is an answer that puts it off: Escape gives it
	for _, a := range q.Answers {
		keys := []string{a.Key}
		switch {
		case a.Enter && a.Key != "enter":
			keys = append(keys, "enter")
		case a.Key == "n":
			keys, later = append(keys, "esc"), true
		case a.Leave:
			keys = append(keys, "ctrl+c")
			if !later {
				keys = append(keys, "esc")
			}
		}
		screen.answers = append(screen.answers, newAnswer(answered{a}, a.Label, keys...))
	}
	return screen
}

// list shows the sessions to choose from.
func (m App) list() (tea.Model, tea.Cmd) {
	offers, problems := run.Catalogue(m.opts.Folder)
	offers = slices.DeleteFunc(offers, func(o run.Offer) bool { return !m.opts.Flow.Offered(o.Plan) })
	if err := m.opts.Flow.When(offers); err != nil {
		m.err = err
		return m, tea.Quit
	}
	m.choose = newChooseScreen(offers, problems, time.Now(), m.style)
	m.stage = choosing
	return m.resized(m.width, m.height), nil
}

// begin sets the run up, and starts it once the sound device is there.
func (m App) begin() (tea.Model, tea.Cmd) {
	active, err := m.opts.Flow.Start()
	if err != nil {
		m.err = err
		return m, tea.Quit
	}
	m.stage = starting
	m.run = newRunScreen(active, m.style, m.opts.Reading)
	return m.resized(m.width, m.height), soundReady(active)
}

// started starts the run.
func (m App) started() (tea.Model, tea.Cmd) {
	if m.stage != starting {
		return m, nil
	}
	var cmd tea.Cmd
	m.stage = running
	m.run, cmd = m.run.start()
	if m.opts.Begins != nil {
		m.opts.Begins()
	}
	return m, cmd
}

// ended goes on from the end of the session.
func (m App) ended() (tea.Model, tea.Cmd) {
	m.closing = m.summary()
	return m.toForm()
}

// toForm goes on to the form, or leaves if there is no log to keep it.
func (m App) toForm() (tea.Model, tea.Cmd) {
	a := m.run.run
	if !a.Logged() || a.Rehearsal() {
		if a.Logged() && a.Written() == nil { // what is not is told when the log is closed
			m.closing += "\n" + m.style.lang.Plain.Rehearsal
		}
		return m, tea.Quit
	}
	if len(a.Due()) > 0 {
		m.stage, m.results = measuring, resultsScreen{run: a, style: m.style}
		return m, nil
	}
	m.stage, m.form = finishing, form{active: a}
	m.finish = newFinishScreen(a.Done().Blocks(), a.Rounds(), m.summary(), m.style)
	return m.resized(m.width, m.height), nil
}

// summary says in a line what was done, in all parts of the run.
func (m App) summary() string {
	a := m.run.run
	p := a.Plan()
	rounds, of := 0, 0
	for i, n := range a.Rounds() {
		rounds += n
		of += p.Blocks[i].Rounds
	}
	l := m.style.lang
	return safetext.Clean(l.Title(p.Session.Title)) + ": " + l.Screen.Target(units.Clock(a.Clocked()), units.Clock(p.Total)) + ", " + l.Form.Rounds(rounds, of)
}

// underWay reports whether a run has begun and has not ended.
func (m App) underWay() bool {
	return m.stage == running && m.run.run.View().Phase != engine.Over
}
