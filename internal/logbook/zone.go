package logbook

import (
	"time"

	"coldfloor/internal/journal"
)

// face shows the times of one screen in one zone: each as it was taken, if all
// were taken in one zone, and otherwise in the machine's own, which is named.
type face struct{ zone *time.Location }

// faceOf returns the face for those times, on a machine whose zone is local.
func faceOf(local *time.Location, times ...time.Time) face {
	one, own := true, true
	for _, t := range times {
		_, first := times[0].Zone()
		_, offset := t.Zone()
		_, here := t.In(local).Zone()
		one = one && offset == first
		own = own && offset == here // summer and winter time are one zone
	}
	if one || own {
		return face{}
	}
	return face{local}
}

// at returns t as the face shows it.
func (f face) at(t time.Time, layout string) string {
	if f.zone != nil {
		t = t.In(f.zone)
	}
	return t.Format(layout)
}

// note names the zone, on a line of its own, if the times were taken in several.
func (f face) note(now time.Time) string {
	if f.zone == nil {
		return ""
	}
	return "the journal has times of several zones; all are shown in " + now.In(f.zone).Format("MST, UTC-07:00") + "\n"
}

// times returns the times that are shown of a run in full.
func times(r *journal.Run) []time.Time {
	all := []time.Time{r.Start}
	for i := range r.Amendments {
		all = append(all, r.Amendments[i].At)
		if c := r.Amendments[i].Correct; c != nil && c.At != nil {
			all = append(all, *c.At)
		}
	}
	for i := range r.Measures {
		all = append(all, r.Measures[i].At)
	}
	return all
}
