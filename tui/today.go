package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/internal/season"
	"coldfloor/internal/text"
	"coldfloor/internal/today"
	"coldfloor/sessions/weeks"
)

// Messages of the screen of the day.
type (
	dayChosen  struct{ day *season.Day } // one session of the plan of weeks
	dayLeftOut struct{ day *season.Day } // one that the player chooses not to do
	listWanted struct{}                  // all sessions instead
)

// Season is the plan of weeks that the day's session comes from.
type Season struct {
	Plan     *weeks.Plan
	Interval time.Duration // the least from one session with jumps to the next
}

// showToday shows what is today's of the plan of weeks.
func (m App) showToday() (tea.Model, tea.Cmd) {
	d := today.Of(m.opts.Season.Plan, m.opts.Flow.Runs(), time.Now(), m.opts.Season.Interval)
	return m.ask(questionOfToday(d, m.style.lang, m.opts.Flow.Logged()))
}

// leaveOut logs that a day's session is left out, and shows the day again.
func (m App) leaveOut(d *season.Day) (tea.Model, tea.Cmd) {
	p, err := today.Session(m.opts.Season.Plan, d.Planned)
	if err == nil {
		err = m.opts.Flow.LeaveOut(p, today.Started(m.opts.Season.Plan, d.Planned))
	}
	if err != nil {
		m.err = err
		return m, tea.Quit
	}
	return m.showToday()
}

// questionOfToday returns the screen of a day: first what is today's, then what
// is next and what was missed. Enter runs what is today's; what is not, is
// begun by a key of its own. With a log, the latest one missed can be left out
// for good.
func questionOfToday(d *today.Day, l *text.Language, logged bool) question {
	lines, w := d.Lines(l), &l.Choose
	q := question{title: lines[0], text: lines[1:], strong: d.Strong()}
	if d.Current != nil {
		q.answers = append(q.answers, newAnswer(dayChosen{d.Current}, w.StartToday, "enter", "s"))
	}
	for _, o := range d.Missed {
		if o.Offer {
			q.answers = append(q.answers, newAnswer(dayChosen{o.Day}, w.DoMissed(l.Date(o.Date)), "m"))
		}
	}
	if len(d.Missed) > 0 && logged {
		q.answers = append(q.answers, newAnswer(dayLeftOut{d.Missed[0].Day}, w.LeaveOut(l.Date(d.Missed[0].Date)), "x"))
	}
	if d.Current == nil && d.Next != nil {
		q.answers = append(q.answers, newAnswer(dayChosen{d.Next}, w.DoNow(l.Date(d.Next.Date)), "n"))
	}
	q.answers = append(q.answers, newAnswer(listWanted{}, w.AllSessions, "l"),
		newAnswer(quitAsked{}, w.Leave, "q", "esc", "ctrl+c"))
	return q
}

// chooseDay makes a session of the plan of weeks the one to run.
func (m App) chooseDay(d *season.Day) (tea.Model, tea.Cmd) {
	p, err := today.Session(m.opts.Season.Plan, d.Planned)
	if err != nil {
		m.err = err
		return m, tea.Quit
	}
	m.opts.Flow.Choose(p, today.Started(m.opts.Season.Plan, d.Planned))
	return m.next()
}
