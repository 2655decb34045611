package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/internal/engine"
)

const (
	// look is how often the clocks are read at least while they run, so that a
	// machine that was away is noticed. Otherwise they are read when something
	// on the screen changes.
	look = time.Second

	doneTime = 6 * time.Second // how long the end is shown before the form

	// settle is how long after a set's start no key ends it, so that a double
	// slap ends one set and not the next as well.
	settle = 800 * time.Millisecond

	noticeTime = 8 * time.Second // how long a notice stays
)

// runTicked is sent when it is time to look at the clocks. Ticks of an earlier
// turn, before a key changed what comes next, are passed over.
type runTicked struct{ turn int }

// next returns the command for the next look at the clocks: when something on
// the screen changes or happens, and not before.
func (m runScreen) next() (runScreen, tea.Cmd) {
	m.turn++
	turn := m.turn
	wait, ok := m.wait()
	switch {
	case m.run.View().Phase != engine.Over && !ok:
		return m, nil
	case m.run.View().Phase != engine.Over:
	case m.stopped:
		return m.leave()
	default:
		wait, m.overAt = doneTime, m.run.Clock.Mono() // the word is to be seen
	}
	return m, tea.Tick(wait, func(time.Time) tea.Msg { return runTicked{turn} })
}

// leave ends the running screen, once.
func (m runScreen) leave() (runScreen, tea.Cmd) {
	if m.ended {
		return m, nil
	}
	m.ended = true
	return m, func() tea.Msg { return runEnded{} }
}

// wait returns how long the screen stays right, and whether it will ever change
// by itself.
func (m runScreen) wait() (time.Duration, bool) {
	v := m.run.View()
	until, ok := look, v.Phase != engine.Halted
	sooner := func(clock time.Duration) {
		until, ok = min(until, max(0, time.Duration(float64(clock)/m.speed()))), true
	}
	if next, ok := m.run.Next(); ok {
		sooner(next)
	}
	if m.notice != "" && !m.away() {
		sooner(m.noticed + m.noticeTime() + time.Millisecond - m.run.Clock.Mono())
	}
	switch {
	case v.Phase == engine.CountedIn:
		sooner(untilFigure(v.CountIn))
	case v.Phase == engine.Halted:
	case m.run.Options.Waits(m.run.Plan().Steps[v.Step]):
		sooner(time.Second - v.Elapsed%time.Second)
		m.untilBeat(v, sooner)
	default:
		sooner(untilFigure(v.Remaining))
		m.untilBeat(v, sooner)
	}
	m.untilCall(v, sooner)
	return max(until, 5*time.Millisecond), ok
}

// untilBeat tells when the rep or its phase changes, and when the figure of the
// time left in the phase does.
func (m runScreen) untilBeat(v engine.View, sooner func(time.Duration)) {
	beat, ok := m.run.Plan().Rhythm(v.Step, v.Easier).At(v.Elapsed)
	if !ok || beat.End() <= v.Elapsed {
		return
	}
	if beat.Phase == "" {
		sooner(beat.End() - v.Elapsed)
		return
	}
	sooner(untilFigure(beat.End() - v.Elapsed))
}

// untilFigure returns how long time left reads the same.
func untilFigure(left time.Duration) time.Duration {
	if d := left % time.Second; d > 0 {
		return d
	}
	return time.Second
}
