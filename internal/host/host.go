// Package host sets a run up and takes it down again: its clock, its engine,
// its line in the journal and its sound. The screen and the plain run are both
// driven through it.
package host

import (
	"context"
	"errors"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/runner"
	"coldfloor/internal/settings"
	"coldfloor/internal/voice"
	"coldfloor/sound"
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

	Live  *sound.LiveOptions // how the sound is given; nil: there is none
	Heard sound.Options      // what is heard besides the cues; who waits for a key is filled in
	Voice *voice.Voice       // what is spoken; nil: nothing

	open  []*Run
	sound *sound.Live // shared by all runs, for a device is slow to open; nil before it is opened
}

// Run is one run that has been set up. It starts with the action engine.Start.
type Run struct {
	*runner.Runner
	Clock   runner.Clock
	Options engine.Options

	recorder *journal.Recorder  // nil: without a log
	sound    *sound.Live        // nil: none
	voice    *voice.Voice       // nil: none
	hush     context.CancelFunc // ends its rendering
	tally    *tally
	muted    bool
	volume   int
	turned   bool // the volume was changed
}

// OpenSound begins to open the sound device, so that it is there when a run
// begins, and returns at once; a second call does nothing. From then on what is
// written to standard error may be lost until Close.
func (h *Host) OpenSound() {
	if h.sound == nil && h.Live != nil {
		h.sound = sound.NewLive(*h.Live)
	}
}

// Begin sets up a new run of p. Listeners hear of it after the journal and the
// sound.
func (h *Host) Begin(p *plan.Plan, listeners ...runner.Listener) (*Run, error) {
	o := h.options(engine.Options{})
	c := runner.NewSystem(h.Speed)
	if h.Journal == nil {
		return h.run(newTally(p, nil), o, c, nil, listeners), nil
	}
	rec, err := h.Journal.Begin(p, o, h.Settings.Name, c)
	if err != nil {
		return nil, err
	}
	return h.run(newTally(p, nil), o, c, rec, listeners), nil
}

// GoOn sets up a run that goes on with an unfinished one. It begins with the
// session's own countdown.
func (h *Host) GoOn(re *journal.Resumption, listeners ...runner.Listener) (*Run, error) {
	if h.Journal == nil {
		return nil, errors.New("there is no journal to go on in")
	}
	re.Options = h.options(re.Options)
	re.Options.LeadIn = re.Plan.Session.LeadIn
	c := runner.NewSystem(h.Speed)
	rec, err := h.Journal.GoOn(re, c)
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
func (h *Host) run(t *tally, o engine.Options, c runner.Clock, rec *journal.Recorder, listeners []runner.Listener) *Run {
	h.OpenSound()
	r := &Run{Clock: c, Options: o, recorder: rec, sound: h.sound, muted: h.Muted, volume: h.Settings.Volume, tally: t}
	all := []runner.Listener{t}
	if h.sound != nil {
		heard := h.Heard
		heard.ByHand, heard.AllPaced = o.ByHand, o.AllPaced
		if h.Voice != nil {
			heard.Words = h.Voice.Words(o)
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
	r.Runner = runner.New(t.plan, o, c, append(all, listeners...)...)
	return r
}

// speak has the voice render what p says, ahead of time and in the background.
func (r *Run) speak(p *plan.Plan) {
	ctx, cancel := context.WithCancel(context.Background())
	r.hush = cancel
	go func() { _ = r.voice.Prepare(ctx, p, r.sound.Refresh) }() // SoundNotice tells of a failure
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

// Logged reports whether the run is kept in the journal.
func (r *Run) Logged() bool { return r.recorder != nil }

// Name returns the name that the run has in the journal, or nothing.
func (r *Run) Name() string {
	if r.recorder == nil {
		return ""
	}
	return r.recorder.Run()
}

// Rounds returns how many rounds of each block had all of their sets done so
// far, those of an earlier part of the run among them.
func (r *Run) Rounds() []int { return r.tally.rounds() }

// ToggleMute turns the sound off or on and returns whether it is off.
func (r *Run) ToggleMute() bool {
	r.muted = !r.muted
	if r.sound != nil {
		r.sound.SetMuted(r.muted)
	}
	return r.muted
}

// Muted reports whether the sound is off.
func (r *Run) Muted() bool { return r.muted }

// volumeStep is what one key press changes of the volume, in percent.
const volumeStep = 10

// Louder turns the volume up by a step, or down for a negative number of
// steps, and returns what it is then.
func (r *Run) Louder(steps int) int {
	r.volume = min(100, max(0, r.volume+steps*volumeStep))
	r.turned = true
	if r.sound != nil {
		r.sound.SetVolume(float64(r.volume) / 100)
	}
	return r.volume
}

// Trouble returns what is wrong with the log at the moment; it is empty where
// all is well.
func (r *Run) Trouble() string {
	if r.recorder != nil {
		if err := r.recorder.Err(); err != nil {
			return "the log cannot be written just now, and is kept in memory: " + err.Error()
		}
	}
	return ""
}

// SoundNotice returns what the player should know of the sound; it is empty
// where all is well.
func (r *Run) SoundNotice() string {
	if r.sound == nil {
		return ""
	}
	if n := r.sound.Notice(); n != "" || r.voice == nil {
		return n
	}
	if err := r.voice.Err(); err != nil {
		return err.Error()
	}
	return ""
}

// Rate logs what the player said of the run.
func (r *Run) Rate(v journal.Rating) {
	if r.recorder != nil {
		r.recorder.Rate(v)
	}
}

// close keeps the volume for the next start, and syncs and closes the log. A
// run that has not ended stays unfinished there.
func (r *Run) close() error {
	var errs []error
	if r.hush != nil {
		r.hush()
	}
	if r.turned {
		errs = append(errs, settings.RememberVolume(r.volume))
	}
	if r.recorder != nil {
		errs = append(errs, r.recorder.Close())
	}
	return errors.Join(errs...)
}

// Bare returns a run of p with options o on clock c: no log, no sound.
func Bare(p *plan.Plan, o engine.Options, c runner.Clock) *Run {
	var h Host
	return h.run(newTally(p, nil), o, c, nil, nil)
}
