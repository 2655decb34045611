package logbook

import (
	"strings"
	"time"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
)

// Last is the name of the latest run of those that a command is about.
const Last = "last"

// Pick returns the run that the user calls name: Last, the latest session that
// counts, or the beginning of one run's name.
func Pick(all *journal.Overview, name string) (*journal.Run, error) {
	return pick(all, name, func(r *journal.Run) (time.Time, bool) { return r.End(), r.Counts() },
		fault.New("coldfloor log --all lists every run; name one", "no session that counts is logged: what is there was deleted, was a rehearsal, or had nothing done in it"))
}

// PickDeleted is Pick for a command about deleted runs: Last is the one that
// was deleted latest.
func PickDeleted(all *journal.Overview, name string) (*journal.Run, error) {
	return pick(all, name, func(r *journal.Run) (time.Time, bool) { return r.Removed, r.Withdrawn },
		fault.New("coldfloor log --all lists every run", "no run is deleted"))
}

// PickOpen is Pick for a command about runs that did not end: Last is the
// latest of them.
func PickOpen(all *journal.Overview, name string) (*journal.Run, error) {
	return pick(all, name, func(r *journal.Run) (time.Time, bool) {
		return r.Start, r.State == journal.Unfinished && !r.Withdrawn
	}, fault.New("coldfloor log lists them", "every run has ended already"))
}

// pick returns the run called name. Last is the latest of those that meant
// holds for, by the moment it gives; none if there is no such run.
func pick(all *journal.Overview, name string, meant func(*journal.Run) (time.Time, bool), none error) (*journal.Run, error) {
	if name == Last {
		if last := all.Last(meant); last != nil {
			return last, nil
		}
	}
	if r := all.Named(name); r != nil {
		return r, nil
	}
	runs := all.Runs()
	switch {
	case len(runs) == 0:
		return nil, fault.New("run a session first, or add one with coldfloor log add", "the journal is empty")
	case name == Last:
		return nil, none
	}
	var found []*journal.Run
	for _, r := range runs {
		if strings.HasPrefix(strings.ToLower(r.ID), strings.ToLower(name)) {
			found = append(found, r)
		}
	}
	switch len(found) {
	case 1:
		return found[0], nil
	case 0:
		return nil, fault.New("coldfloor log lists them; last is the latest", "no run is called %q", name)
	}
	return nil, fault.New("give more of the name: "+names(runs, found), "%d runs begin with %q", len(found), name)
}
