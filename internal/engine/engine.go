// Package engine walks a plan. It is a pure state machine: time is an input,
// the same inputs always give the same events, and nothing is counted down.
//
// There are two clocks. The host's clock is any monotonic reading the caller
// passes in; the session's clock is the time since the start with pauses and
// count-ins left out, so that an untouched run reads exactly as the plan.
package engine

import (
	"cmp"
	"slices"
	"time"

	"coldfloor/internal/plan"
)

// MoreTime is what one More adds to a step.
const MoreTime = 15 * time.Second

// Options is how a run differs from the plain one.
type Options struct {
	From     int           // index of the step to begin with; the plan's first if 0
	Into     time.Duration // how much of that step has passed already; less than its length
	LeadIn   time.Duration // count-in before the first step if From is not 0
	CountIn  time.Duration // count-in before work that is resumed, repeated, skipped or gone back to; 0: none
	Easier   []Exercise    // exercises that begin in their easier variant
	Seed     uint64        // of the directions that are called; the engine itself draws nothing
	ByHand   bool          // every set with reps waits for a key
	AllPaced bool          // no set waits for a key, for a run with no keyboard; it wins over ByHand
}

// Waits reports whether a step ends only by a key.
func (o Options) Waits(s plan.Step) bool {
	return s.Kind == plan.Work && !o.AllPaced && (s.ByHand || o.ByHand && s.Reps > 0)
}

// Exercise names an exercise of the plan, both counted from 1.
type Exercise struct{ Block, Exercise int }

// Engine is one run of a plan. Make it with New; the methods are not safe for
// concurrent use.
type Engine struct {
	plan *plan.Plan
	opts Options

	phase  Phase
	now    time.Duration // latest host time seen; it never runs back
	anchor time.Duration // host time at which clock was read
	clock  time.Duration // session clock at anchor; it stands unless ticking
	until  time.Duration // host time at which a count-in ends
	cause  Cause         // why the clock stands

	step   int
	began  time.Duration // session clock at the step's start
	extra  time.Duration // added to the step by More
	halted time.Duration // host time the clock stood in this step
	since  time.Duration // host time at which it last came to stand

	sets   []setWork // by index into the plan's sets
	easier map[Exercise]bool
	out    []Event
}

// New returns an engine for p, which must have at least one step, at rest
// before its first. A From outside the plan begins at the first step, and an
// Into outside the step at its start.
func New(p *plan.Plan, o Options) *Engine {
	if o.From < 0 || o.From >= len(p.Steps) {
		o.From, o.Into = 0, 0
	}
	if o.Into < 0 || o.Into >= p.Steps[o.From].Length {
		o.Into = 0
	}
	e := &Engine{plan: p, opts: o, phase: Ready, step: o.From,
		sets: make([]setWork, len(p.Sets)), easier: map[Exercise]bool{}}
	for _, x := range o.Easier {
		e.easier[x] = true
	}
	return e
}

// Plan returns the plan that is walked.
func (e *Engine) Plan() *plan.Plan { return e.plan }

// Advance moves the host's clock to now and returns what happened on the way,
// each event at its own time however late the call. A now before an earlier
// one is taken as that one.
func (e *Engine) Advance(now time.Duration) []Event {
	e.out = nil
	e.advance(now)
	return e.out
}

// Do advances to now and then acts. An action that makes no sense in the
// present phase does nothing.
func (e *Engine) Do(a Action, now time.Duration) []Event {
	e.out = nil
	e.advance(now)
	e.act(a)
	return e.out
}

// advance crosses, in order, every boundary up to now.
func (e *Engine) advance(now time.Duration) {
	now = max(now, e.now)
	for {
		at, ok := e.deadline()
		if !ok || at > now {
			break
		}
		e.now = max(e.now, at) // a step that an easier variant made shorter may be over already
		switch {
		case e.phase == CountedIn:
			e.enterRunning()
		case e.waits():
			e.enterOvertime()
		default:
			e.leave(ByClock, e.step+1)
		}
	}
	e.now = now
}

// deadline returns the host time of the next thing to happen by itself.
func (e *Engine) deadline() (time.Duration, bool) {
	switch e.phase {
	case CountedIn:
		return e.until, true
	case Running:
		return e.anchor + (e.began + e.length() - e.clock), true
	}
	return 0, false
}

// NextDeadline returns the host time of the next thing that happens by itself,
// and whether there is one, so that a host knows how long it may sleep.
func (e *Engine) NextDeadline() (time.Duration, bool) { return e.deadline() }

// ticking reports whether the session's clock runs.
func (e *Engine) ticking() bool { return e.phase == Running || e.phase == Overtime }

// read returns the session's clock at the latest host time.
func (e *Engine) read() time.Duration {
	if e.ticking() {
		return e.clock + (e.now - e.anchor)
	}
	return e.clock
}

// length returns how long the present step lasts, with what was added.
func (e *Engine) length() time.Duration { return e.planned(e.step) + e.extra }

// planned returns how long step i lasts in the variant that is on.
func (e *Engine) planned(i int) time.Duration {
	s := e.plan.Steps[i]
	return e.plan.Length(i, e.easier[Exercise{s.Block, s.Exercise}])
}

// after returns how long all steps after the present one last.
func (e *Engine) after() time.Duration {
	left := e.plan.Steps[len(e.plan.Steps)-1].End() - e.plan.Steps[e.step].End()
	if len(e.easier) == 0 {
		return left
	}
	for i := e.step + 1; i < len(e.plan.Steps); i++ {
		left += e.planned(i) - e.plan.Steps[i].Length
	}
	return left
}

// waits reports whether the present step ends only by a key.
func (e *Engine) waits() bool {
	return e.opts.Waits(e.plan.Steps[e.step])
}

// emit books an event at the present moment.
func (e *Engine) emit(ev Event) {
	ev.Clock, ev.Now, ev.Step = e.read(), e.now, e.step
	e.out = append(e.out, ev)
}

// View returns the state at the latest host time.
func (e *Engine) View() View {
	v := View{Phase: e.phase, Step: e.step, Clock: e.read(), Easier: e.easier[e.concerns()], InEasier: e.inEasier()}
	if e.phase == Over {
		return v
	}
	v.Length = e.length()
	if e.phase != Ready {
		v.Elapsed = v.Clock - e.began
	}
	v.Remaining = max(0, v.Length-v.Elapsed)
	v.Left = v.Remaining + e.after()
	if e.phase == CountedIn {
		v.CountIn = e.until - e.now
	}
	if e.phase == Halted {
		v.Cause = e.cause
	}
	return v
}

// inEasier lists the exercises in their easier variant.
func (e *Engine) inEasier() []Exercise {
	var list []Exercise
	for x, on := range e.easier {
		if on {
			list = append(list, x)
		}
	}
	slices.SortFunc(list, func(a, b Exercise) int {
		return cmp.Or(cmp.Compare(a.Block, b.Block), cmp.Compare(a.Exercise, b.Exercise))
	})
	return list
}
