package tui

import (
	"slices"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/tui/keyline"
)

// View draws the screen.
func (m runScreen) View() string {
	v := m.run.View()
	f := m.frame(v)
	f.foot, f.loud = m.foot(v)
	if m.helping && !m.asking {
		f.help = m.fullHelp()
	}
	lines, foot := m.asksResult()
	if m.small() {
		if lines != nil && !f.loud {
			f.foot, f.loud = strings.Join(lines, ": "), true
			if m.entry.wrong {
				f.foot = foot
			}
		}
		return f.String()
	}
	f.strip = m.style.stripLine(m.strip, placeOf(m.run.Plan(), v))
	switch {
	case m.asking:
		f.asked = m.stopAsked()
	case lines != nil:
		f.asked = lines
		if !f.loud {
			f.foot, f.loud = foot, true
		}
	}
	return f.String()
}

// small reports whether the window is too small for a frame.
func (m runScreen) small() bool { return m.width < MinWidth || m.height < MinHeight }

// frame returns the picture of v, without its strip and its foot.
func (m runScreen) frame(v engine.View) frame {
	return frame{scene: sceneOf(m.style.lang, m.run.Plan(), v, m.run.Options), width: m.width, height: m.height, style: m.style, rows: m.reading.Rows()}
}

// placeOf returns the planned session time that the player has come to.
func placeOf(p *plan.Plan, v engine.View) time.Duration {
	s := p.Steps[v.Step]
	if v.Phase == engine.Over {
		return p.Total
	}
	elapsed := v.Length - ceilSecond(v.Remaining) // moves when the figures do
	return s.Start + max(0, min(elapsed, s.Length-1))
}

// stopAsked returns the question whether to stop, and its two answers.
func (m runScreen) stopAsked() []string {
	stop := m.style.lang.Screen.Stop
	if !m.run.Logged() {
		stop[1] = m.style.lang.Screen.StopUnlogged
	}
	return stop[:]
}

// foot returns the last line, and whether it has to be read.
func (m runScreen) foot(v engine.View) (text string, loud bool) {
	switch {
	case m.over():
		return m.style.lang.Screen.GoOn, true
	case m.asking:
		stop := m.stopAsked()
		short := stop[0] + " " + stop[1]
		if whole := short + "; " + stop[2]; ansi.StringWidth(whole) <= m.width {
			return whole, true
		}
		return short, true
	case v.Phase == engine.Halted && m.notice != "":
		return m.notice + "; " + m.style.lang.Screen.Resume, true
	case m.notice != "":
		return m.notice, true
	case m.helping:
		return m.helpFoot(), true
	}
	if t := m.run.Trouble(); t != "" {
		return t, true
	}
	sound := ""
	switch {
	case m.run.Muted():
		sound = m.style.lang.Screen.Muted + "  "
	case m.run.BellOnly():
		sound = m.style.lang.Screen.BellOnly + "  "
	}
	return m.style.quiet.Render(sound) + m.shortHelp(v, m.width-len(sound)), false
}

// shortHelp returns as many of the keys as fit into width cells, before all
// others the one that lists them; a key is left out where it does nothing.
func (m runScreen) shortHelp(v engine.View, width int) string {
	k := m.keys
	k.Finish.SetEnabled(m.run.Plan().Steps[v.Step].Kind == plan.Work)
	k.Easier.SetEnabled(hasEasier(m.run.Plan(), v))
	if v.Phase == engine.Halted {
		k.Finish.SetEnabled(false)
		k.Pause.SetHelp(k.Pause.Help().Key, m.style.lang.Keys.Resume)
	}
	all := k.ShortHelp()
	line, n := keyline.Fit(*m.style.help, all, width)
	if !slices.ContainsFunc(all[:n], keyline.ListsAll) {
		line, _ = keyline.Fit(*m.style.help, []key.Binding{k.Finish, k.Help}, width)
	}
	return line
}

// hasEasier reports whether the exercise in hand, or the one to come, has an
// easier variant.
func hasEasier(p *plan.Plan, v engine.View) bool {
	i := v.Step
	if p.Steps[i].Kind != plan.Work {
		i = p.NextWork(i)
	}
	if i < 0 {
		return false
	}
	e := p.Exercise(i)
	return e != nil && e.Easier.Given()
}
