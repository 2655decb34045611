package run

import (
	"testing"
	"time"

	"coldfloor/internal/engine"
)

// A rest lasts until work begins again: the count-in after one that was ended by
// hand is part of it, and so is a pause in that.
func TestRestLastsUntilWork(t *testing.T) {
	for name, c := range map[string]struct {
		do            func(r *rig)
		taken, paused float64
		left          bool
	}{
		"skipped":            {func(r *rig) { r.do(10*time.Second, engine.Skip); r.pass(5 * time.Second) }, 13, 0, false},
		"skipped at its end": {func(r *rig) { r.do(28*time.Second, engine.Skip); r.pass(5 * time.Second) }, 30, 0, false},
		"the set again":      {func(r *rig) { r.do(10*time.Second, engine.Repeat); r.pass(5 * time.Second) }, 13, 0, false},
		"by the clock":       {func(r *rig) { r.pass(35 * time.Second) }, 30, 0, false},
		"paused in the count-in": {func(r *rig) {
			r.do(10*time.Second, engine.Skip)
			r.do(time.Second, engine.Pause)
			r.do(20*time.Second, engine.Resume)
			r.pass(5 * time.Second)
		}, 34, 20, false},
		"asleep in the count-in": {func(r *rig) {
			r.do(10*time.Second, engine.Skip)
			r.pass(time.Second)
			r.clock.start = r.clock.start.Add(10 * time.Minute)
			r.do(0, engine.Resume)
			r.pass(5 * time.Second)
		}, 614, 600, false},
		"stopped in the count-in": {func(r *rig) { r.do(10*time.Second, engine.Skip); r.do(time.Second, engine.Stop) }, 11, 0, true},
		"back in the count-in":    {func(r *rig) { r.do(10*time.Second, engine.Skip); r.do(time.Second, engine.Back) }, 11, 0, true},
	} {
		t.Run(name, func(t *testing.T) {
			j := openTemp(t)
			r := newRig(t, j, newClock())
			r.run.Do(engine.Start)
			r.pass(15 * time.Second) // the first rest begins
			c.do(r)
			if r.run.View().Phase != engine.Over {
				r.do(0, engine.Stop)
			}
			r.close()
			rest := only(t, j).Rests[0]
			if rest.TakenS != c.taken || rest.PausedS != c.paused || rest.Left != c.left {
				t.Errorf("%+v, want %g s taken, %g s of it paused, left %v", rest, c.taken, c.paused, c.left)
			}
		})
	}
}
