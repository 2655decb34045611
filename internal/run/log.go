package run

import "coldfloor/internal/journal"

// Log is what the journal tells at the start of the program. The zero Log is
// none.
type Log struct {
	Journal    *journal.Journal
	Runs       []*journal.Run // lean, the earliest first
	Unfinished []*journal.Run // in full, the latest first; none that another process is at
}

// openLog opens the journal at path, which it makes sure can be written, and
// reads it. Damaged lines are passed over here: they are reported when the log
// is looked at.
func openLog(path string) (Log, error) {
	j, err := journal.Open(path)
	if err != nil {
		return Log{}, err
	}
	l := Log{Journal: j}
	o, err := j.Overview()
	if err != nil {
		return Log{}, err
	}
	l.Runs = o.Runs()
	l.Unfinished, err = o.Full(unfinished(j, l.Runs)...)
	return l, err
}
