package journal

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"

	"coldfloor/internal/engine"
	"coldfloor/internal/fault"
	"coldfloor/internal/plan"
	"coldfloor/internal/runner"
	"coldfloor/sessions"
)

// ErrNothingLeft is returned for a run whose sets are all done: it can be
// logged as it stands, and not gone on with.
var ErrNothingLeft = errors.New("nothing of it is left to do")

// Resumption is an unfinished run that can be gone on with.
type Resumption struct {
	Run     *Run
	Plan    *plan.Plan
	Options engine.Options // From and Easier are filled in, the rest is the caller's
}

// Unfinished returns the runs that have not ended and that no process is at,
// the latest first.
func (j *Journal) Unfinished() ([]*Run, error) {
	runs, _, err := Load(j.path)
	if err != nil {
		return nil, err
	}
	runs = slices.DeleteFunc(runs, func(r *Run) bool {
		return r.State != Unfinished || r.Withdrawn || j.Live(r.ID)
	})
	slices.Reverse(runs)
	return runs, nil
}

// Resume returns how to go on with a run: with the first set not yet done
// after the one that ended last, on its first side.
func (r *Run) Resume() (*Resumption, error) {
	if r.Started == nil || r.Started.Text == "" {
		return nil, errors.New("the journal has lost what was prescribed in it")
	}
	s, err := sessions.Parse(filepath.Base(r.Started.Source), []byte(r.Started.Text))
	if err != nil {
		return nil, fmt.Errorf("the session in it cannot be read: %w", err)
	}
	s.Name = r.Started.Source
	return r.resumeWith(plan.Of(s))
}

// resumeWith returns how to go on with a run of p.
func (r *Run) resumeWith(p *plan.Plan) (*Resumption, error) {
	from := r.next(p)
	if from < 0 {
		return nil, ErrNothingLeft
	}
	return &Resumption{Run: r, Plan: p, Options: engine.Options{From: from, Easier: r.Easier}}, nil
}

// next returns the index of the step to go on with, or -1.
func (r *Run) next(p *plan.Plan) int {
	ended := map[Place]bool{}
	for _, s := range r.Sets {
		ended[s.Place] = s.End != string(engine.ByStop)
	}
	latest := Place{}
	if r.lastSet >= 0 && ended[r.Sets[r.lastSet].Place] {
		latest = r.Sets[r.lastSet].Place
	}
	for _, s := range p.Sets {
		at := Place{s.Block, s.Round, s.Exercise}
		if at.compare(latest) > 0 && !ended[at] {
			return s.First
		}
	}
	return -1
}

// GoOn returns the Recorder of a run that is gone on with. It fails with
// ErrLive where another process has taken the run up meanwhile, or where it
// has ended.
func (j *Journal) GoOn(re *Resumption, c runner.Clock) (*Recorder, error) {
	rec, err := j.record(re.Run.ID, re.Plan, re.Options, c,
		Line{Event: EventResume, Resume: &Resume{Restart: true, Step: re.Options.From}})
	if err != nil {
		return nil, err
	}
	now, err := j.find(re.Run.ID)
	if err == nil && now.LastN != re.Run.LastN {
		err = fault.New("start again to see how it stands", "it was gone on with or ended meanwhile")
	}
	if err != nil {
		return nil, errors.Join(err, rec.Close())
	}
	rec.n, rec.clockBase, rec.elapsedBase = now.LastN, now.Clock, now.Elapsed
	return rec, nil
}

// CloseAsIs logs an unfinished run as it stands.
func (j *Journal) CloseAsIs(id string) error {
	return j.amend(id, func(r *Run) ([]Line, error) {
		if r.State != Unfinished {
			return nil, errors.New("it has ended already")
		}
		return []Line{{Event: EventFinish, Finish: &Finish{Outcome: string(Interrupted), ElapsedS: seconds(r.Elapsed)}}}, nil
	})
}
