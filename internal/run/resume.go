package run

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"

	"coldfloor/internal/engine"
	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// ErrNothingLeft is returned for a run whose sets are all done: it can be
// logged as it stands, and not gone on with.
var ErrNothingLeft = errors.New("nothing of it is left to do")

// Resumption is an unfinished run that can be gone on with.
type Resumption struct {
	Run     *journal.Run
	Plan    *plan.Plan
	Options engine.Options // From and Easier are filled in, the rest is the caller's
}

// unfinished returns those of runs that have not ended and that no process is
// at, the latest first. Runs are those of j, the earliest first.
func unfinished(j *journal.Journal, runs []*journal.Run) []*journal.Run {
	left := slices.DeleteFunc(slices.Clone(runs), func(r *journal.Run) bool {
		return r.State != journal.Unfinished || r.Withdrawn || j.Live(r.ID)
	})
	slices.Reverse(left)
	return left
}

// Resume returns how to go on with r: with the first set not yet done
// after the one that ended last, on its first side.
func Resume(r *journal.Run) (*Resumption, error) {
	if r.Started == nil || r.Started.Text == "" {
		return nil, errors.New("the journal has lost what was prescribed in it")
	}
	s, err := sessions.Parse(filepath.Base(r.Started.Source), []byte(r.Started.Text))
	if err != nil {
		return nil, fmt.Errorf("the session in it cannot be read: %w", err)
	}
	s.Name = r.Started.Source
	return resumeWith(r, plan.Of(s))
}

// resumeWith returns how to go on with a run of p.
func resumeWith(r *journal.Run, p *plan.Plan) (*Resumption, error) {
	from := next(r, p)
	if from < 0 {
		return nil, ErrNothingLeft
	}
	return &Resumption{Run: r, Plan: p, Options: engine.Options{From: from, Easier: easier(r)}}, nil
}

// easier returns the exercises that were in their easier variant at the end.
func easier(r *journal.Run) []engine.Exercise {
	list := make([]engine.Exercise, len(r.Easier))
	for i, x := range r.Easier {
		list[i] = engine.Exercise(x)
	}
	return list
}

// next returns the index of the step to go on with, or -1.
func next(r *journal.Run, p *plan.Plan) int {
	ended := map[journal.Place]bool{}
	for _, s := range r.Sets {
		ended[s.Place] = s.End != string(engine.ByStop)
	}
	latest := journal.Place{}
	if last, ok := r.LastSet(); ok && ended[last.Place] {
		latest = last.Place
	}
	for _, s := range p.Sets {
		at := journal.Place{Block: s.Block, Round: s.Round, Exercise: s.Exercise}
		if at.Compare(latest) > 0 && !ended[at] {
			return s.First
		}
	}
	return -1
}

// GoOn returns the Recorder of a run that is gone on with. It fails with
// journal.ErrLive if another process has taken the run up meanwhile, or if it
// has ended.
func GoOn(j *journal.Journal, re *Resumption, c Clock) (*Recorder, error) {
	rec, err := record(j, re.Run.ID, re.Plan, re.Options, c,
		journal.Line{Event: journal.EventResume, Resume: &journal.Resume{Restart: true, Step: re.Options.From}})
	if err != nil {
		return nil, err
	}
	now, err := j.Find(re.Run.ID)
	if err == nil && now.LastN != re.Run.LastN {
		err = fault.New("start again to see how it stands", "it was gone on with or ended meanwhile")
	}
	if err != nil {
		return nil, errors.Join(err, rec.Close())
	}
	rec.n, rec.clockBase, rec.elapsedBase = now.LastN, now.Clock, now.Elapsed
	return rec, nil
}
