// Package live plays a run's cues on the sound device as the run goes, and
// rings the terminal's bell if there is none.
package live

import (
	"math"
	"os"
	"sync"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/sound"
)

// Options says how live sound is given.
type Options struct {
	Volume float64 // from 0 to 1
	Muted  bool    // silent until SetMuted(false); no device is opened before
	Screen bool    // the host draws a screen: nothing a sound library prints may reach standard error before Close

	// Bell rings the terminal's bell where there is no device, and over SSH,
	// where a device would be on the wrong machine. It is called from a
	// goroutine of Sound's, never for a soft click; nil for no bell.
	Bell func()
}

// Sound gives a run's cues as it goes. It is an engine.Listener, never blocks
// its host, and carries on whatever becomes of the device. Its methods are
// safe for concurrent use.
//
// What is heard comes a constant latency, about a tenth of a second, after the
// moment it is for, so that a cue a key calls for stands to the planned ones
// after it exactly as in the plan.
type Sound struct {
	opts  Options
	epoch time.Time // of the host times in here
	sched *sound.Scheduler
	pace  pace
	out   output
	wake  chan struct{} // something changed that the feeder must look at
	done  chan struct{} // closed when the feeder has ended

	mu     sync.Mutex
	run    run
	queue  []queued // by time
	state  state
	muted  bool
	volume float64
	lack   Lack
	wanted bool // a device: not while muted from the start, nor over SSH
	opened bool // the device, by the goroutine that opens it
	inHand bool // a goroutine is opening the device, which may take its time
	closed bool

	feeder feeder
}

// run is the session that is followed.
type run struct {
	plan  *plan.Plan
	opts  sound.Options
	now   func() time.Duration
	speed float64
	phase engine.Phase
	told  time.Duration // host time at which it was last told of

	view   engine.View   // when what is to come was last drawn up
	zero   time.Duration // host time of the zero of its clock then
	viewed time.Duration // host time of view
}

// queued is a clip and the host time it is for.
type queued struct {
	at     time.Duration
	clip   *sound.Clip
	placed bool // with the scheduler, or rung
}

// state is what has become of the device.
type state int

const (
	unopened state = iota // muted from the start, or over SSH
	opening
	playing
	asleep // suspended through a silence
	absent // none, or gone
)

// New begins to open the sound device, which may take seconds, and returns
// at once.
func New(o Options) *Sound { return newLive(o, newSystemOutput()) }

// newLive is New on a given device.
func newLive(o Options, out output) *Sound {
	l := &Sound{opts: o, epoch: time.Now(), sched: sound.NewScheduler(), out: out,
		wake: make(chan struct{}, 1), done: make(chan struct{}), muted: o.Muted, volume: o.Volume}
	l.applyVolume()
	l.openUnlessMuted()
	go l.feed()
	return l
}

// Follow makes p the session whose events Heard is told of. Now reads the
// clock of those events, which runs speed times as fast as real time.
func (l *Sound) Follow(p *plan.Plan, o sound.Options, now func() time.Duration, speed float64) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.run = run{plan: p, opts: o, now: now, speed: speed, phase: engine.Ready, told: l.real()}
	l.anew(func() {})
}

// Heard implements engine.Listener.
func (l *Sound) Heard(events []engine.Event, after engine.View) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.run.plan == nil || len(events) == 0 {
		return
	}
	before, now := l.run.phase, l.real()
	l.run.phase, l.run.told = after.Phase, now
	zero := l.zeroOfRun()
	if asPlaced(events, before) && (zero-l.run.zero).Abs() < parted {
		return
	}
	l.run.view, l.run.zero = after, zero
	l.run.viewed = zero + l.scaled(viewedAt(events[len(events)-1], after))
	switch {
	case endedByKey(events):
		l.anew(func() { l.enqueue(now, sound.Placed{At: 0, Clip: sound.Done}) })
	case goesOn(events):
		l.redraw(now)
	default:
		l.anew(func() { l.enqueueTimeline(l.run.viewed) })
	}
}

// Refresh draws up again what is to come, for a host whose sound.Options.Words has
// more to say than when the run was last told of.
func (l *Sound) Refresh() {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.run.plan == nil {
		return
	}
	l.redraw(l.real())
}

// Play lets clips be heard, at times from now, beside what is to come.
func (l *Sound) Play(clips ...sound.Placed) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.revise(func() { l.enqueue(l.real(), clips...) })
	l.nudge()
}

// SetMuted silences every cue and bell, or lets them be heard again.
func (l *Sound) SetMuted(m bool) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.muted = m
	l.revise(l.applyVolume)
	l.openUnlessMuted()
	l.nudge()
}

// SetVolume sets the loudness, from 0 to 1. It is heard within two tenths of a
// second.
func (l *Sound) SetVolume(v float64) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.volume = v
	l.revise(l.applyVolume)
}

// Close lets what sounds now end, for two seconds at most, and lets the device
// go.
func (l *Sound) Close() {
	l.mu.Lock()
	if !l.closed {
		l.closed = true
		l.revise(func() { l.drop(l.real()) })
		l.nudge()
	}
	l.mu.Unlock()
	<-l.done
	l.letGo()
}

// letGo closes the device; one that is still opening closes once it is open.
func (l *Sound) letGo() {
	l.mu.Lock()
	opened := l.opened
	l.opened = false
	l.mu.Unlock()
	if opened {
		l.out.close()
	}
	loudly()
}

// real returns the host time.
func (l *Sound) real() time.Duration { return time.Since(l.epoch) }

// parted is by how much the clock of the run and the host's must have parted for
// what is to come to be drawn up again: one goes on in a machine's sleep and one may
// not, and a sleep of a second or two goes by without a pause.
const parted = 20 * time.Millisecond

// zeroOfRun returns the host time of the zero of the run's clock. The two clocks
// are read as close together as a busy machine lets them be.
func (l *Sound) zeroOfRun() (zero time.Duration) {
	const tries, enough = 10, 20 * time.Microsecond
	closest := time.Duration(math.MaxInt64)
	for i := 0; i < tries && closest > enough; i++ {
		before := l.real()
		clock := l.run.now()
		if apart := l.real() - before; apart < closest {
			closest, zero = apart, before+apart/2-l.scaled(clock)
		}
	}
	return zero
}

// nudge lets the feeder look at once.
func (l *Sound) nudge() {
	select {
	case l.wake <- struct{}{}:
	default:
	}
}

// applyVolume sets what the scheduler plays at.
func (l *Sound) applyVolume() {
	if l.muted {
		l.sched.SetVolume(0)
		return
	}
	l.sched.SetVolume(l.volume)
}

// openUnlessMuted opens the device, once, when it is wanted.
func (l *Sound) openUnlessMuted() {
	switch {
	case l.state != unopened || l.muted || l.closed:
	case os.Getenv("SSH_CONNECTION") != "":
		l.lose(OverSSH)
	default:
		l.state, l.wanted, l.inHand = opening, true, true
		var wait time.Duration
		if l.opts.Screen {
			wait = showFirst
		}
		l.feeder.deadline = l.real() + wait + openWait
		quiet()
		time.AfterFunc(wait, l.open)
	}
}
