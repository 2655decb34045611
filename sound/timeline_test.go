package sound

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/sessions/sessionstest"
	"coldfloor/sound/soundtest"
)

// line writes a timeline as "seconds name" lines.
func lines(p *plan.Plan, v engine.View, o Options) string {
	var b strings.Builder
	for c := range Timeline(p, v, o) {
		fmt.Fprintf(&b, "%g %s\n", c.At.Seconds(), c.Clip.Name)
	}
	return b.String()
}

// want compares a timeline with the one worked out by hand.
func want(t *testing.T, got, want string) {
	t.Helper()
	if want = strings.TrimLeft(want, "\n"); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

func TestTimelineOfASuperset(t *testing.T) {
	p := soundtest.Planned(t, soundtest.Superset)
	want(t, lines(p, Beginning(p), Options{Pips: 3}), `
2 get ready
3 get ready
4 get ready
5 work starts
7 change exercise
14 get ready
15 get ready
16 get ready
17 work starts
19 change side
20 get ready
21 get ready
22 work starts
24 rest starts
34 ten seconds left
41 get ready
42 get ready
43 get ready
44 work starts
46 change exercise
53 get ready
54 get ready
55 get ready
56 work starts
58 change side
59 get ready
60 get ready
61 work starts
63 done
`)
}

func TestTimelineWithoutPips(t *testing.T) {
	p := soundtest.Planned(t, "lead_in: 5s\nblocks: [{title: A, exercises: [{name: Hops, reps: 1}]}]\n")
	want(t, lines(p, Beginning(p), Options{}), "5 work starts\n7 done\n")
}

func TestWorkThatFollowsWorkSaysWhatChanges(t *testing.T) {
	p := soundtest.Planned(t, `
lead_in: 0s
blocks:
  - title: A
    rounds: 2
    rest: 0s
    change: 0s
    exercises:
      - {name: Lunge, reps_per_side: 1, switch: 0s}
      - {name: Hops, reps: 1}
  - title: B
    rounds: 2
    rest: 0s
    exercises: [{name: Plank, time: 9s}]
`)
	want(t, lines(p, Beginning(p), Options{Pips: 3}), `
0 work starts
2 change side
4 change exercise
6 change exercise
8 change side
10 change exercise
12 change exercise
21 work starts
30 done
`)
}

func TestTenSecondsAreAnnouncedInRestsOfThirteenOrMore(t *testing.T) {
	for rest, announced := range map[string]bool{"12s": false, "12.9s": false, "13s": true, "2m": true} {
		p := soundtest.Planned(t, "blocks: [{title: A, rounds: 2, rest: "+rest+", exercises: [{name: Hops, reps: 1}]}]\n")
		if got := strings.Contains(lines(p, Beginning(p), Options{}), TenLeft.Name); got != announced {
			t.Errorf("rest of %s: announced %v", rest, got)
		}
	}
}

func TestAPipNeverFallsOnTheStartOfItsStep(t *testing.T) {
	p := soundtest.Planned(t, "lead_in: 2.5s\nblocks: [{title: A, rounds: 2, rest: 3s, exercises: [{name: Hops, reps: 1}]}]\n")
	want(t, lines(p, Beginning(p), Options{Pips: 3}), `
0.5 get ready
1.5 get ready
2.5 work starts
4.5 rest starts
5.5 get ready
6.5 get ready
7.5 work starts
9.5 done
`)
}

func TestTempoClicks(t *testing.T) {
	p := soundtest.Planned(t, "lead_in: 0s\nblocks: [{title: A, exercises: [{name: Squat, reps: 2, tempo: 3-1-1}, {name: Hop, reps: 3, rep: 500ms}], change: 1s}]\n")
	want(t, lines(p, Beginning(p), Options{Clicks: true}), `
0 work starts
4 rising
5 lowering
9 rising
10 change exercise
11 work starts
11.5 rep
12 rep
12.5 done
`)
	want(t, lines(p, Beginning(p), Options{}), "0 work starts\n10 change exercise\n11 work starts\n12.5 done\n")
}

func TestAPhaseOfNoLengthHasNoClick(t *testing.T) {
	p := soundtest.Planned(t, "lead_in: 0s\nblocks: [{title: A, exercises: [{name: Jump, reps: 2, tempo: 0-0-1}]}]\n")
	want(t, lines(p, Beginning(p), Options{Clicks: true}), "0 work starts\n1 rising\n2 done\n")
}

// Calls stand at the moments and in the order of the plan's own draw: spoken if
// the words end before the next, as tones if not.
func TestCallsAreHeard(t *testing.T) {
	p := soundtest.Planned(t, "lead_in: 5s\nblocks: [{title: A, exercises: [{name: Footwork, time: 10s, calls: [left, right], call_every: 3s}]}]\n")
	word := NewClip("call: left", Call, make([]float32, Position(2900*ms)))
	o := Options{Seed: 7, Spoken: func(d string) *Clip {
		if d == "left" {
			return word
		}
		return NewClip("too long", Call, make([]float32, Position(3*time.Second)))
	}}
	b := &strings.Builder{}
	fmt.Fprintln(b, "5 work starts")
	for c := range p.Calls(1, 7, 10*time.Second) {
		name := "call: left"
		if c.Direction == 1 {
			name = "call 2"
		}
		fmt.Fprintf(b, "%g %s\n", 5+c.At.Seconds(), name)
	}
	fmt.Fprintln(b, "15 done")
	want(t, lines(p, Beginning(p), o), b.String())
	if got := lines(p, Beginning(p), o); strings.Count(got, "call") != 3 {
		t.Errorf("three calls fit into 10 s at 3, 6 and 9 s; got\n%s", got)
	}
}

func TestTimelineStopsWhereASetWaits(t *testing.T) {
	p := soundtest.Planned(t, soundtest.Superset)
	text := lines(p, Beginning(p), Options{Pips: 1, ByHand: true})
	want(t, text, "4 get ready\n5 work starts\n")
	if lines(p, Beginning(p), Options{ByHand: true, AllPaced: true}) != lines(p, Beginning(p), Options{}) {
		t.Error("sets wait though all are paced")
	}
}

// at returns the view of a run of p after some actions, each at a time in
// seconds.
func at(p *plan.Plan, o engine.Options, now float64, actions ...any) engine.View {
	e := engine.New(p, o)
	e.Do(engine.Start, 0)
	for i := 0; i < len(actions); i += 2 {
		e.Do(actions[i].(engine.Action), time.Duration(actions[i+1].(float64)*float64(time.Second)))
	}
	e.Advance(time.Duration(now * float64(time.Second)))
	return e.View()
}

func TestTimelineFromTheMiddleOfARest(t *testing.T) {
	p := soundtest.Planned(t, soundtest.Superset)
	got := lines(p, at(p, engine.Options{}, 30.5), Options{Pips: 1})
	want(t, strings.Join(strings.SplitAfter(got, "\n")[:4], ""), `
3.5 ten seconds left
12.5 get ready
13.5 work starts
15.5 change exercise
`)
}

func TestTimelineStandsWhileTheClockDoes(t *testing.T) {
	p := soundtest.Planned(t, soundtest.Superset)
	for _, v := range []engine.View{
		engine.New(p, engine.Options{}).View(),
		at(p, engine.Options{}, 9, engine.Pause, 8.0),
		at(p, engine.Options{ByHand: true}, 9),
		at(p, engine.Options{}, 100),
	} {
		if got := lines(p, v, Options{Pips: 3}); got != "" {
			t.Errorf("%s: got\n%s", v.Phase, got)
		}
	}
}

func TestCountInCountsDownToTheStart(t *testing.T) {
	p := soundtest.Planned(t, soundtest.Superset)
	head := func(v engine.View) string {
		return strings.Join(strings.SplitAfter(lines(p, v, Options{Pips: 3}), "\n")[:6], "")
	}
	// Paused 1 s into work of 2 s and resumed with 4 s of count-in.
	want(t, head(at(p, engine.Options{CountIn: 4 * time.Second}, 10, engine.Pause, 6.0, engine.Resume, 10.0)), `
1 get ready
2 get ready
3 get ready
4 work starts
5 change exercise
12 get ready
`)
	// Sent back to the start of the same work: its own cue starts it, once.
	want(t, head(at(p, engine.Options{CountIn: 2 * time.Second}, 8, engine.Back, 8.0, engine.Pause, 8.0, engine.Resume, 8.0)), `
0 get ready
1 get ready
2 work starts
4 change exercise
11 get ready
12 get ready
`)
}

func TestMoreTimeMovesThePips(t *testing.T) {
	p := soundtest.Planned(t, soundtest.Superset)
	want(t, lines(p, at(p, engine.Options{}, 4.5, engine.More, 4.5), Options{Pips: 1})[:24], "14.5 get ready\n15.5 work")
}

func TestWordsAreMergedInOrder(t *testing.T) {
	p := soundtest.Planned(t, "lead_in: 5s\nblocks: [{title: A, exercises: [{name: Hops, reps: 1}]}]\n")
	say := func(name string) *Clip { return NewClip(name, Word, nil) }
	o := Options{Pips: 1, Words: func(*plan.Plan, engine.View) []Placed {
		return []Placed{{20 * time.Second, say("last")}, {time.Second, say("first")}, {4 * time.Second, say("second")}}
	}}
	want(t, lines(p, Beginning(p), o), "1 first\n4 get ready\n4 second\n5 work starts\n7 done\n20 last\n")
}

// TestTimelineHolds draws random sessions and moments: the timeline is in
// order, begins no earlier than now, and from any moment of an untouched run it
// is what is left of the whole one.
func TestTimelineHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := plan.Of(sessionstest.Draw(t))
		o := Options{Pips: rapid.IntRange(0, MaxPips).Draw(t, "pips"), Clicks: true, AllPaced: true}
		all := slices.Collect(Timeline(p, Beginning(p), o))
		if !slices.IsSortedFunc(all, byTime) || all[0].At < 0 || all[len(all)-1] != (Placed{p.Total, Done}) {
			t.Fatalf("out of order, or not to the end: %v", all)
		}
		now := time.Duration(rapid.Int64Range(0, int64(p.Total)-1).Draw(t, "now"))
		e := engine.New(p, engine.Options{AllPaced: true})
		e.Do(engine.Start, 0)
		e.Advance(now)
		var left []Placed
		for _, c := range all {
			if c.At >= now {
				left = append(left, Placed{c.At - now, c.Clip})
			}
		}
		if got := slices.Collect(Timeline(p, e.View(), o)); !slices.Equal(got, left) {
			t.Fatalf("from %v got %v, want %v", now, got, left)
		}
	})
}

func TestPosition(t *testing.T) {
	for at, sample := range map[time.Duration]int{
		0: 0, time.Second: 44100, 10 * time.Millisecond: 441, 11337: 0, 11338: 1, // half a sample is 11337.9 ns
		6 * time.Hour: 952560000, -time.Second: -44100, -11338: -1,
	} {
		if got := Position(at); got != sample {
			t.Errorf("%v is sample %d, want %d", at, got, sample)
		}
	}
}
