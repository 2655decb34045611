package preview

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/pace"
)

// squats is a run with so many sets of the split squat that the player ended,
// each rep of that many seconds.
func squats(id string, sets int, rep float64) *journal.Run {
	r := &journal.Run{ID: id, Start: time.Unix(0, 0), State: journal.Complete}
	for i := range sets {
		r.Sets = append(r.Sets, journal.Set{Place: journal.Place{Block: 1, Round: i + 1, Exercise: 2}, Name: "Split squat",
			Outcome: "done", End: "finish", PlannedS: 50, TakenS: 10 * rep, Reps: 10, Planned: 10})
	}
	return r
}

// Four seconds a rep in place of five: the two sets of 2 × 5 reps are 20 s
// shorter than the 5:27 prescribed, less what the clock does not allow.
func TestOwnLength(t *testing.T) {
	p := testPlan(t)
	own := pace.Of([]*journal.Run{squats("A", 4, 4), squats("B", 4, 4), squats("C", 4, 4)}).Length(p)
	var b bytes.Buffer
	if err := Text(&b, p, &own, nil); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"5:27 long", "your length: 5:07, four times out of five between 5:07 and 5:07", "12 sets that", "3 sessions"} {
		if !strings.Contains(strings.ReplaceAll(b.String(), "\n", " "), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
	d := WithPace(p, own)
	src, err := json.Marshal(d)
	if err != nil {
		t.Fatal(err)
	}
	if d.YourPace == nil || d.YourPace.YoursS != 307 || !d.YourPace.Enough || !bytes.Contains(src, []byte(`"your_pace":{"enough":true`)) {
		t.Errorf("got %+v\n%s", d.YourPace, src)
	}
}

func TestTooLittleForOwnLength(t *testing.T) {
	p := testPlan(t)
	own := pace.Of([]*journal.Run{squats("A", 2, 4)}).Length(p)
	text := strings.ReplaceAll(ownLength(&own), "\n", " ")
	if !strings.Contains(text, "your length: too little to tell, with 2 sets") || !strings.Contains(text, fmt.Sprint(pace.MinSets)) {
		t.Errorf("got %q", text)
	}
	if d := WithPace(p, own); d.YourPace == nil || d.YourPace.Enough {
		t.Errorf("got %+v", d.YourPace)
	}
}

// The lines keep to the width of the strip, whatever the exercises are called.
func TestOwnLengthIsNoWider(t *testing.T) {
	p := testPlan(t)
	own := pace.Of(nil).Length(p)
	own.Lacking[0].Name = strings.Repeat("名\u202e\x1b[2J ", 60)
	for _, l := range strings.Split(ownLength(&own), "\n") {
		if n := len([]rune(l)); n > stripWidth || strings.ContainsAny(l, "\x1b\u202e") {
			t.Errorf("%d characters: %q", n, l)
		}
	}
}
