package strip

import (
	"math"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/sessions"

	"pgregory.net/rapid"
)

// evening is a singles player's session: a warm-up of timed work, then a
// superset with one-sided work.
func evening() *plan.Plan {
	return plan.Of(&sessions.Session{
		LeadIn: 10 * time.Second,
		Blocks: []sessions.Block{
			{Title: "Raise", Rounds: 2, Rest: 20 * time.Second, RestAfter: time.Minute, Change: 10 * time.Second, Exercises: []sessions.Exercise{
				{Name: "Shadow footwork", Time: 40 * time.Second},
				{Name: "Ankle hops", Time: 20 * time.Second},
			}},
			{Title: "Power", Rounds: 3, Rest: 90 * time.Second, Change: 10 * time.Second, Exercises: []sessions.Exercise{
				{Name: "Split squat jump", RepsPerSide: 5, Rep: 2 * time.Second, Switch: 3 * time.Second},
				{Name: "Push-up", Reps: 6, Rep: 2 * time.Second},
			}},
		},
	})
}

// TestText holds strips that were read by eye: two rounds of a warm-up, three
// of a superset, at widths that show ever less of it.
func TestText(t *testing.T) {
	for _, c := range []struct {
		width  int
		detail Detail
		text   string
		scale  string
	}{
		{80, Steps, "░██████▄▄███───██████▄███─────────█▀█▄▄█──────────────█▀█▄██─────────────██▀█▄██",
			" 1                                2                                             "},
		{40, Sets, "░███▄█─███▄█─────██▄█──────█▄█───────█▄█", " 1               2                      "},
		{20, Bouts, "░██─██──██───██───██", " 1      2           "},
		{5, Blocks, "░█─██", " 1 2 "},
		{1, Blocks, "█", "1"},
	} {
		s := Of(evening(), c.width)
		if got := s.Text(nil); got != c.text || s.Detail != c.detail {
			t.Errorf("%d cells: detail %d, %s, want detail %d, %s", c.width, s.Detail, got, c.detail, c.text)
		}
		if got := s.Scale(); got != c.scale {
			t.Errorf("%d cells: scale %q, want %q", c.width, got, c.scale)
		}
	}
	const ascii = ".######++###---######+###---------#/#++#--------------#/#+##-------------##/#+##"
	if got := Of(evening(), 80).Text(safetext.Repertoire{}); got != ascii {
		t.Errorf("in ASCII %s, want %s", got, ascii)
	}
}

// drawn draws a plan of random blocks.
func drawn(t *rapid.T) *plan.Plan {
	seconds := func(lo, hi int, label string) time.Duration {
		return time.Duration(rapid.IntRange(lo, hi).Draw(t, label)) * time.Second
	}
	s := &sessions.Session{LeadIn: seconds(0, 20, "lead-in")}
	for range rapid.IntRange(1, 5).Draw(t, "blocks") {
		b := sessions.Block{Rounds: rapid.IntRange(1, 12).Draw(t, "rounds"), Rest: seconds(0, 180, "rest"),
			RestAfter: seconds(0, 180, "rest after"), Change: seconds(0, 15, "change")}
		for range rapid.IntRange(1, 4).Draw(t, "exercises") {
			e := sessions.Exercise{Time: seconds(1, 60, "time")}
			if rapid.Bool().Draw(t, "one-sided") {
				e = sessions.Exercise{TimePerSide: e.Time, Switch: seconds(0, 5, "switch")}
			}
			b.Exercises = append(b.Exercises, e)
		}
		s.Blocks = append(s.Blocks, b)
	}
	return plan.Of(s)
}

func TestPartsFillTheWidthInTheirPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, width := drawn(t), rapid.IntRange(1, 300).Draw(t, "width")
		s := Of(p, width)
		at := 0
		for _, part := range s.Parts {
			if part.From != at || part.To <= part.From {
				t.Fatalf("part %+v does not start at cell %d", part, at)
			}
			at = part.To
			if off := math.Abs(float64(part.To) - exact(part.End, p.Total, width)); off > 1.5 {
				t.Fatalf("%+v ends %.2f cells off its time", part, off)
			}
		}
		if at != width {
			t.Fatalf("the parts take %d of %d cells", at, width)
		}
		for _, shown := range []safetext.Repertoire{nil, {}} {
			if n := utf8.RuneCountInString(s.Text(shown)); n != width {
				t.Fatalf("text of %d cells, want %d", n, width)
			}
		}
		if strings.ContainsRune(s.Text(nil)+s.Text(safetext.Repertoire{}), 0) {
			t.Fatal("a kind has no mark")
		}
		if len(s.Scale()) != width || len(s.Starts) != len(p.Blocks) {
			t.Fatalf("scale %q, starts %v", s.Scale(), s.Starts)
		}
	})
}

func TestPlaceNeverGoesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, width := drawn(t), rapid.IntRange(1, 300).Draw(t, "width")
		s := Of(p, width)
		last := 0
		for i := range 500 {
			now := p.Total * time.Duration(i) / 499
			at := s.Place(now)
			if at < last || at >= width {
				t.Fatalf("at %v the place is %d of %d, before it was %d", now, at, width, last)
			}
			if off := math.Abs(float64(at) - exact(now, p.Total, width)); off > 3 {
				t.Fatalf("at %v the place is %d, %.1f cells off", now, at, off)
			}
			last = at
		}
		if s.Place(-time.Hour) != 0 || s.Place(p.Total+time.Hour) != width-1 {
			t.Fatal("the place leaves the strip")
		}
	})
}

func TestPlaceStandsInItsPart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Of(drawn(t), rapid.IntRange(1, 300).Draw(t, "width"))
		for _, part := range s.Parts {
			for _, now := range []time.Duration{part.Start, part.End - 1} {
				if at := s.Place(now); at < part.From || at >= part.To {
					t.Fatalf("%v stands in cell %d, outside %+v", now, at, part)
				}
			}
		}
	})
}

func TestStretchesCoverThePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t)
		n := math.MaxInt
		for d := Steps; d <= Blocks; d++ {
			var at time.Duration
			next := 0
			all := Stretches(p, d)
			for _, st := range all {
				if st.Start != at || st.First != next || p.Steps[st.First].Block != p.Steps[st.Last].Block {
					t.Fatalf("detail %d: stretch %+v", d, st)
				}
				at, next = st.End, st.Last+1
			}
			if at != p.Total || next != len(p.Steps) || len(all) > n {
				t.Fatalf("detail %d ends at %v of %v with %d stretches", d, at, p.Total, len(all))
			}
			n = len(all)
		}
	})
}

func TestNoWidth(t *testing.T) {
	if s := Of(evening(), 0); len(s.Parts) != 0 || s.Text(safetext.Repertoire{}) != "" || s.Scale() != "" || s.Place(time.Minute) != 0 {
		t.Errorf("Of(p, 0) = %+v", s)
	}
}
