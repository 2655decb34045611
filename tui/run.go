package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/internal/engine"
	"coldfloor/internal/run"
	"coldfloor/internal/strip"
)

// runEnded is sent when the session is over.
type runEnded struct{}

// runScreen is the running screen. The runner holds the truth; the screen
// shows it.
type runScreen struct {
	run     *run.Active
	style   *style
	keys    runKeys
	reading Reading

	width, height int
	strip         *strip.Strip

	turn    int
	notice  string
	noticed time.Duration // clock time of the notice
	heard   string        // last notice of the sound
	entry   entry         // a result that is being typed
	asking  bool          // whether to stop
	helping bool          // the keys are shown
	page    int           // of the keys
	stopped bool          // by the player, who need not be told that it is over
	ended   bool
	overAt  time.Duration // clock time at which the end was first seen
}

// newRunScreen returns the screen of a run that has not started.
func newRunScreen(r *run.Active, s *style, from Reading) runScreen {
	return runScreen{run: r, style: s, keys: newRunKeys(&s.lang.Keys), reading: from}
}

// start starts the run.
func (m runScreen) start() (runScreen, tea.Cmd) {
	m.run.Do(engine.Start)
	return m.next()
}

// resized returns the screen for another size of the window.
func (m runScreen) resized(width, height int) runScreen {
	m.width, m.height = width, height
	m.strip = strip.Of(m.run.Plan(), width)
	m.page = min(m.page, m.helpPages()-1)
	if text := m.readable(); text != "" {
		m = m.note(text)
	}
	return m
}

// Update acts on a message.
func (m runScreen) Update(msg tea.Msg) (runScreen, tea.Cmd) {
	switch msg := msg.(type) {
	case runTicked:
		if msg.turn != m.turn {
			return m, nil
		}
		if m.over() {
			return m.leave()
		}
		return m.look().next()
	case tea.KeyMsg:
		switch {
		case msg.Paste:
		case !m.over():
			return m.look().pressed(msg)
		case m.settled(m.run.Clock.Mono() - m.overAt):
			return m.leave()
		}
	case tea.MouseMsg:
		if msg.Action == tea.MouseActionPress && !tea.MouseEvent(msg).IsWheel() && !m.over() {
			if m.asking { // like any key that does not stop
				m.asking = false
				return m.look().next()
			}
			return m.look().slapped(true).next()
		}
	}
	return m, nil
}

// look brings the run up to the present and notices what has changed.
func (m runScreen) look() runScreen {
	if away := m.run.Tick(); away != 0 {
		m = m.note(m.style.lang.Away(time.Duration(float64(away)/m.speed()), m.run.Alone()))
	}
	if n := m.run.SoundNotice(); n != m.heard {
		if m.heard = n; n != "" {
			m = m.note(n)
		}
	}
	if m.notice != "" && m.run.Clock.Mono()-m.noticed > m.noticeTime() && !m.away() {
		m.notice = ""
	}
	return m
}

// note shows a notice for a while.
func (m runScreen) note(text string) runScreen {
	m.notice, m.noticed = text, m.run.Clock.Mono()
	return m
}

// noticeTime returns how long a notice stays, by the run's clock.
func (m runScreen) noticeTime() time.Duration { return time.Duration(float64(noticeTime) * m.speed()) }

func (m runScreen) speed() float64 { return run.SpeedOf(m.run.Clock) }

// over reports whether the session is over, which is shown for a while.
func (m runScreen) over() bool { return m.run.View().Phase == engine.Over }

// away reports whether the run stands because the machine was away: what is
// said of that stays.
func (m runScreen) away() bool { return m.paused() && m.run.View().Cause == engine.ByGap }

func (m runScreen) paused() bool { return m.run.View().Phase == engine.Halted }
