package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/internal/cautions"
	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/run"
	"coldfloor/internal/safetext"
	"coldfloor/internal/words"
)

// form is what the form on the screen is for: a run that has just ended, or an
// earlier one that was not rated.
type form struct {
	active *run.Active // nil: an earlier one
}

// saved is sent when it was tried to put what was said on the disk.
type saved struct {
	rating    journal.Rating
	elsewhere string // the file that it was written to in place of the log
	err       error
}

// askEarlier shows the form for a run whose effort was not said.
func (m App) askEarlier(r *journal.Run) (tea.Model, tea.Cmd) {
	m.stage, m.form = finishing, form{}
	m.finish = newFinishScreen(r.Blocks(), r.RoundsDone(), safetext.Clean(m.opts.Flow.Called(r)), m.style)
	return m.resized(m.width, m.height), nil
}

// rated has what was said put on the disk.
func (m App) rated(r journal.Rating) (tea.Model, tea.Cmd) { return m, m.save(r) }

// save returns the command that puts r on the disk.
func (m App) save(r journal.Rating) tea.Cmd {
	f := m.opts.Flow
	if a := m.form.active; a != nil {
		return func() tea.Msg { return saved{rating: r, err: a.Save(r)} }
	}
	return func() tea.Msg { return saved{rating: r, err: f.Rate(r)} }
}

// saved goes on once what was said is on the disk, after a last caution if it
// was of pain. What is not on the disk is said, and kept in the form.
func (m App) saved(msg saved) (tea.Model, tea.Cmd) {
	if msg.err != nil {
		return m.ask(m.notSaved(msg))
	}
	var then tea.Msg = nextWanted{}
	if m.form.active != nil {
		then = quitAsked{}
		m.closing = m.summary() + "\n" + words.Logged
		if msg.elsewhere != "" {
			m.closing = m.summary() + "\nwritten to " + safetext.Clean(msg.elsewhere) + "; put it beside your journal"
		}
	}
	m.form = form{}
	if msg.rating.Pain == nil || !*msg.rating.Pain {
		return m, func() tea.Msg { return then }
	}
	return m.ask(question{title: "Pain noted", text: []string{cautions.PainNoted},
		answers: []answer{newAnswer(then, "go on", "enter", "q", "esc", "ctrl+c")}})
}

// notSaved says that what was said is not on the disk, and what can be done.
func (m App) notSaved(msg saved) question {
	q := question{title: "Not logged yet", text: []string{fault.Text(msg.err), "What you typed is kept, and is tried again."},
		answers: []answer{{Binding: newAnswer(nil, "try again", "t", "enter").Binding, do: m.save(msg.rating)}}}
	if a := m.form.active; a != nil {
		q.answers = append(q.answers, answer{Binding: newAnswer(nil, "write it to another place", "w").Binding,
			do: func() tea.Msg {
				file, err := a.SaveElsewhere(msg.rating)
				return saved{rating: msg.rating, elsewhere: file, err: err}
			}})
	}
	return question{title: q.title, text: q.text, answers: append(q.answers, newAnswer(formLeft{}, "back to the form", "b", "esc"),
		newAnswer(quitAsked{}, "leave without it", "q", "ctrl+c"))}
}

// keepTyped puts what was typed so far into the log when the screen goes away
// under the form.
func (m App) keepTyped() error {
	if a := m.form.active; a != nil {
		return a.Save(m.finish.rating())
	}
	return nil
}
