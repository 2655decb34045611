package run

import (
	"errors"

	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/units"
)

// errNotKept is returned if there is no log to keep a choice in.
var errNotKept = errors.New("without a log nothing can be left out for good")

// LeaveOut logs that the player chose not to do the session of a day: a run of
// it that ended with nothing done. It trained nobody, and the day is skipped and
// not missed.
func (f *Flow) LeaveOut(p *plan.Plan, day *journal.Weeks) error {
	if f.log.Journal == nil {
		return errNotKept
	}
	now, name := f.now(), journal.NewName()
	started := &journal.Started{Title: p.Session.Title, Source: source(p.Session.Name), Text: string(p.Session.Source),
		Player: f.opts.Player.Name, TotalS: units.InSeconds(p.Total), Blocks: Prescribed(p), Program: journal.Program(), Weeks: day}
	err := f.log.Journal.AppendWhole(
		journal.Line{V: journal.Version, Run: name, N: 1, At: now, Event: journal.EventStarted, Started: started},
		journal.Line{V: journal.Version, Run: name, N: 2, At: now, Event: journal.EventFinish, Finish: &journal.Finish{Outcome: string(journal.Stopped)}})
	if err != nil {
		return err
	}
	_, err = f.look()
	return err
}
