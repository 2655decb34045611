package run

import (
	"errors"
	"path/filepath"
	"slices"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// ErrNothingLeft is returned for a run whose sets are all done: it can be
// logged as it stands, but not resumed.
var ErrNothingLeft = errors.New("nothing of it is left to do")

// Why else a run cannot be taken up again.
var (
	errPrescribedLost = errors.New("the journal has lost what was prescribed in it")
	errChanged        = errors.New("it was resumed or ended in the meantime")
)

// unreadable is a session in the journal that cannot be read any more.
type unreadable struct{ err error }

// Error implements error.
func (u *unreadable) Error() string { return "the session in it cannot be read: " + u.err.Error() }

// Unwrap returns why.
func (u *unreadable) Unwrap() error { return u.err }

// Resumption is an unfinished run that can be resumed.
type Resumption struct {
	Run     *journal.Run
	Plan    *plan.Plan
	Options engine.Options // From, Easier, ByHand and Seed are filled in, the rest is the caller's

	restSince time.Time // when the rest began that From is; zero if it is work
}

// passed returns how much of the rest that From is has passed by now. At least
// the count-in is still to go.
func (re *Resumption) passed(now time.Time) time.Duration {
	if re.restSince.IsZero() {
		return 0
	}
	return max(0, min(now.Sub(re.restSince), re.Plan.Steps[re.Options.From].Length-countIn))
}

// leadIn returns how long the player has before the step that the run resumes with:
// before work the session's own lead-in, and in all at least the count-in.
func (re *Resumption) leadIn() time.Duration {
	if s := re.Plan.Steps[re.Options.From]; s.Kind != plan.Work {
		return max(0, countIn-s.Length)
	}
	return max(re.Plan.Session.LeadIn, countIn)
}

// left returns those of the unfinished runs that no process is at, the latest
// first.
func left(j *journal.Journal, unfinished []*journal.Run) []*journal.Run {
	left := slices.DeleteFunc(unfinished, func(r *journal.Run) bool { return j.Live(r.ID) })
	slices.Reverse(left)
	return left
}

// Resume returns how to resume r: with the first set not yet done
// after the one that ended last, on its first side.
func Resume(r *journal.Run) (*Resumption, error) {
	if r.Started == nil || r.Started.Text == "" {
		return nil, errPrescribedLost
	}
	s, err := sessions.Parse(filepath.Base(r.Started.Source), []byte(r.Started.Text))
	if err != nil {
		return nil, &unreadable{err}
	}
	s.Name = r.Started.Source
	return resumeWith(r, plan.Of(s))
}

// resumeWith returns how to resume a run of p.
func resumeWith(r *journal.Run, p *plan.Plan) (*Resumption, error) {
	set := next(r, p)
	if set < 0 {
		return nil, ErrNothingLeft
	}
	re := &Resumption{Run: r, Plan: p, Options: engine.Options{From: p.Sets[set].First, Easier: easier(r)}}
	if r.Started != nil {
		re.Options.ByHand, re.Options.Seed = r.Started.ByHand, r.Started.Seed
	}
	re.restDue(set)
	return re, nil
}

// restDue makes the run resume with the rest before the set at index set, if that
// rest was under way: the set before it ended last, and no rest after it did.
func (re *Resumption) restDue(set int) {
	from := re.Plan.Sets[set].First - 1
	last, ok := re.Run.LastSet()
	if !ok || set == 0 || from < 0 || re.Plan.Steps[from].Kind != plan.Rest ||
		last.Place != placeOfSet(re.Plan.Sets[set-1]) || !wentOn(last) || last.At.IsZero() {
		return
	}
	for _, x := range re.Run.Rests {
		if x.Place == last.Place && !x.At.Before(last.At) {
			return
		}
	}
	re.Options.From, re.restSince = from, last.At
}

// wentOn reports whether a set ended for the step after it, and not for one
// before it or the session's end.
func wentOn(s journal.Set) bool {
	switch engine.Cause(s.End) {
	case engine.ByClock, engine.ByFinish, engine.BySkip:
		return true
	}
	return false
}

// easier returns the exercises that were in their easier variant at the end.
func easier(r *journal.Run) []engine.Exercise {
	list := make([]engine.Exercise, len(r.Easier))
	for i, x := range r.Easier {
		list[i] = engine.Exercise(x)
	}
	return list
}

// next returns the index of the set to resume with, or -1: the first that has
// not ended after the one that ended last.
func next(r *journal.Run, p *plan.Plan) int {
	ended := map[journal.Place]bool{}
	for _, s := range r.Sets {
		ended[s.Place] = ended[s.Place] || wentOn(s)
	}
	latest := journal.Place{}
	if last, ok := r.LastSet(); ok && wentOn(last) {
		latest = last.Place
	}
	for i, s := range p.Sets {
		if at := placeOfSet(s); at.Compare(latest) > 0 && !ended[at] {
			return i
		}
	}
	return -1
}

// placeOfSet returns the place of a set of the plan.
func placeOfSet(s plan.Set) journal.Place {
	return journal.Place{Block: s.Block, Round: s.Round, Exercise: s.Exercise}
}

// GoOn returns the Recorder of a run that is resumed with o. It fails with
// journal.ErrLive if another process has taken the run up meanwhile, or if it
// has ended.
func GoOn(j *journal.Journal, re *Resumption, o engine.Options, c Clock) (*Recorder, error) {
	rec, err := record(j, re.Run.ID, re.Plan, o, c,
		journal.Line{Event: journal.EventResume, Resume: &journal.Resume{Restart: true, Step: o.From}})
	if err != nil {
		return nil, err
	}
	now, err := j.Find(re.Run.ID)
	if err == nil && now.LastN != re.Run.LastN {
		err = errChanged
	}
	if err != nil {
		return nil, errors.Join(err, rec.Close())
	}
	rec.n, rec.clockBase, rec.elapsedBase = now.LastN, now.Clock, now.Elapsed
	rec.restSince, rec.worked = re.restSince, worked(now)
	return rec, nil
}
