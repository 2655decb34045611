package run

import "time"

// Clock is where a run gets its time. A test has its own, so that none waits for
// the wall clock.
type Clock interface {
	Mono() time.Duration // monotonic, since any moment
	Wall() time.Time
}

// System is the machine's own clock, run at a multiple of its speed: the
// whole of time is stretched, so that a rehearsal goes through the same
// motions as the session itself. Make it with NewSystem.
type System struct {
	start time.Time     // by the wall
	boot  time.Duration // reading of the machine's clock then
	speed float64
}

// NewSystem returns a System that starts now. A speed of 2 makes an hour pass
// in half of one; it must be above zero.
func NewSystem(speed float64) *System {
	return &System{start: time.Now(), boot: sinceBoot(), speed: speed}
}

// Mono returns the stretched time since the start.
func (s *System) Mono() time.Duration { return s.stretch(sinceBoot() - s.boot) }

// Wall returns the wall clock's reading, its distance from the start stretched.
func (s *System) Wall() time.Time {
	start := s.start.Round(0)
	return start.Add(s.stretch(time.Now().Round(0).Sub(start)))
}

// Speed returns how many seconds of this clock pass in one second.
func (s *System) Speed() float64 { return s.speed }

// CountsSleep reports whether Mono goes on while the machine sleeps. Then a
// wall clock that drifts from it was set, by hand or by the network.
func (s *System) CountsSleep() bool { return bootCountsSleep }

func (s *System) stretch(d time.Duration) time.Duration {
	if s.speed == 1 {
		return d
	}
	return time.Duration(float64(d) * s.speed)
}

// SpeedOf returns how many of c's seconds pass in a second: what c says of
// itself, and 1 if it says nothing.
func SpeedOf(c Clock) float64 {
	if s, ok := c.(interface{ Speed() float64 }); ok {
		return s.Speed()
	}
	return 1
}

// countsSleep reports whether c's monotonic reading goes on while the machine
// sleeps: what c says of itself, and false if it says nothing.
func countsSleep(c Clock) bool {
	s, ok := c.(interface{ CountsSleep() bool })
	return ok && s.CountsSleep()
}
