package journal

import (
	"errors"
	"fmt"
	"time"

	"coldfloor/internal/plan"
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
	Plan   *plan.Plan // nil where only the title is known
	Player string     // may be empty
	Start  time.Time
	Length time.Duration
	Rating Rating
}

// AddOnPaper appends a session done on paper as a run of its own, and returns
// the run's name.
func (j *Journal) AddOnPaper(s OnPaper) (id string, err error) {
	started := &Started{Title: s.Title, Source: Paper, Player: s.Player, Blocks: []PlannedBlock{}, Program: program()}
	if s.Plan != nil {
		started.Text, started.TotalS, started.Blocks = string(s.Plan.Session.Source), seconds(s.Plan.Total), Prescribed(s.Plan)
	}
	lines := []Line{
		{At: s.Start, Event: EventStarted, Started: started},
		{At: s.Start.Add(s.Length), Event: EventFinish, Finish: &Finish{Outcome: string(Complete), ElapsedS: seconds(s.Length)}},
	}
	if !s.Rating.empty() {
		lines = append(lines, Line{At: time.Now().Round(time.Millisecond), Event: EventRating, Rating: &s.Rating})
	}
	id = newRun()
	for i := range lines {
		lines[i].V, lines[i].Run, lines[i].N = Version, id, i+1
	}
	return id, j.Append(lines...)
}

// find reads the present state of one run.
func (j *Journal) find(id string) (*Run, error) {
	runs, _, err := Load(j.path)
	if err != nil {
		return nil, err
	}
	for _, r := range runs {
		if r.ID == id {
			return r, nil
		}
	}
	return nil, fmt.Errorf("no run %s in %s", id, j.path)
}

// amend appends to a run that no process is at the lines that about gives.
func (j *Journal) amend(id string, about func(*Run) ([]Line, error)) error {
	held, err := j.claim(id)
	for end := time.Now().Add(time.Second); errors.Is(err, ErrLive) && time.Now().Before(end); {
		time.Sleep(10 * time.Millisecond) // another process may be amending it too
		held, err = j.claim(id)
	}
	if err != nil {
		return err
	}
	defer held.release()
	r, err := j.find(id)
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
		l.V, l.Run, l.N, l.At, l.Clock = Version, id, r.LastN+1+i, now.Round(time.Millisecond), seconds(r.Clock)
	}
	return j.Append(lines...)
}
