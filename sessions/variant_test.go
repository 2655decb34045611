package sessions

import (
	"reflect"
	"testing"
	"time"
)

// "what is left out stays as in the exercise": contacts of a jump are those of
// the exercise unless the variant has its own.
func TestVariants(t *testing.T) {
	e := &valid(t, "variants").Blocks[0].Exercises[0]
	one := 1
	want := Variant{Name: "Squat jump", Contacts: &one, Rep: 3 * time.Second, Cues: []string{"Land soft"}, How: "Land and hold."}
	if !reflect.DeepEqual(e.Easier, want) {
		t.Errorf("easier is %+v, want %+v", e.Easier, want)
	}
	done := e.In(true)
	if done.Name != "Squat jump" || done.Contacts != 1 || done.Rep != 3*time.Second || done.Cues[0] != "Land soft" || done.How != "Land and hold." || done.Reps != 5 {
		t.Errorf("done as %+v", done)
	}
	if e.In(false) != e {
		t.Error("the exercise as written is another")
	}
	if h := e.Harder; h.Name != "Tuck jump, twice" || h.Contacts != nil || h.Rep != 2*time.Second || h.Bare {
		t.Errorf("harder is %+v", h)
	}
	bare := Exercise{Name: "Hop", Contacts: 2, Rep: time.Second, How: "Hop.", Easier: Variant{Name: "Step", Bare: true}}
	if done := bare.In(true); done.Name != "Step" || done.Contacts != 2 || done.Rep != time.Second || done.How != "" {
		t.Errorf("a text alone is done as %+v", done)
	}
}

func TestMeasures(t *testing.T) {
	list := valid(t, "tests").Blocks[0].Exercises
	if e := list[0]; e.Measure != MeasureDistance || e.Way != "tape, heel" || e.Tries != Practice || e.Measure.Unit() != "cm" {
		t.Errorf("read as %+v", e)
	}
	if e := list[1]; e.Tries != "" {
		t.Errorf("read as %+v", e)
	}
	if e := list[4]; e.Measure != MeasureTime || e.Measure.Unit() != "s" {
		t.Errorf("read as %+v", e)
	}
}

func TestHeadings(t *testing.T) {
	for text, want := range map[string]Heading{
		"left": Left, "Front left": FrontLeft, "right front": FrontRight, "back-right": BackRight, "hinten links": BackLeft,
		"Vorn": Front, "backwards": Back, "rechts": Right, "net": "", "left right": "", "left net": "", "": "",
	} {
		if got := HeadingOf(text); got != want {
			t.Errorf("%q points %q, want %q", text, got, want)
		}
	}
}

func TestCallsAreRead(t *testing.T) {
	list := valid(t, "calls").Blocks[0].Exercises
	for i, want := range []Interval{{3 * time.Second, 3 * time.Second}, {2 * time.Second, 4 * time.Second}, {DefaultCallEvery, DefaultCallEvery},
		{2 * time.Second, 4 * time.Second}, {2500 * time.Millisecond, 2500 * time.Millisecond}} {
		if got := list[i].CallEvery; got != want || len(list[i].Calls) < 2 {
			t.Errorf("%s: every %v of %q, want %v", list[i].Name, got, list[i].Calls, want)
		}
	}
	if got := list[1].CallEvery.String(); got != "2s-4s" {
		t.Errorf("written as %q", got)
	}
}

func TestResults(t *testing.T) {
	for _, c := range []struct {
		m    Measure
		text string
		want float64 // below zero: refused
	}{
		{MeasureDistance, "231", 231}, {MeasureDistance, " 231,5 ", 231.5}, {MeasureDistance, "2.31m", 231}, {MeasureDistance, "231 cm", 231},
		{MeasureDistance, "2.31", -1}, {MeasureDistance, "2310", -1}, {MeasureDistance, "", -1}, {MeasureDistance, "1,2,3", -1}, {MeasureDistance, "NaN", -1},
		{MeasureHeight, "48.5", 48.5}, {MeasureHeight, "48,5", 48.5}, {MeasureHeight, "501", -1},
		{MeasureCount, "17", 17}, {MeasureCount, "0", 0}, {MeasureCount, "17.5", -1}, {MeasureCount, "-1", -1},
		{MeasureTime, "4,52", 4.52}, {MeasureTime, "4.52 s", 4.52}, {MeasureTime, "0", -1}, {MeasureTime, "Inf", -1},
	} {
		got, err := c.m.ParseResult(c.text)
		if (err != nil) != (c.want < 0) || err == nil && got != c.want {
			t.Errorf("%s %q is read as %v, %v; want %v", c.m, c.text, got, err, c.want)
		}
	}
}
