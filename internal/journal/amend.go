package journal

import (
	"errors"
	"fmt"
	"time"

	"coldfloor/internal/units"
)

// Amend appends to a run lines about it: ratings, corrections, a withdrawal.
// Version, run, number and time are filled in. It fails with ErrLive while a
// process is at the run.
func (j *Journal) Amend(id string, lines ...Line) error {
	return j.amend(id, func(*Run) ([]Line, error) { return lines, nil })
}

// OnPaper is a session that was done without the program.
type OnPaper struct {
	Title  string
	Text   string         // the session file; empty if only the title is known
	Total  time.Duration  // planned length; 0 if only the title is known
	Blocks []PlannedBlock // what was prescribed; nil if only the title is known
	Player string         // may be empty
	Weeks  *Weeks         // what put the session on its day; nil: nothing did
	Start  time.Time
	Length time.Duration
	Rating Rating
}

// AddOnPaper appends a session done on paper as a run of its own, and returns
// the run's name.
func (j *Journal) AddOnPaper(s OnPaper) (id string, err error) {
	started := &Started{Title: s.Title, Source: Paper, Text: s.Text, Player: s.Player,
		TotalS: units.InSeconds(s.Total), Blocks: append([]PlannedBlock{}, s.Blocks...), Program: Program(), Weeks: s.Weeks}
	lines := []Line{
		{At: s.Start, Event: EventStarted, Started: started},
		{At: s.Start.Add(s.Length), Event: EventFinish, Finish: &Finish{Outcome: string(Complete), ElapsedS: units.InSeconds(s.Length)}},
	}
	if !s.Rating.Empty() {
		lines = append(lines, Line{At: time.Now().Round(time.Millisecond), Event: EventRating, Rating: &s.Rating})
	}
	id = NewName()
	for i := range lines {
		lines[i].V, lines[i].Run, lines[i].N = Version, id, i+1
	}
	return id, j.AppendWhole(lines...)
}

// Find reads the present state of one run.
func (j *Journal) Find(id string) (*Run, error) {
	o, err := j.Overview()
	if err != nil {
		return nil, err
	}
	r := o.Named(id)
	if r == nil {
		return nil, fmt.Errorf("no run %s in %s", id, j.path)
	}
	full, err := o.Full(r)
	if err != nil {
		return nil, err
	}
	return full[0], nil
}

// amend appends to a run that no process is at the lines that about gives.
func (j *Journal) amend(id string, about func(*Run) ([]Line, error)) error {
	held, err := j.Claim(id)
	for end := time.Now().Add(time.Second); errors.Is(err, ErrLive) && time.Now().Before(end); {
		time.Sleep(10 * time.Millisecond) // another process may be amending it too
		held, err = j.Claim(id)
	}
	if err != nil {
		return err
	}
	defer held.Release()
	r, err := j.Find(id)
	if err != nil {
		return err
	}
	lines, err := about(r)
	if err != nil {
		return err
	}
	now := time.Now()
	for i := range lines {
		l := &lines[i]
		l.V, l.Run, l.N, l.At, l.Clock = Version, id, r.LastN+1+i, now.Round(time.Millisecond), units.InSeconds(r.Clock)
	}
	return j.AppendWhole(lines...)
}

// ErrEnded is returned for a run that was to be ended and is.
var ErrEnded = errors.New("it has ended already")

// CloseAsIs logs an unfinished run as it stands. It fails with ErrLive while a
// process is at the run, and with ErrEnded if it has ended.
func (j *Journal) CloseAsIs(id string) error {
	return j.amend(id, func(r *Run) ([]Line, error) {
		if r.State != Unfinished {
			return nil, ErrEnded
		}
		return []Line{{Event: EventFinish, Finish: &Finish{Outcome: string(Interrupted), ElapsedS: units.InSeconds(r.Elapsed)}}}, nil
	})
}
