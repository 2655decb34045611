package run

import (
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// Recorder writes what happens in one run to a journal. It is an
// engine.Listener; make it with Begin or GoOn. Its methods are not safe for
// concurrent use, except Err.
//
// Lengths come from the clock's monotonic reading. The wall clock is read at the
// start, and after that only to notice sleep, during which the other may stop.
type Recorder struct {
	run    string
	n      int // of the last line
	plan   *plan.Plan
	opts   engine.Options
	clock  Clock
	opener journal.Line   // the run's first line in this process
	early  []journal.Line // told before the start
	lines  []journal.Line // all of this process
	queue  *queue
	claim  *journal.Claim

	clockBase   time.Duration // session clock at this process's start
	elapsedBase time.Duration // wall time taken by the processes before
	restSince   time.Time     // when the rest began that this process goes on with; zero: none
	worked      bool          // something was done, in this process or before
	rated       int           // number of the last rating line; 0: none

	zero     time.Time     // wall time at which the host's clock read 0
	start    time.Time     // wall time of this process's start
	last     time.Duration // session clock of the last event
	restZero time.Time     // zero at the start of the rest in hand
	rest     *restEnded    // not written yet; nil: none
	paused   bool
	ends     map[int]engine.Cause // what last ended a work step, by index
}

// Opening is what the first line of a run says besides its plan.
type Opening struct {
	Options engine.Options // that it is walked with
	Player  string         // may be empty
	Weeks   *journal.Weeks // the plan of weeks and the day that it is for; nil: none
}

// Begin opens a new run of p. Nothing is written before the run starts.
func Begin(j *journal.Journal, p *plan.Plan, o Opening, c Clock) (*Recorder, error) {
	s := &journal.Started{Title: p.Session.Title, Source: source(p.Session.Name), Text: string(p.Session.Source),
		Player: o.Player, TotalS: units.InSeconds(p.Total), Blocks: Prescribed(p), Program: journal.Program(),
		ByHand: o.Options.ByHand, Weeks: o.Weeks}
	if p.HasCalls() {
		s.Seed = o.Options.Seed
	}
	if speed := SpeedOf(c); speed != 1 {
		s.Speed = speed
	}
	return record(j, journal.NewName(), p, o.Options, c, journal.Line{Event: journal.EventStarted, Started: s})
}

// record claims run and returns its Recorder.
func record(j *journal.Journal, run string, p *plan.Plan, o engine.Options, c Clock, opener journal.Line) (*Recorder, error) {
	held, err := j.Claim(run)
	if err != nil {
		return nil, err
	}
	return &Recorder{run: run, plan: p, opts: o, clock: c, opener: opener, claim: held,
		queue: newQueue(j.Append), ends: map[int]engine.Cause{}}, nil
}

// source returns a built-in session's name as it is, and a file's in full.
func source(name string) string {
	if _, ok := sessions.FindBuiltin(name); ok {
		return name
	}
	if _, err := os.Stat(name); err != nil {
		return name
	}
	if abs, err := filepath.Abs(name); err == nil {
		return abs
	}
	return name
}

// Prescribed returns what the plan asks for, block by block.
func Prescribed(p *plan.Plan) []journal.PlannedBlock {
	blocks := make([]journal.PlannedBlock, len(p.Blocks))
	for i, b := range p.Blocks {
		blocks[i] = journal.PlannedBlock{Title: b.Title, Rounds: b.Rounds, Sets: b.Sets, Contacts: journal.Count{N: b.Contacts, Known: jumps.AllCounted(p.Session.Blocks[i])}}
	}
	return blocks
}

// Run returns the run's name.
func (r *Recorder) Run() string { return r.run }

// Err returns why lines are waiting to be written, or nil if none are. They
// are tried again with every new line and at Close. It may be called from any
// goroutine.
func (r *Recorder) Err() error { return r.queue.trouble() }

// Rate writes what the player said of the run. Fields that are nil were
// skipped; a Rating with none is not written, nor is one of a run that never
// started. One that could not be written gives way to a later one, and one that
// says what was last written is not written again.
func (r *Recorder) Rate(v journal.Rating) {
	if v.Empty() || r.n == 0 {
		return
	}
	if r.rated > 0 && r.rated == r.n {
		if r.queue.takeBack(r.rated) {
			r.n--
			r.lines = r.lines[:len(r.lines)-1]
		} else if reflect.DeepEqual(&v, r.lines[len(r.lines)-1].Rating) {
			return
		}
	}
	r.write(r.zero.Add(r.clock.Mono()), r.last, journal.Line{Event: journal.EventRating, Rating: &v})
	r.rated = r.n
}

// copyTo writes the lines of this process to the journal at file, which is created
// if needed.
func (r *Recorder) copyTo(file string) error {
	j, err := journal.Open(file)
	if err != nil {
		return err
	}
	return j.AppendWhole(r.lines...)
}

// Close writes what still waits and lets go of the run. A run that has not
// ended stays unfinished and can be resumed. The error tells what could
// not be written.
func (r *Recorder) Close() error {
	defer r.claim.Release()
	return r.queue.close()
}

// Heard writes the lines that events give.
func (r *Recorder) Heard(events []engine.Event, after engine.View) {
	r.readZero(events)
	for _, e := range events {
		r.last = r.clockBase + e.Clock
		r.restGoesOn(e)
		r.heard(e)
	}
	r.restIsOver(after)
}

// readZero finds the wall time at which the host's clock read 0, the first time,
// and later only if that clock stops during sleep: the wall's has then run ahead of
// it. Less than a second is the wall clock being set right.
func (r *Recorder) readZero(events []engine.Event) {
	zero := r.clock.Wall().Round(0).Add(-r.clock.Mono())
	if r.zero.IsZero() {
		r.zero = zero
		return
	}
	// A run that is paused because the host was away is paused at the moment
	// last seen, which is before the wall clock jumped.
	gap := func(e engine.Event) bool { return e.Kind == engine.Paused && e.Cause == engine.ByGap }
	if !countsSleep(r.clock) && zero.Sub(r.zero) > time.Second && !slices.ContainsFunc(events, gap) {
		r.zero = zero
	}
}

// heard writes the lines that one event gives.
func (r *Recorder) heard(e engine.Event) {
	step := r.plan.Steps[e.Step]
	switch e.Kind {
	case engine.Started:
		r.start = r.wall(e)
		for _, l := range append([]journal.Line{r.opener}, r.early...) {
			r.writeAt(e, l)
		}
	case engine.StepBegan:
		r.restZero = r.zero
		if e.Taken == 0 {
			r.restSince = time.Time{}
		}
	case engine.StepEnded:
		r.stepEnded(e, step)
	case engine.SetEnded:
		r.worked = r.worked || e.Set.Outcome != engine.Skipped
		r.writeAt(e, journal.Line{Event: journal.EventSet, Set: r.set(e)})
	case engine.Paused:
		r.paused = true
		r.writeAt(e, journal.Line{Event: journal.EventPause, Pause: &journal.Pause{Cause: string(e.Cause)}})
	case engine.Resumed: // after a count-in too, which is no pause
		if r.paused {
			r.writeAt(e, journal.Line{Event: journal.EventResume, Resume: &journal.Resume{}})
		}
		r.paused = false
	case engine.Extended:
		r.writeAt(e, journal.Line{Event: journal.EventExtend, Extend: &journal.Extend{Kind: string(step.Kind), ByS: units.InSeconds(e.Length), Place: placeOf(step)}})
	case engine.Swapped:
		r.swapped(e)
	case engine.Finished:
		r.finished(e)
	}
}

// contacts returns the foot contacts of what was done of a set: not known if it
// is a jump whose contacts are not counted.
func contacts(exercise *sessions.Exercise, done *engine.SetResult) journal.Count {
	if !jumps.Counted(exercise) && done.Outcome != engine.Skipped {
		return journal.Count{}
	}
	return journal.CountOf(done.Reps * exercise.Contacts)
}

// finished writes the run's end.
func (r *Recorder) finished(e engine.Event) {
	f := &journal.Finish{Outcome: string(journal.Complete), ElapsedS: units.InSeconds(r.elapsedBase + max(0, r.wall(e).Sub(r.start)))}
	if e.Cause == engine.ByStop || !r.worked { // a session all of whose sets were skipped was not completed
		f.Outcome = string(journal.Stopped)
	}
	r.writeAt(e, journal.Line{Event: journal.EventFinish, Finish: f})
}

// wall returns the wall time of an event, however late it was heard of.
func (r *Recorder) wall(e engine.Event) time.Time { return r.zero.Add(e.Now) }

// writeAt writes the line that an event gives; what comes before the start
// waits for it.
func (r *Recorder) writeAt(e engine.Event, l journal.Line) {
	if r.start.IsZero() {
		r.early = append(r.early, l)
		return
	}
	r.write(r.wall(e), r.clockBase+e.Clock, l)
}

// write numbers a line, stamps it, and sends it off.
func (r *Recorder) write(at time.Time, clock time.Duration, l journal.Line) {
	r.n++
	l.V, l.Run, l.N, l.At, l.Clock = journal.Version, r.run, r.n, at.Round(time.Millisecond), units.InSeconds(clock)
	r.lines = append(r.lines, l)
	r.queue.add(l)
}
