package engine

import (
	"slices"
	"time"

	"coldfloor/internal/plan"
)

// EventKind is what happened.
type EventKind string

// The kinds of event.
const (
	Started   EventKind = "started"
	StepBegan EventKind = "step-began"
	StepEnded EventKind = "step-ended" // every step that began ends once
	SetEnded  EventKind = "set-ended"  // after the StepEnded of the set's last side, or of the one in which the set was left; once for each time something was done of it
	Waiting   EventKind = "waiting"    // a set ended by hand has had its paced length and goes on
	Paused    EventKind = "paused"
	CountIn   EventKind = "count-in" // the session's clock stands until Length has passed
	Resumed   EventKind = "resumed"  // the clock runs again, after a pause or a count-in
	Extended  EventKind = "extended" // the step's end moved out by Length
	Swapped   EventKind = "swapped"  // the exercise's easier variant was taken up or laid down
	Deserted  EventKind = "deserted" // nobody is at the keys from now on: no set waits for one
	Finished  EventKind = "finished" // Cause is ByClock at the plan's end, ByFinish or BySkip if a key ended the last step, ByStop otherwise
)

// Listener is told what happened, in order, and how things stand after it. It
// must not block, nor call back into whoever tells it.
type Listener interface {
	Heard(events []Event, after View)
}

// Cause is what made a step end or the clock stand.
type Cause string

// The causes.
const (
	ByClock  Cause = "clock"
	ByFinish Cause = "finish" // the player ended the set
	BySkip   Cause = "skip"
	ByBack   Cause = "back"
	ByRepeat Cause = "repeat"
	ByStop   Cause = "stop"
	ByKey    Cause = "key" // the player paused
	ByGap    Cause = "gap" // the host was away: the clock jumped or the machine slept
)

// Event is one thing that happened, at a session time and a host time. Fields
// that do not apply are zero.
type Event struct {
	Kind  EventKind
	Clock time.Duration // on the session's clock: time since the start, pauses and count-ins left out
	Now   time.Duration // on the host's clock
	Step  int           // index into the plan's steps
	Cause Cause

	Length time.Duration // CountIn, Extended: how long; StepBegan: the planned length
	Taken  time.Duration // StepEnded, SetEnded: on the session's clock; a set's is its work alone. StepBegan: what has passed of the step already
	Halted time.Duration // StepEnded, SetEnded: pauses and count-ins meanwhile, on the host's clock
	Set    *SetResult    // SetEnded only
	Easier bool          // Swapped: the easier variant is on; StepBegan: it is on for this work
}

// SetResult is what was done of one set in one go at it. What an earlier
// SetResult told of the set is not told again.
type SetResult struct {
	Set     int           // index into Plan.Sets
	Outcome Outcome       // how it ended
	Planned time.Duration // work time, both sides
	Sides   []plan.Side   // in the order worked; sides of which nothing was done are not among them
	Reps    int           // both sides counted; work broken off counts as far as the pace had got
	Easier  bool          // the easier variant was on when it ended
}

// Outcome is how a set ended.
type Outcome string

// The outcomes.
const (
	Done    Outcome = "done"    // every side done in full, now or before: by the clock, or by the player's key after half of its paced length
	Partial Outcome = "partial" // something of it was done, or the session was stopped in it
	Skipped Outcome = "skipped" // nothing of it was done
)

// Action is something a player can do.
type Action string

// The actions. One that makes no sense when it comes is ignored.
const (
	Start  Action = "start"
	Finish Action = "finish" // end this work step: the set, or its first side
	Pause  Action = "pause"
	Resume Action = "resume"
	More   Action = "more"   // MoreTime longer
	Back   Action = "back"   // to the start of the step before
	Repeat Action = "repeat" // this set again from its first side; after a set, that set
	Skip   Action = "skip"   // to the step that follows
	Swap   Action = "swap"   // take up the easier variant of this or the coming exercise, or lay it down
	Stop   Action = "stop"
	Gap    Action = "gap"    // pause because the host was away
	Desert Action = "desert" // nobody is at the keys from now on; what waits for one goes on
)

// Phase is what the engine is doing.
type Phase string

// The phases.
const (
	Ready     Phase = "ready"   // not started
	Running   Phase = "running" // the clock runs
	Overtime  Phase = "waiting" // the clock runs, the step waits for a key
	Halted    Phase = "paused"
	CountedIn Phase = "count-in"
	Over      Phase = "over"
)

// View is the engine's state as a screen shows it, computed for one moment.
type View struct {
	Phase     Phase
	Step      int           // index into the plan's steps
	Clock     time.Duration // session clock
	Elapsed   time.Duration // in this step, on the session's clock
	Length    time.Duration // of this step with what was added to it
	Remaining time.Duration // of this step; 0 while it waits for a key
	CountIn   time.Duration // remaining; 0 outside CountedIn
	Left      time.Duration // of the session: this step's Remaining and every later step
	Cause     Cause         // why the clock stands, in Halted
	Easier    bool          // this step's exercise, or the coming one's, is in its easier variant
	InEasier  []Exercise    // every exercise that is in its easier variant, in the plan's order
}

// EasierAt reports whether the exercise of step i of p, the plan that is
// walked, is in its easier variant.
func (v View) EasierAt(p *plan.Plan, i int) bool {
	s := p.Steps[i]
	return s.Exercise > 0 && slices.Contains(v.InEasier, Exercise{s.Block, s.Exercise})
}

// LengthOf returns how long step i of p lasts in the variant that is on, without
// what was added to it.
func (v View) LengthOf(p *plan.Plan, i int) time.Duration { return p.Length(i, v.EasierAt(p, i)) }
