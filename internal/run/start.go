package run

import (
	"context"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
)

// Start sets up the run that the flow has come to: a new one, or the rest of
// one that did not end. Listeners hear of it after the journal and the sound.
// It starts with the action engine.Start.
func (f *Flow) Start(listeners ...engine.Listener) (*Active, error) {
	if f.resume != nil {
		return f.startRest(listeners)
	}
	a := f.active(f.plan, engine.Options{ByHand: f.opts.ByHand, Seed: f.opts.Seed}, f.opts.speed())
	if f.log.Journal != nil {
		var err error
		if a.recorder, err = Begin(f.log.Journal, a.Plan(), Opening{Options: a.Options, Player: f.opts.Player.Name,
			Weeks: f.weeks}, a.Clock); err != nil {
			return nil, f.inWords(err)
		}
	}
	return f.begin(a, listeners), nil
}

// startRest is Start for a run that did not end. What it was, a rehearsal or by
// hand, it stays.
func (f *Flow) startRest(listeners []engine.Listener) (*Active, error) {
	re := f.resume
	o := re.Options
	o.ByHand = o.ByHand || f.opts.ByHand
	if o.Seed == 0 {
		o.Seed = f.opts.Seed
	}
	speed := f.opts.speed()
	if re.Run.Rehearsal() {
		speed = re.Run.Started.Speed
	}
	o.LeadIn = re.leadIn()
	a := f.active(re.Plan, o, speed)
	a.passed = func() time.Duration { return re.passed(a.Clock.Wall()) }
	a.tally.run.Sets = append(a.tally.run.Sets, re.Run.Sets...)
	a.before = re.Run.Clock
	var err error
	if a.recorder, err = GoOn(f.log.Journal, re, a.Options, a.Clock); err != nil {
		return nil, f.inWords(err)
	}
	f.begin(a, listeners).results.missed(re.Run)
	return a, nil
}

// active returns a run of p, with neither log nor listeners yet.
func (f *Flow) active(p *plan.Plan, o engine.Options, speed float64) *Active {
	o.CountIn, o.AllPaced = countIn, f.opts.NoKeys
	c := f.opts.clock(speed)
	return &Active{Clock: c, Options: o, engine: engine.New(p, o), lang: f.Language(), tally: newTally(p), alone: f.opts.NoKeys,
		watch: newWatch(c), muted: f.opts.Muted, volume: f.opts.Player.Volume}
}

// begin gives a its sound and its listeners.
func (f *Flow) begin(a *Active, listeners []engine.Listener) *Active {
	f.OpenSound()
	a.results = &results{plan: a.Plan(), unasked: a.recorder == nil || a.Rehearsal()}
	a.listeners = []engine.Listener{a.tally, a.results}
	if f.sound != nil {
		f.follow(a)
		a.listeners = append(a.listeners, f.sound)
	}
	if a.recorder != nil {
		a.listeners = append(a.listeners, a.recorder)
	}
	a.listeners = append(a.listeners, listeners...)
	f.open = append(f.open, a)
	return a
}

// follow has the sound and the voice follow a.
func (f *Flow) follow(a *Active) {
	a.sound, a.cues, a.voice = f.sound, f.opts.Cues, f.opts.Voice
	a.followed()
	if a.voice != nil {
		a.speak()
	}
}

// followed tells the sound what it follows.
func (a *Active) followed() {
	heard := a.cues
	heard.ByHand, heard.AllPaced, heard.Seed = a.Options.ByHand, a.Options.AllPaced, a.Options.Seed
	if a.voice != nil {
		heard.Words, heard.Spoken = a.voice.Words(a.Options), a.voice.Spoken
	}
	a.sound.Follow(a.Plan(), heard, a.Clock.Mono, SpeedOf(a.Clock))
}

// speak has the voice render what the plan says, ahead of time and in the
// background.
func (a *Active) speak() {
	ctx, cancel := context.WithCancel(context.Background())
	a.hush = cancel
	go func() { _ = a.voice.Prepare(ctx, a.Plan(), a.sound.Refresh) }() // SoundNotice reports a failure
}

// SpeaksCalls reports whether directions that are called are spoken.
func (a *Active) SpeaksCalls() bool { return a.voice != nil && a.sound != nil && !a.muted }

// soundWait bounds the wait for the sound device before the lead-in.
const soundWait = time.Second

// AwaitSound waits until the sound device is there, so that the lead-in is
// heard from its start, but for no longer than a second. It may be called from
// any goroutine, before the run starts.
func (a *Active) AwaitSound(ctx context.Context) {
	if a.sound == nil || a.muted {
		return
	}
	ctx, cancel := context.WithTimeout(ctx, soundWait)
	defer cancel()
	a.sound.Ready(ctx)
}

// quietWait bounds the wait for what is still to be heard at the end.
const quietWait = 4 * time.Second

// AwaitQuiet waits until everything at the end of the session has been heard, but
// for no longer than four seconds.
func (a *Active) AwaitQuiet(ctx context.Context) {
	if a.sound == nil || a.muted {
		return
	}
	ctx, cancel := context.WithTimeout(ctx, quietWait)
	defer cancel()
	a.sound.Quiet(ctx)
}

// Bare returns a run of p with options o on clock c: no log, no sound. It asks
// for results all the same.
func Bare(p *plan.Plan, o engine.Options, c Clock, listeners ...engine.Listener) *Active {
	f := NewFlow(Options{})
	a := &Active{Clock: c, Options: o, engine: engine.New(p, o), lang: f.Language(), tally: newTally(p), watch: newWatch(c)}
	f.begin(a, listeners).results.unasked = false
	return a
}
