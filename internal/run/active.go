package run

import (
	"context"
	"errors"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/internal/voice"
	"coldfloor/sound"
	"coldfloor/sound/live"
)

// Active is one run that has been set up, and that starts with the action
// engine.Start. It reads the clocks, drives the engine, and hands what happened
// to those who listen. It is not safe for concurrent use.
type Active struct {
	Clock   Clock
	Options engine.Options

	engine    *engine.Engine
	lang      *text.Language // of what is said of it
	watch     watch
	listeners []engine.Listener

	recorder *Recorder          // nil: without a log
	sound    *live.Sound        // nil: none
	voice    *voice.Voice       // nil: none
	cues     sound.Options      // what is heard besides the cues
	hush     context.CancelFunc // ends its rendering
	tally    *tally
	results  *results
	muted    bool
	volume   int
	turned   bool // the volume was changed

	alone  bool                 // there is no keyboard: after a gap it goes on by itself
	before time.Duration        // session clock at the end of the run's earlier parts
	passed func() time.Duration // how much of the first step has passed at the start; nil: nothing
}

// Plan returns the plan that is run.
func (a *Active) Plan() *plan.Plan { return a.engine.Plan() }

// View returns how things stood at the last Tick or Do.
func (a *Active) View() engine.View { return a.engine.View() }

// Clocked returns how much of the session's time has passed, in all parts of
// the run.
func (a *Active) Clocked() time.Duration { return a.before + a.View().Clock }

// LoseKeys says that nobody can press a key any more. What waits for one goes
// on, and nothing waits for one later.
func (a *Active) LoseKeys() {
	if a.alone {
		return
	}
	a.alone, a.Options.AllPaced = true, true
	if a.sound != nil {
		a.followed()
	}
	a.Do(engine.Desert)
}

// Done returns what was done so far, as a reader of the journal will see it.
func (a *Active) Done() *journal.Run { return &a.tally.run }

// Rehearsal reports whether the run is sped up, and so trains nobody.
func (a *Active) Rehearsal() bool { return SpeedOf(a.Clock) != 1 }

// Alone reports whether there is nobody to press a key.
func (a *Active) Alone() bool { return a.alone }

// Tick brings the run up to the present. If the clocks show that the host was
// away it pauses the run at the moment last seen, and returns how long, in the
// clock's time; below zero if the wall clock was set back. With nobody to press
// a key the run then goes on by itself.
func (a *Active) Tick() (away time.Duration) {
	mono, wall := a.Clock.Mono(), a.Clock.Wall()
	last := a.watch.mono
	away = a.watch.look(mono, wall)
	if away != 0 && a.running() {
		a.tell(a.engine.Do(engine.Gap, last))
	} else {
		away = 0
	}
	a.tell(a.engine.Advance(mono))
	if away != 0 && a.alone {
		a.tell(a.engine.Do(engine.Resume, mono))
	}
	return away
}

// Do brings the run up to the present, then acts.
func (a *Active) Do(act engine.Action) {
	if act == engine.Start && a.passed != nil {
		a.countOn()
	}
	a.Tick()
	a.tell(a.engine.Do(act, a.Clock.Mono()))
}

// countOn lets the first step continue from where it is by now.
func (a *Active) countOn() {
	a.Options.Into, a.passed = a.passed(), nil
	a.engine = engine.New(a.Plan(), a.Options)
	a.recorder.opts.Into = a.Options.Into
}

// Next returns how long it is until something happens by itself, and whether
// anything will.
func (a *Active) Next() (time.Duration, bool) {
	at, ok := a.engine.NextDeadline()
	return at - a.Clock.Mono(), ok
}

// running reports whether time that passes unseen would be lost to the player.
func (a *Active) running() bool {
	switch a.engine.View().Phase {
	case engine.Running, engine.Overtime, engine.CountedIn:
		return true
	}
	return false
}

// tell hands events to every listener.
func (a *Active) tell(events []engine.Event) {
	if len(events) == 0 {
		return
	}
	v := a.engine.View()
	for _, l := range a.listeners {
		l.Heard(events, v)
	}
}

// Logged reports whether the run is kept in the journal.
func (a *Active) Logged() bool { return a.recorder != nil }

// Name returns the name that the run has in the journal, or nothing.
func (a *Active) Name() string {
	if a.recorder == nil {
		return ""
	}
	return a.recorder.Run()
}

// ToggleMute turns the sound off or on and returns whether it is off.
func (a *Active) ToggleMute() bool {
	a.muted = !a.muted
	if a.sound != nil {
		a.sound.SetMuted(a.muted)
	}
	return a.muted
}

// Muted reports whether the sound is off.
func (a *Active) Muted() bool { return a.muted }

// volumeStep is what one key press changes of the volume, in percent.
const volumeStep = 10

// Louder turns the volume up by a step, or down for a negative number of
// steps, and returns what it is then. Sound that is off comes on again: whoever
// sets how loud it is means to hear it.
func (a *Active) Louder(steps int) int {
	if a.muted {
		a.ToggleMute()
	}
	a.volume = min(100, max(0, a.volume+steps*volumeStep))
	a.turned = true
	if a.sound != nil {
		a.sound.SetVolume(float64(a.volume) / 100)
	}
	return a.volume
}

// Trouble says what is wrong with the log at the moment; it is empty if all is
// well.
func (a *Active) Trouble() string {
	if a.recorder != nil {
		if err := a.recorder.Err(); err != nil {
			return a.lang.Trouble.KeptInMemory(Why(a.lang, err))
		}
	}
	return ""
}

// SoundNotice says what the player should know of the sound; it is empty if all
// is well.
func (a *Active) SoundNotice() string {
	if a.sound == nil {
		return ""
	}
	if n := SoundNotice(a.lang, a.sound.Notice()); n != "" || a.voice == nil {
		return n
	}
	if err := a.voice.Err(); err != nil {
		return speechTrouble(a.lang, err)
	}
	return ""
}

// BellOnly reports whether the terminal bell stands in for the cues.
func (a *Active) BellOnly() bool { return a.sound != nil && a.sound.Notice().Bell }

// close keeps the volume for the next start, and syncs and closes the log. A
// run that has not ended stays unfinished there.
func (a *Active) close() error {
	var errs []error
	if a.hush != nil {
		a.hush()
	}
	if a.turned {
		errs = append(errs, settings.RememberVolume(a.volume))
	}
	if a.recorder != nil {
		errs = append(errs, a.recorder.Close())
	}
	return errors.Join(errs...)
}
