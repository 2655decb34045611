// Package run is one run from start to end: it sets a run up and takes it down again: its clock, its engine,
// its line in the journal and its sound. The screen and the plain run are both
// driven through it.
package run

import (
	"context"
	"errors"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/voice"
	"coldfloor/sound"
	"coldfloor/sound/live"
)

// countIn is how long a player has to get into position for work that is
// resumed, repeated or gone back to.
const countIn = 5 * time.Second

// Host is what all runs of one process share. The zero value but for Speed is
// of use: a run with neither log nor sound.
type Host struct {
	Journal  *journal.Journal // nil: without a log
	Settings settings.Player
	Speed    float64 // of the clock; 1 is that of the wall
	Muted    bool
	ByHand   bool // every set with reps waits for a key
	AllPaced bool // no set waits for a key: there is no keyboard

	Seed uint64 // of the directions that are called

	Live  *live.Options // how the sound is given; nil: there is none
	Heard sound.Options // what is heard besides the cues; who waits for a key is filled in
	Voice *voice.Voice  // what is spoken; nil: nothing

	open  []*Active
	sound *live.Sound // shared by all runs, for a device is slow to open; nil before it is opened
}

// OpenSound begins to open the sound device, so that it is there when a run
// begins, and returns at once; a second call does nothing. From then on what is
// written to standard error may be lost until Close.
func (h *Host) OpenSound() {
	if h.sound == nil && h.Live != nil {
		h.sound = live.New(*h.Live)
	}
}

// Begin sets up a new run of p. Listeners hear of it after the journal and the
// sound.
func (h *Host) Begin(p *plan.Plan, listeners ...engine.Listener) (*Active, error) {
	o := h.options(engine.Options{Seed: h.Seed})
	c := NewSystem(h.Speed)
	if h.Journal == nil {
		return h.run(newTally(p, nil), o, c, nil, listeners), nil
	}
	rec, err := Begin(h.Journal, p, o, h.Settings.Name, c)
	if err != nil {
		return nil, err
	}
	return h.run(newTally(p, nil), o, c, rec, listeners), nil
}

// GoOn sets up a run that goes on with an unfinished one. It begins with the
// session's own countdown.
func (h *Host) GoOn(re *Resumption, listeners ...engine.Listener) (*Active, error) {
	if h.Journal == nil {
		return nil, errors.New("there is no journal to go on in")
	}
	re.Options = h.options(re.Options)
	re.Options.LeadIn = re.Plan.Session.LeadIn
	c := NewSystem(h.Speed)
	rec, err := GoOn(h.Journal, re, c)
	if err != nil {
		return nil, err
	}
	return h.run(newTally(re.Plan, re.Run.Sets), re.Options, c, rec, listeners), nil
}

// options fills in what holds for every run of this process.
func (h *Host) options(o engine.Options) engine.Options {
	o.CountIn, o.ByHand, o.AllPaced = countIn, h.ByHand, h.AllPaced
	return o
}

// run puts a run together.
func (h *Host) run(t *tally, o engine.Options, c Clock, rec *Recorder, listeners []engine.Listener) *Active {
	h.OpenSound()
	r := &Active{Clock: c, Options: o, engine: engine.New(t.plan, o), recorder: rec,
		watch: watch{limit: time.Duration(float64(maxGap) * SpeedOf(c))}, sound: h.sound, muted: h.Muted, volume: h.Settings.Volume, tally: t}
	all := []engine.Listener{t}
	if h.sound != nil {
		heard := h.Heard
		heard.ByHand, heard.AllPaced, heard.Seed = o.ByHand, o.AllPaced, o.Seed
		if h.Voice != nil {
			heard.Words, heard.Spoken = h.Voice.Words(o), h.Voice.Spoken
			r.voice = h.Voice
			r.speak(t.plan)
		}
		h.sound.Follow(t.plan, heard, c.Mono, h.Speed)
		all = append(all, h.sound)
	}
	if rec != nil {
		all = append(all, rec)
	}
	h.open = append(h.open, r)
	r.listeners = append(all, listeners...)
	return r
}

// speak has the voice render what p says, ahead of time and in the background.
func (a *Active) speak(p *plan.Plan) {
	ctx, cancel := context.WithCancel(context.Background())
	a.hush = cancel
	go func() { _ = a.voice.Prepare(ctx, p, a.sound.Refresh) }() // SoundNotice tells of a failure
}

// Close closes every run and lets the sound end. It is to be called however the
// program ends; a second call does nothing.
func (h *Host) Close() error {
	var errs []error
	for _, r := range h.open {
		errs = append(errs, r.close())
	}
	h.open = nil
	if h.sound != nil {
		h.sound.Close()
		h.sound = nil
	}
	return errors.Join(errs...)
}

// Bare returns a run of p with options o on clock c: no log, no sound.
func Bare(p *plan.Plan, o engine.Options, c Clock, listeners ...engine.Listener) *Active {
	var h Host
	return h.run(newTally(p, nil), o, c, nil, listeners)
}
