package logbook

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/journal/journaltest"
)

var update = flag.Bool("update", false, "rewrite what is kept under testdata; read it before you commit")

// evening returns the one run of the journal in testdata, in which something of
// everything was done, said and put right, for a reader in its own zone.
func evening(t *testing.T) []*journal.Run {
	t.Helper()
	before := time.Local
	time.Local = time.FixedZone("", 2*60*60)
	t.Cleanup(func() { time.Local = before })
	runs, problems, err := journaltest.Load("testdata/evening.jsonl")
	if err != nil || len(problems) > 0 || len(runs) != 1 {
		t.Fatal(runs, problems, err)
	}
	return runs
}

func TestShow(t *testing.T) {
	runs := evening(t)
	got := List(runs, idle) + "\n" + Show(runs[0], idle)
	const file = "testdata/evening.txt"
	want, _ := os.ReadFile(file)
	if got == string(want) {
		return
	}
	if !*update {
		t.Errorf("it differs; got\n%s", got)
	} else if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
		t.Fatal(err)
	}
}

// A list has the figures of a run alone, the run itself has all of it.
func TestInFull(t *testing.T) {
	r := evening(t)[0]
	for _, c := range []struct {
		document Document
		sets     int
	}{{Of(r, idle), 0}, {InFull(r, idle), len(r.Sets)}} {
		b, err := json.Marshal(c.document)
		if err != nil {
			t.Fatal(err)
		}
		var back struct {
			Run, State, Player string
			RPE, Load          float64
			Pain               *bool
			Sets               []any
			Contacts           *int
		}
		if err := json.Unmarshal(b, &back); err != nil {
			t.Fatal(err)
		}
		// The load is the effort times the corrected 4 minutes (Foster et al.,
		// J Strength Cond Res 2001;15:109–115).
		if back.Run != r.ID || back.State != "complete" || back.RPE != 7 || back.Load != 28 || back.Pain == nil || *back.Pain || len(back.Sets) != c.sets {
			t.Errorf("%s", b)
		}
	}
}

func TestParseResult(t *testing.T) {
	r := evening(t)[0]
	for text, want := range map[string]float64{"180": 180, "1.8m": 180, "1,8 m": 180} {
		if m, err := ParseResult(r, "1", text); err != nil || m.Value == nil || *m.Value != want {
			t.Errorf("%s: %+v, %v", text, m, err)
		}
	}
	if m, err := ParseResult(r, "1", "None"); err != nil || m.Value != nil || r.Measures[0].Value == nil {
		t.Errorf("%+v, %v", m, err)
	}
	for _, c := range [][2]string{{"0", "1"}, {"3", "1"}, {"x", "1"}, {"1", "far"}} {
		if _, err := ParseResult(r, c[0], c[1]); err == nil || !strings.Contains(fault.Text(err), "\nhint: ") {
			t.Errorf("%v: %v", c, err)
		}
	}
}

func TestTellAhead(t *testing.T) {
	runs := evening(t)
	if err := TellAhead(runs, runs[0].Start.Add(time.Hour)); err != nil {
		t.Error(err)
	}
	for n, all := range map[string][]*journal.Run{"is dated": runs, "2 sessions": {runs[0], runs[0]}} {
		if err := TellAhead(all, runs[0].Start.Add(-time.Hour)); err == nil || !strings.Contains(err.Error(), n) {
			t.Errorf("%s: %v", n, err)
		}
	}
}

// A copy holds the lines as they stand, and is named after its player.
func TestCopy(t *testing.T) {
	lines, err := os.ReadFile("testdata/evening.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	c, err := Copy(bytes.NewReader(lines), time.Time{})
	if err != nil || c.Runs != 1 || !bytes.Equal(c.Text, lines) || !strings.HasPrefix(c.Name, "ida") {
		t.Errorf("%d runs, %q, %v", c.Runs, c.Name, err)
	}
	if c, err := Copy(bytes.NewReader(lines), time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC)); err != nil || c.Runs != 0 {
		t.Errorf("%d runs later than all, %v", c.Runs, err)
	}
}
