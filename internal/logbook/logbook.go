// Package logbook shows the runs of a journal: a list of them, or one of them
// set by set and rest by rest.
package logbook

import (
	"strings"

	"coldfloor/internal/journal"
	"coldfloor/internal/safetext"
)

// names returns a few short names, as a hint.
func names(runs, some []*journal.Run) string {
	short := Short(runs)
	var parts []string
	for _, r := range some[:min(3, len(some))] {
		parts = append(parts, short[r.ID])
	}
	return strings.Join(parts, ", ")
}

// shortest is how much of a run's name is shown at least.
const shortest = 4

// Short returns the shortest beginning of each run's name that names no other.
func Short(runs []*journal.Run) map[string]string {
	short := make(map[string]string, len(runs))
	for n := shortest; len(short) < len(runs); n++ {
		count := map[string]int{}
		for _, r := range runs {
			count[r.ID[:min(n, len(r.ID))]]++
		}
		for _, r := range runs {
			begin := r.ID[:min(n, len(r.ID))]
			if _, done := short[r.ID]; !done && (count[begin] == 1 || len(begin) == len(r.ID)) {
				short[r.ID] = begin
			}
		}
	}
	return short
}

// State says how a run stands. A run that has not ended is under way if
// live says that a process is at it.
func State(r *journal.Run, live func(id string) bool) string {
	switch {
	case r.Withdrawn:
		return "deleted"
	case r.State == journal.Unfinished && live(r.ID):
		return "under way"
	case r.Rehearsal():
		return "rehearsal"
	case r.OnPaper():
		return "on paper"
	}
	return safetext.Clean(string(r.State))
}
