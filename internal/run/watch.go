package run

import "time"

// maxGap is how long a host may fail to look at the clock, or how far the two
// clocks may drift apart between two looks, before the run is taken to have been left
// alone: a closed lid, a stopped process, a clock set by hand or by NTP.
// Hosts look at least four times a second.
const maxGap = 2 * time.Second

// watch compares a monotonic and a wall clock from look to look. If the
// monotonic clock stops during sleep, only the wall clock shows it.
type watch struct {
	limit  time.Duration // maxGap, on clocks that run at another speed
	sleeps bool          // the monotonic clock counts sleep: the wall clock shows nothing more
	mono   time.Duration
	wall   time.Time
}

// newWatch returns a watch over c that has not looked.
func newWatch(c Clock) watch {
	return watch{limit: time.Duration(float64(maxGap) * SpeedOf(c)), sleeps: countsSleep(c)}
}

// look takes the present readings and returns how long the host was away: 0 in
// the ordinary case, negative if the wall clock was set back.
func (w *watch) look(mono time.Duration, wall time.Time) time.Duration {
	wall = wall.Round(0) // the wall reading alone
	last := *w
	w.mono, w.wall = mono, wall
	if last.wall.IsZero() {
		return 0
	}
	byMono, byWall := mono-last.mono, wall.Sub(last.wall)
	switch {
	case !w.sleeps && (byWall-byMono).Abs() > w.limit:
		return byWall
	case byMono > w.limit:
		return byMono
	}
	return 0
}
