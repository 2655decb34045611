package plan

import (
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/sessions"
)

func seconds(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }

// TestRhythm reads the beats of steps worked out by hand. A tempo of 3-1-1 is
// three seconds down, one held, one up (the usual notation of strength
// training; common practice, no source).
func TestRhythm(t *testing.T) {
	three := sessions.Tempo{Lowering: 3 * time.Second, Pause: time.Second, Rising: time.Second}
	four := sessions.Tempo{Lowering: 2 * time.Second, Rising: time.Second, Top: time.Second}
	for _, c := range []struct {
		name string
		step Step
		e    sessions.Exercise
		at   float64
		want Beat
	}{
		{"first rep", Step{Kind: Work, Reps: 6, Length: 12 * time.Second, Side: Both}, sessions.Exercise{Rep: 2 * time.Second}, 0,
			Beat{1, 6, Both, "", 0, 2 * time.Second}},
		{"third rep", Step{Kind: Work, Reps: 6, Length: 12 * time.Second, Side: Both}, sessions.Exercise{Rep: 2 * time.Second}, 4,
			Beat{3, 6, Both, "", 4 * time.Second, 2 * time.Second}},
		{"down", Step{Kind: Work, Reps: 5, Length: 25 * time.Second, Side: Left}, sessions.Exercise{Rep: 5 * time.Second, Tempo: three}, 7.9,
			Beat{2, 5, Left, Lowering, 5 * time.Second, 3 * time.Second}},
		{"hold", Step{Kind: Work, Reps: 5, Length: 25 * time.Second, Side: Left}, sessions.Exercise{Rep: 5 * time.Second, Tempo: three}, 8,
			Beat{2, 5, Left, HoldLow, 8 * time.Second, time.Second}},
		{"up", Step{Kind: Work, Reps: 5, Length: 25 * time.Second, Side: Right}, sessions.Exercise{Rep: 5 * time.Second, Tempo: three}, 24.9,
			Beat{5, 5, Right, Rising, 24 * time.Second, time.Second}},
		{"no low hold, held above", Step{Kind: Work, Reps: 2, Length: 8 * time.Second, Side: Both}, sessions.Exercise{Rep: 4 * time.Second, Tempo: four}, 3,
			Beat{1, 2, Both, HoldHigh, 3 * time.Second, time.Second}},
		{"sides in turn", Step{Kind: Work, Reps: 6, Length: 6 * time.Second, Side: Alternate}, sessions.Exercise{Rep: time.Second}, 3.5,
			Beat{4, 6, Right, "", 3 * time.Second, time.Second}},
		{"past the end", Step{Kind: Work, Reps: 6, Length: 12 * time.Second, Side: Both, ByHand: true}, sessions.Exercise{Rep: 2 * time.Second}, 60,
			Beat{6, 6, Both, "", 10 * time.Second, 2 * time.Second}},
		{"timed, with a tempo", Step{Kind: Work, Length: 12 * time.Second, Side: Both}, sessions.Exercise{Tempo: three}, 10.5,
			Beat{3, 0, Both, Lowering, 10 * time.Second, 3 * time.Second}},
	} {
		got, ok := RhythmOf(c.step, &c.e).At(seconds(c.at))
		if !ok || got != c.want {
			t.Errorf("%s: %+v, %v, want %+v", c.name, got, ok, c.want)
		}
	}
	for name, r := range map[string]Rhythm{
		"timed, no tempo": RhythmOf(Step{Kind: Work, Length: time.Minute}, &sessions.Exercise{Rep: 2 * time.Second}),
		"rest":            RhythmOf(Step{Kind: Rest, Length: time.Minute}, nil),
		"switch":          RhythmOf(Step{Kind: Switch, Length: time.Minute, Reps: 0}, &sessions.Exercise{Rep: 2 * time.Second, Tempo: three}),
	} {
		if b, ok := r.At(0); ok || r != (Rhythm{}) {
			t.Errorf("%s has a beat %+v", name, b)
		}
	}
}

// TestBeatsFillTheStep: beats follow one another without a gap from the start
// of the step to its end, each is what At says within it, and every rep is
// counted once.
func TestBeatsFillTheStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		part := rapid.Custom(func(t *rapid.T) time.Duration {
			return time.Duration(rapid.IntRange(0, 40).Draw(t, "tenths")) * 100 * time.Millisecond
		})
		e := sessions.Exercise{Rep: time.Duration(rapid.IntRange(1, 50).Draw(t, "rep")) * 100 * time.Millisecond}
		if rapid.Bool().Draw(t, "has a tempo") {
			e.Tempo = sessions.Tempo{Lowering: part.Draw(t, "down"), Pause: part.Draw(t, "low"), Rising: part.Draw(t, "up"), Top: part.Draw(t, "high")}
			if e.Tempo != (sessions.Tempo{}) {
				e.Rep = e.Tempo.Rep()
			}
		}
		s := Step{Kind: Work, Reps: rapid.IntRange(0, 20).Draw(t, "reps"), Side: rapid.SampledFrom([]Side{Left, Right, Both, Alternate}).Draw(t, "side")}
		if s.Length = time.Duration(s.Reps) * e.Rep; s.Reps == 0 {
			s.Length = time.Duration(rapid.IntRange(1, 600).Draw(t, "tenths")) * 100 * time.Millisecond
		}
		r := RhythmOf(s, &e)
		beats := slices.Collect(r.Beats)
		if r == (Rhythm{}) {
			if len(beats) > 0 {
				t.Fatalf("no rhythm, but %v", beats)
			}
			return
		}
		at, reps := time.Duration(0), 0
		for _, b := range beats {
			if b.Start != at || b.Length <= 0 {
				t.Fatalf("%+v does not follow %v", b, at)
			}
			if b.Rep != reps {
				if reps++; b.Rep != reps {
					t.Fatalf("%+v after rep %d", b, reps-1)
				}
			}
			for _, in := range []time.Duration{b.Start, b.End() - 1} {
				got, ok := r.At(in)
				if !ok || got.Rep != b.Rep || got.Phase != b.Phase || got.Start != b.Start || got.Side != b.Side {
					t.Fatalf("at %v %+v, want %+v", in, got, b)
				}
			}
			at = b.End()
		}
		if at != s.Length || s.Reps > 0 && reps != s.Reps {
			t.Fatalf("%d beats end at %v of %v, %d reps of %d", len(beats), at, s.Length, reps, s.Reps)
		}
	})
}
