package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/internal/journal"
	"coldfloor/internal/run"
	"coldfloor/internal/safetext"
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

// unrated says that a run was not rated, and what rates it.
func (m App) unrated(r *journal.Run) string {
	l := m.style.lang
	return l.Plain.NotRated(safetext.Clean(m.opts.Flow.Called(r)), l.Form.AskAfter) + "\n" + l.Plain.RateHint
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
	if a := m.form.active; a != nil {
		then = quitAsked{}
		m.closing = m.summary() + "\n" + a.LoggedAs(msg.rating, m.style.lang)
		if msg.elsewhere != "" {
			m.closing = m.summary() + "\n" + m.style.lang.Form.WrittenTo(safetext.Clean(msg.elsewhere))
		}
	}
	m.form = form{}
	if msg.rating.Pain == nil || !*msg.rating.Pain {
		return m, func() tea.Msg { return then }
	}
	return m.ask(question{title: m.style.lang.Care.PainNoted, text: []string{m.style.lang.PainAdvice()},
		answers: []answer{newAnswer(then, m.style.lang.Form.GoOn, "enter", "q", "esc", "ctrl+c")}})
}

// notSaved says that what was said is not on the disk, and what can be done.
func (m App) notSaved(msg saved) question {
	q := question{title: m.style.lang.Form.NotLogged, text: []string{run.Why(m.style.lang, msg.err), m.style.lang.Form.Kept},
		answers: []answer{{Binding: newAnswer(nil, m.style.lang.Form.TryAgain, "t", "enter").Binding, do: m.save(msg.rating)}}}
	if a := m.form.active; a != nil {
		q.answers = append(q.answers, answer{Binding: newAnswer(nil, m.style.lang.Form.Elsewhere, "w").Binding,
			do: func() tea.Msg {
				file, err := a.SaveElsewhere(msg.rating)
				return saved{rating: msg.rating, elsewhere: file, err: err}
			}})
	}
	return question{title: q.title, text: q.text, answers: append(q.answers, newAnswer(formLeft{}, m.style.lang.Form.BackToForm, "b", "esc"),
		newAnswer(quitAsked{}, m.style.lang.Form.LeaveWithout, "q", "ctrl+c"))}
}

// keepTyped puts what was typed so far into the log when the screen goes away
// under the form.
func (m App) keepTyped() error {
	if a := m.form.active; a != nil {
		return a.Save(m.finish.rating())
	}
	return nil
}
