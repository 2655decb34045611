package engine_test

import (
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// BenchmarkAdvance measures one look at the clock in the middle of a step,
// which is what a host does several times a second, beside one whole run.
func BenchmarkAdvance(b *testing.B) {
	p := plan.Of(&sessions.Session{Title: "S", LeadIn: 10 * time.Second, Blocks: []sessions.Block{{
		Title: "B", Rounds: 100, Rest: time.Minute,
		Exercises: []sessions.Exercise{{Name: "hops", Reps: 10, Rep: time.Second}},
	}}})
	b.Run("look", func(b *testing.B) {
		e := engine.New(p, engine.Options{})
		e.Do(engine.Start, 0)
		for i := range b.N {
			e.Advance(time.Duration(i % 1000))
		}
	})
	b.Run("run of 200 steps", func(b *testing.B) {
		for range b.N {
			e := engine.New(p, engine.Options{})
			e.Do(engine.Start, 0)
			e.Advance(p.Total)
		}
	})
}
