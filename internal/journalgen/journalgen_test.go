package journalgen

import (
	"bytes"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/journal/journaltest"
)

// What is made is a journal that its own reader takes without complaint, and
// the same bytes each time.
func TestWrite(t *testing.T) {
	o := Options{Player: "Ana", Sessions: 7, First: time.Date(2026, 1, 5, 18, 0, 0, 0, time.UTC), Seed: 3}
	var a, b bytes.Buffer
	truth, err := Write(&a, o)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Write(&b, o); err != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Errorf("the same options gave other bytes, error %v", err)
	}
	if n := bytes.Count(a.Bytes(), []byte("\n")); n != truth.Lines {
		t.Errorf("%d lines, said were %d", n, truth.Lines)
	}
	runs, problems, err := journaltest.Fold(&a)
	if err != nil || len(problems) > 0 || len(runs) != 7 {
		t.Fatalf("%d runs, %v, %v", len(runs), problems, err)
	}
	for _, r := range runs {
		if len(r.Sets) != 13 || len(r.Rests) != 12 || r.State != journal.Complete {
			t.Errorf("%d sets, %d rests, %s", len(r.Sets), len(r.Rests), r.State)
		}
	}
}
