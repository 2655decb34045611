package voice

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/sessions"
	"coldfloor/sessions/sessionstest"
	"coldfloor/sound"
	"coldfloor/sound/soundtest"
)

const script = `coldfloor: 1
title: Two and one
lead_in: 10s
blocks:
  - title: Up
    rounds: 2
    rest: 75s
    rest_after: 2m
    exercises:
      - {name: Pogo hops, reps: 10, rep: 700ms, easier: Heel raises}
      - {name: Split squat, reps_per_side: 5, tempo: 3-1-1, switch: 4s}
  - title: Hold
    exercises:
      - {name: Plank, time: 90s}
`

func testPlan(t *testing.T) *plan.Plan {
	t.Helper()
	s, err := sessions.Parse("two.yaml", []byte(script))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

func said(p *plan.Plan, v engine.View, o Options) string {
	var b strings.Builder
	for _, s := range Script(p, v, o) {
		fmt.Fprintf(&b, "%7.2f–%.2f %s\n", s.From.Seconds(), s.Until.Seconds(), s.Text)
	}
	return b.String()
}

func language(t *testing.T, code string) Language {
	t.Helper()
	l, err := Find(code)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func TestScript(t *testing.T) {
	p := testPlan(t)
	got := said(p, sound.Beginning(p), Options{Language: language(t, "en"), Pips: 3, Count: 4})
	// Times worked out by hand: a cue's start, its length, and the gap.
	want := `   0.15–5.90 Next: Pogo hops, 10.
   6.00–6.90 4
   7.09–7.90 3
   8.09–8.90 2
   9.09–9.90 1
  17.54–26.90 Next: Split squat, 5, left side.
  37.06–41.90 three
  42.06–46.90 two
  47.06–51.90 last
  52.48–55.90 Right side.
  66.06–70.90 three
  71.06–75.90 two
  76.06–80.90 last
  81.75–145.90 Rest, 75. Last round.
 146.40–155.90 Next: Pogo hops, 10.
 163.54–172.90 Next: Split squat, 5, left side.
 183.06–187.90 three
 188.06–192.90 two
 193.06–197.90 last
 198.48–201.90 Right side.
 212.06–216.90 three
 217.06–221.90 two
 222.06–226.90 last
 227.75–336.90 Rest, 2 minutes.
 337.40–346.90 Next: Plank, 1 minute 30 seconds.
 438.33–496.90 Done.
`
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestScriptInAnotherLanguage(t *testing.T) {
	p := testPlan(t)
	got := said(p, sound.Beginning(p), Options{Language: language(t, "DE")})
	for _, want := range []string{"Es folgt: Pogo-Sprünge, 10.", "Rechte Seite.", "Pause, 75. Letzte Runde.", "Pause, 2 Minuten.", "1 Minute 30 Sekunden", "Fertig."} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not said in\n%s", want, got)
		}
	}
}

func TestScriptNamesTheEasierVariant(t *testing.T) {
	p := testPlan(t)
	v := sound.Beginning(p)
	v.InEasier = []engine.Exercise{{Block: 1, Exercise: 1}}
	got := said(p, v, Options{Language: language(t, "en")})
	if strings.Contains(got, "Pogo") || strings.Count(got, "Heel raises") != 2 {
		t.Errorf("got\n%s", got)
	}
}

func TestScriptStopsWhereTheFutureIsUnknown(t *testing.T) {
	p := testPlan(t)
	got := said(p, sound.Beginning(p), Options{Language: language(t, "en"), Run: engine.Options{ByHand: true}})
	if strings.Contains(got, "Split") {
		t.Errorf("spoke beyond a set that waits for a key:\n%s", got)
	}
}

// The last reps are counted in sets with a known end, of reps that leave time
// for a word; the first rep has the start cue.
func TestLastRepsAreCounted(t *testing.T) {
	for _, c := range []struct {
		exercise, code string
		o              engine.Options
		want           []string
	}{
		{"reps: 5, rep: 1.2s", "en", engine.Options{}, []string{"three", "two", "last"}},
		{"reps: 5, rep: 1.2s", "de", engine.Options{}, []string{"drei", "zwei", "letzte"}},
		{"reps: 5, rep: 1.19s", "en", engine.Options{}, nil},
		{"reps: 3, rep: 2s", "en", engine.Options{}, []string{"two", "last"}},
		{"reps: 2, rep: 2s", "en", engine.Options{}, []string{"last"}},
		{"reps: 1, rep: 2s", "en", engine.Options{}, nil},
		{"reps: 5, rep: 2s, finish: hand", "en", engine.Options{}, nil},
		{"reps: 5, rep: 2s", "en", engine.Options{ByHand: true}, nil},
		{"time: 20s, rep: 2s", "en", engine.Options{}, nil},
		{"reps_per_side: 2, rep: 2s, sides: alternate-reps", "en", engine.Options{}, []string{"three", "two", "last"}},
	} {
		p := soundtest.Planned(t, "lead_in: 0s\nblocks: [{title: B, exercises: [{name: Squat, "+c.exercise+"}]}]\n")
		var got []string
		for _, s := range Script(p, sound.Beginning(p), Options{Language: language(t, c.code), Run: c.o}) {
			if strings.ToLower(s.Text) == s.Text {
				got = append(got, s.Text)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: counted %q, want %q", c.exercise, got, c.want)
		}
	}
}

func TestDirectionsAreSaidInTheLanguage(t *testing.T) {
	de, en := language(t, "de"), language(t, "en")
	for direction, want := range map[string]string{"front left": "vorn links", "Back": "hinten", "Netz": "Netz"} {
		if got := de.Direction(direction); got != want {
			t.Errorf("%q is said %q, want %q", direction, got, want)
		}
		if got := en.Direction(direction); got != direction {
			t.Errorf("%q is said %q", direction, got)
		}
	}
}

func TestFind(t *testing.T) {
	if _, err := Find("xx"); err == nil || !strings.Contains(err.Error(), "en and de") {
		t.Errorf("got %v", err)
	}
}

// TestWordsKeepClearOfCues draws random moments of random runs: no cue that
// begins something falls into the time that words may take.
func TestWordsKeepClearOfCues(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := plan.Of(sessionstest.Draw(t))
		e := engine.New(p, engine.Options{})
		e.Do(engine.Start, 0)
		e.Advance(time.Duration(rapid.Int64Range(0, int64(p.Total)).Draw(t, "at")))
		v := e.View()
		l, _ := Find("en")
		count := rapid.IntRange(0, 5).Draw(t, "count")
		spoken := Script(p, v, Options{Language: l, Pips: 3, Count: count})
		for i := 1; i < len(spoken); i++ {
			if spoken[i].From < spoken[i-1].Until && spoken[i-1].Until-spoken[i-1].From > 0 {
				t.Fatalf("%+v begins within %+v", spoken[i], spoken[i-1])
			}
		}
		for c := range sound.Timeline(p, v, sound.Options{Pips: 3}) {
			if c.Clip == sound.GetReady {
				continue
			}
			for _, s := range spoken {
				if s.From <= c.At && c.At < s.Until {
					t.Fatalf("%q may be said from %v until %v, %s sounds at %v", s.Text, s.From, s.Until, c.Clip.Name, c.At)
				}
			}
		}
	})
}

// Notes are said before what they are about, if there is time for them.
func TestNotesAreSaid(t *testing.T) {
	p := soundtest.Planned(t, `note: Shoes on.
lead_in: 20s
blocks:
  - {title: A, note: Dry floor., rest_after: 60s, exercises: [{name: Hop, time: 20s}]}
  - {title: B, note: Hold the sofa., exercises: [{name: Lower, time: 20s}]}
`)
	want := map[string]string{
		"Shoes on. Dry floor. Next: Hop, 20 seconds.": "Next: Hop, 20 seconds.",
		"Rest, 1 minute. Hold the sofa.":              "Rest, 1 minute.",
	}
	for _, s := range Script(p, sound.Beginning(p), Options{Language: language(t, "en")}) {
		if short, ok := want[s.Text]; ok && s.Short == short {
			delete(want, s.Text)
		}
	}
	if len(want) > 0 {
		t.Errorf("not said: %v", want)
	}
}
