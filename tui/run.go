package tui

import (
	"slices"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/help"
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/strip"
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

// runEnded is sent when the session is over.
type runEnded struct{}

// runScreen is the running screen. The runner holds the truth; the screen
// shows it.
type runScreen struct {
	run     *run.Active
	style   style
	keys    runKeys
	help    help.Model
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
	stopped bool          // by the player, who need not be told that it is over
	ended   bool
	overAt  time.Duration // clock time at which the end was first seen
}

// newRunScreen returns the screen of a run that has not started.
func newRunScreen(r *run.Active, s style, from Reading) runScreen {
	return runScreen{run: r, style: s, keys: newRunKeys(&s.lang.Keys), help: s.help(), reading: from}
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

// settled reports whether so much of the run's clock is more than the time in
// which a key is taken for the second half of a double slap.
func (m runScreen) settled(since time.Duration) bool {
	return since >= time.Duration(float64(settle)*m.speed())
}

// over reports whether the session is over, which is shown for a while.
func (m runScreen) over() bool { return m.run.View().Phase == engine.Over }

// away reports whether the run stands because the machine was away: what is
// said of that stays.
func (m runScreen) away() bool { return m.paused() && m.run.View().Cause == engine.ByGap }

func (m runScreen) paused() bool { return m.run.View().Phase == engine.Halted }

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

// pressed acts on a key.
func (m runScreen) pressed(k tea.KeyMsg) (runScreen, tea.Cmd) {
	if m.asking {
		m.asking = false
		if s := k.String(); s == "q" || s == "y" || s == "ctrl+c" {
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
		m.helping = !m.helping
	case key.Matches(k, m.keys.Pause):
		m = m.pause()
	case key.Matches(k, m.keys.Mute):
		m = m.mute()
	case key.Matches(k, m.keys.Louder):
		m = m.note(m.style.lang.Screen.Volume(m.run.Louder(1)))
	case key.Matches(k, m.keys.Softer):
		m = m.note(m.style.lang.Screen.Volume(m.run.Louder(-1)))
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

// View draws the screen.
func (m runScreen) View() string {
	v := m.run.View()
	f := m.frame(v)
	f.foot, f.loud = m.foot(v)
	if m.width >= MinWidth && m.height >= MinHeight {
		f.strip = m.style.stripLine(m.strip, placeOf(m.run.Plan(), v))
		if m.helping {
			f.help = m.fullHelp()
		}
		lines, foot := m.asksResult()
		switch {
		case m.asking:
			f.asked = m.style.lang.Screen.Stop[:]
		case lines != nil:
			f.asked = lines
			if !f.loud {
				f.foot, f.loud = foot, true
			}
		}
	}
	return f.String()
}

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

// foot returns the last line, and whether it has to be read.
func (m runScreen) foot(v engine.View) (text string, loud bool) {
	switch {
	case m.over():
		return m.style.lang.Screen.GoOn, true
	case m.asking:
		return m.style.lang.Screen.Stop[0] + " " + m.style.lang.Screen.Stop[1], true
	case v.Phase == engine.Halted && m.notice != "":
		return m.notice + "; " + m.style.lang.Screen.Resume, true
	case v.Phase == engine.Halted:
		return m.style.lang.Screen.PausedNote, true
	case m.notice != "":
		return m.notice, true
	case m.helping:
		return m.style.lang.Screen.HelpBack, true
	}
	if t := m.run.Trouble(); t != "" {
		return t, true
	}
	sound := ""
	switch {
	case m.run.Muted():
		sound = m.style.lang.Screen.Muted + "  "
	case m.heard != "":
		sound = m.style.lang.Screen.BellOnly + "  "
	}
	return m.style.quiet.Render(sound) + m.shortHelp(v, m.width-len(sound)), false
}

// shortHelp returns as many of the keys as fit into width cells, whole; the
// key that ends a set is left out where it does nothing.
func (m runScreen) shortHelp(v engine.View, width int) string {
	k := m.keys
	k.Finish.SetEnabled(m.run.Plan().Steps[v.Step].Kind == plan.Work)
	shown := k.ShortHelp()
	for ; len(shown) > 1; shown = shown[:len(shown)-1] {
		if line := m.help.ShortHelpView(shown); ansi.StringWidth(line) <= width {
			return line
		}
	}
	return m.help.ShortHelpView(shown)
}

// fullHelp returns every key with what it does.
func (m runScreen) fullHelp() *helping {
	all := m.keys.FullHelp()
	return &helping{keys: slices.Concat(all...), plain: strings.Split(m.help.FullHelpView(all), "\n")}
}
