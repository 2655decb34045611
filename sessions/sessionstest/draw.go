// Package sessionstest draws random valid sessions for property tests.
package sessionstest

import (
	"fmt"
	"time"

	"coldfloor/internal/units"
	"coldfloor/sessions"

	"pgregory.net/rapid"
)

// Draw returns a small valid session: at most four blocks of four rounds of
// four exercises, with every kind of work, order of sides and rest the format
// has, and every default filled in as Parse does. It is within the bounds of
// Parse, and Parse could have returned it except for its Marks and its Source,
// which are empty.
func Draw(t *rapid.T) *sessions.Session {
	s := &sessions.Session{
		Version: sessions.Version,
		Name:    "random",
		Title:   text().Draw(t, "title"),
		For:     optional(t, "for"),
		Note:    optional(t, "note"),
		Level:   rapid.SampledFrom([]sessions.Level{"", sessions.Beginner, sessions.Intermediate, sessions.Advanced}).Draw(t, "level"),
		LeadIn:  gap(t, "lead_in"),
	}
	for i := range rapid.IntRange(1, 4).Draw(t, "blocks") {
		s.Blocks = append(s.Blocks, drawBlock(t, i+1))
	}
	return s
}

func drawBlock(t *rapid.T, number int) sessions.Block {
	b := sessions.Block{
		Title:  fmt.Sprintf("Block %d", number),
		Part:   rapid.SampledFrom([]sessions.Part{sessions.WarmUp, sessions.Main, sessions.CoolDown}).Draw(t, "part"),
		Note:   optional(t, "note"),
		Trains: rapid.SampledFrom([][]string{nil, {"vertical power"}, {"strength", "trunk"}}).Draw(t, "trains"),
		Rounds: rapid.IntRange(1, 4).Draw(t, "rounds"),
		Rest:   gap(t, "rest"),
		Change: gap(t, "change"),
	}
	b.RestAfter = b.Rest
	if rapid.Bool().Draw(t, "has rest_after") {
		b.RestAfter = gap(t, "rest_after")
	}
	n := rapid.IntRange(1, 4).Draw(t, "exercises")
	for i := range n {
		e := drawExercise(t, fmt.Sprintf("Exercise %d.%d", number, i+1))
		if i < n-1 && rapid.Bool().Draw(t, "has rest") {
			rest := gap(t, "rest")
			e.Rest = &rest
		}
		b.Exercises = append(b.Exercises, e)
	}
	return b
}

func drawExercise(t *rapid.T, name string) sessions.Exercise {
	e := sessions.Exercise{
		Name:     name,
		Rep:      some(t, "rep", 5),
		Contacts: rapid.IntRange(0, 2).Draw(t, "contacts"),
		How:      optional(t, "how"),
		Sides:    sessions.LeftFirst,
		Switch:   sessions.DefaultSwitch,
		Finish:   rapid.SampledFrom([]sessions.Finish{sessions.ByPace, sessions.ByHand}).Draw(t, "finish"),
		Load:     optional(t, "load"),
		Overhead: sessions.Overhead{Kind: sessions.OverheadNone},
	}
	if rapid.Bool().Draw(t, "has tempo") {
		e.Tempo = sessions.Tempo{Lowering: gap(t, "lowering"), Pause: gap(t, "pause"), Rising: some(t, "rising", 3), Top: gap(t, "top")}
		e.Rep = e.Tempo.Rep()
	}
	if rapid.Bool().Draw(t, "has cues") {
		e.Cues = []string{text().Draw(t, "cue"), "Quiet floor"}
	}
	drawWork(t, &e)
	drawRoom(t, &e)
	drawMeasure(t, &e)
	drawCalls(t, &e)
	e.Easier, e.Harder = drawVariant(t, "easier"), drawVariant(t, "harder")
	return e
}

// drawWork gives the exercise one kind of work, and an order of sides if
// it has sides.
func drawWork(t *rapid.T, e *sessions.Exercise) {
	switch rapid.IntRange(0, 3).Draw(t, "kind") {
	case 0:
		e.Reps = rapid.IntRange(1, 12).Draw(t, "reps")
	case 1:
		e.Time = some(t, "time", 90)
	case 2:
		e.RepsPerSide = rapid.IntRange(1, 12).Draw(t, "reps_per_side")
	case 3:
		e.TimePerSide = some(t, "time_per_side", 90)
	}
	if e.OneSided() {
		e.Sides = rapid.SampledFrom([]sessions.Sides{sessions.LeftFirst, sessions.RightFirst,
			sessions.SwapEachRound, sessions.AlternateReps}).Draw(t, "sides")
		e.Switch = gap(t, "switch")
	}
}

// drawVariant draws an easier or harder variant: none, a text alone, or one
// with a dose of its own.
func drawVariant(t *rapid.T, name string) sessions.Variant {
	v := sessions.Variant{Name: optional(t, name)}
	if v.Bare = v.Name != "" && rapid.Bool().Draw(t, name+" is a text"); v.Bare || v.Name == "" {
		return v
	}
	v.How = optional(t, name+" how")
	if rapid.Bool().Draw(t, name+" has contacts") {
		n := rapid.IntRange(0, 2).Draw(t, name+" contacts")
		v.Contacts = &n
	}
	switch rapid.IntRange(0, 2).Draw(t, name+" pace") {
	case 1:
		v.Rep = some(t, name+" rep", 5)
	case 2:
		v.Tempo = sessions.Tempo{Lowering: gap(t, name+" lowering"), Rising: some(t, name+" rising", 3)}
		v.Rep = v.Tempo.Rep()
	}
	if rapid.Bool().Draw(t, name+" has cues") {
		v.Cues = []string{text().Draw(t, name+" cue")}
	}
	return v
}

// drawMeasure lets a number come out of some exercises.
func drawMeasure(t *rapid.T, e *sessions.Exercise) {
	e.Measure = rapid.SampledFrom([]sessions.Measure{"", "", sessions.MeasureDistance, sessions.MeasureHeight,
		sessions.MeasureCount, sessions.MeasureTime}).Draw(t, "measure")
	if e.Measure == "" {
		return
	}
	e.Way = optional(t, "way")
	e.Tries = rapid.SampledFrom([]sessions.Tries{"", sessions.Practice}).Draw(t, "tries")
}

// drawCalls has directions called in some timed sets that are long enough.
func drawCalls(t *rapid.T, e *sessions.Exercise) {
	length := e.Time + e.TimePerSide
	if length < sessions.MinCallEvery+sessions.CallsEnd || !rapid.Bool().Draw(t, "calls") {
		return
	}
	e.Calls = []string{"left", "right", "front left", "rückwärts", "跳"}[:rapid.IntRange(2, 5).Draw(t, "directions")]
	most := min(5000, int64((length-sessions.CallsEnd)/time.Millisecond))
	a := rapid.Int64Range(1000, most).Draw(t, "least, ms")
	b := rapid.Int64Range(a, most).Draw(t, "most, ms")
	e.CallEvery = sessions.Interval{Least: time.Duration(a) * time.Millisecond, Most: time.Duration(b) * time.Millisecond}
}

// drawRoom gives the exercise the floor and the overhead space it needs.
func drawRoom(t *rapid.T, e *sessions.Exercise) {
	length := rapid.Custom(func(t *rapid.T) units.Length {
		return units.Length(rapid.Int64Range(1, 500).Draw(t, "cm")) * units.Centimetre
	})
	if rapid.Bool().Draw(t, "has floor") {
		e.Floor = sessions.Floor{Along: length.Draw(t, "along"), Across: length.Draw(t, "across")}
	}
	if rapid.Bool().Draw(t, "travels") {
		e.Travel = length.Draw(t, "travel")
	}
	e.Overhead.Kind = rapid.SampledFrom([]sessions.OverheadKind{sessions.OverheadNone, sessions.OverheadReach,
		sessions.OverheadJump, sessions.OverheadAbove}).Draw(t, "overhead")
	if e.Overhead.Kind == sessions.OverheadAbove {
		e.Overhead.Above = length.Draw(t, "above")
	}
}

// gap draws a duration that may be 0: of whole seconds, or now and then of
// milliseconds.
func gap(t *rapid.T, name string) time.Duration {
	if rapid.IntRange(0, 3).Draw(t, name+" is none") == 0 {
		return 0
	}
	return some(t, name, 60)
}

// some draws a duration above 0 of at most so many seconds.
func some(t *rapid.T, name string, seconds int64) time.Duration {
	if rapid.IntRange(0, 4).Draw(t, name+" in ms") == 0 {
		return time.Duration(rapid.Int64Range(1, seconds*1000).Draw(t, name)) * time.Millisecond
	}
	return time.Duration(rapid.Int64Range(1, seconds).Draw(t, name)) * time.Second
}

// text draws a short text of any script.
func text() *rapid.Generator[string] {
	return rapid.SampledFrom([]string{"Pogo hops", "Ausfallschritt, rückwärts", "跳箱", "قفزة جانبية",
		"Saut écart\u0301", "Knee 🦵 drive", "x", "A very long name for a movement that has to be wrapped or cut somewhere on a small screen"})
}

// optional draws a text or none.
func optional(t *rapid.T, name string) string {
	if rapid.Bool().Draw(t, "has "+name) {
		return text().Draw(t, name)
	}
	return ""
}
