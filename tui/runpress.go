package tui

import (
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
)

// settled reports whether so much of the run's clock is more than the time in
// which a key is taken for the second half of a double slap.
func (m runScreen) settled(since time.Duration) bool {
	return since >= time.Duration(float64(settle)*m.speed())
}

// pressed acts on a key.
func (m runScreen) pressed(k tea.KeyMsg) (runScreen, tea.Cmd) {
	if m.asking {
		m.asking = false
		if s := k.String(); s == "q" || s == "ctrl+c" || s == m.style.lang.Form.Yes[:1] {
			m.run.Do(engine.Stop)
			m.stopped = true
		}
		return m.next()
	}
	if after, taken := m.measure(k); taken {
		return after.next()
	}
	switch {
	case key.Matches(k, m.keys.Stop):
		m.asking = true
	case key.Matches(k, m.keys.Help):
		m = m.turnHelp()
	case key.Matches(k, m.keys.Pause):
		m = m.pause()
	case key.Matches(k, m.keys.Mute):
		m = m.mute()
	case key.Matches(k, m.keys.Louder):
		m = m.louder(1)
	case key.Matches(k, m.keys.Softer):
		m = m.louder(-1)
	case key.Matches(k, m.keys.More):
		m = m.more()
	case key.Matches(k, m.keys.Back):
		m = m.do(engine.Back, "")
	case key.Matches(k, m.keys.Repeat):
		m = m.do(engine.Repeat, "")
	case key.Matches(k, m.keys.Skip):
		m = m.do(engine.Skip, "")
	case key.Matches(k, m.keys.Easier):
		m = m.easier()
	default:
		m = m.slapped(key.Matches(k, m.keys.Finish))
	}
	return m.next()
}

// mute turns the sound off or on.
func (m runScreen) mute() runScreen {
	if m.run.ToggleMute() {
		return m.note(m.style.lang.Screen.SoundOff)
	}
	return m.note(m.style.lang.Screen.SoundOn)
}

// louder turns the volume up by steps, or down if they are below zero. How loud the
// bell is, the terminal decides.
func (m runScreen) louder(steps int) runScreen {
	percent := m.run.Louder(steps)
	if m.run.BellOnly() {
		return m.note(m.style.lang.Screen.BellVolume)
	}
	return m.note(m.style.lang.Screen.Volume(percent))
}

// do acts, and shows what was done where that is not plain to see.
func (m runScreen) do(a engine.Action, notice string) runScreen {
	m.run.Do(a)
	m.notice = ""
	if notice != "" {
		m = m.note(notice)
	}
	return m
}

// more gives the step more time, or says why it needs none.
func (m runScreen) more() runScreen {
	if m.run.View().Phase == engine.Overtime {
		return m.note(m.style.lang.Screen.NoMore)
	}
	return m.do(engine.More, m.style.lang.Screen.More)
}

// pause pauses, or goes on.
func (m runScreen) pause() runScreen {
	if m.paused() {
		return m.do(engine.Resume, "")
	}
	return m.do(engine.Pause, "")
}

// turnAway pauses for a player who turns to the shell: of a stopped program the
// sound server would play on what it holds.
func (m runScreen) turnAway() (runScreen, tea.Cmd) {
	if !m.paused() {
		m = m.pause()
	}
	return m.next()
}

// easier turns the easier variant on or off, where there is one.
func (m runScreen) easier() runScreen {
	before := m.run.View().Easier
	m.run.Do(engine.Swap)
	switch after := m.run.View().Easier; {
	case after && !before:
		return m.note(m.style.lang.Screen.Easier)
	case before && !after:
		return m.note(m.style.lang.Screen.AsGiven)
	}
	return m.note(m.style.lang.Screen.NoEasier)
}

// slapped ends the set in hand. It never ends a rest; out of a pause it goes
// on only where it was meant, by one of the keys for it.
func (m runScreen) slapped(meant bool) runScreen {
	v := m.run.View()
	switch {
	case v.Phase == engine.Halted && meant:
		return m.do(engine.Resume, "")
	case m.run.Plan().Steps[v.Step].Kind != plan.Work:
		return m
	case !m.settled(v.Elapsed):
		return m
	}
	return m.do(engine.Finish, "")
}
