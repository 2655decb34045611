package run

import (
	"time"

	"coldfloor/internal/journal"
)

// lookBack is how far before a plan of weeks or before now the log is looked at
// for what a player should know before a start: longer than any rule asks for,
// a year and a month.
const lookBack = 400 * 24 * time.Hour

// Log is what the journal tells at the start of the program. The zero Log is
// none.
type Log struct {
	Journal    *journal.Journal
	Runs       []*journal.Run // those of Since, lean, the earliest first
	Unfinished []*journal.Run // in full, the latest first; none that another process is at
}

// since is how far back the log is looked at: see lookBack.
func (o *Options) since(now time.Time) time.Time {
	since := now.Add(-lookBack)
	if o.Season != nil {
		if starts := o.Season.Starts.In(time.Local, 0).Add(-lookBack); starts.Before(since) {
			return starts
		}
	}
	return since
}

// openLog opens the journal, which it makes sure can be written, and reads it.
// Damaged lines are passed over here: they are reported when the log is looked
// at.
func (f *Flow) openLog() error {
	j, err := journal.Open(f.opts.Journal)
	if err != nil {
		return err
	}
	f.log.Journal = j
	o, err := f.look()
	if err != nil {
		f.log = Log{}
		return err
	}
	f.log.Unfinished, err = o.Full(left(j, o.Unfinished())...)
	return err
}

// look reads what the log tells now.
func (f *Flow) look() (*journal.Overview, error) {
	o, err := f.log.Journal.Overview()
	if err != nil {
		return nil, err
	}
	f.log.Runs = o.Lately(f.opts.since(f.now()), f.opts.Player.Name)
	return o, nil
}
