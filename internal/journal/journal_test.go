package journal

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// start is when the run in testdata began.
var start = time.Date(2026, 7, 14, 18, 30, 0, 0, time.FixedZone("", 2*60*60))

// everything returns the lines of a real run, in which everything happens that
// a recorder writes of, under the name id.
func everything(t testing.TB, id string) []Line {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "everything.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	var lines []Line
	for e, err := range Read(strings.NewReader(string(text))) {
		if err != nil {
			t.Fatal(err)
		}
		e.Run = id
		lines = append(lines, e.Line)
	}
	return lines
}

func openTemp(t testing.TB) *Journal {
	t.Helper()
	j, err := Open(filepath.Join(t.TempDir(), "data", "journal.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func contents(t testing.TB, j *Journal) string {
	t.Helper()
	b, err := os.ReadFile(j.Path())
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// load reads a journal that must have nothing wrong with it.
func load(t testing.TB, j *Journal) []*Run {
	t.Helper()
	runs, problems, err := loadFile(j.Path())
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	return runs
}

func only(t testing.TB, j *Journal) *Run {
	t.Helper()
	runs := load(t, j)
	if len(runs) != 1 {
		t.Fatalf("%d runs, want 1", len(runs))
	}
	return runs[0]
}

func ptr[T any](v T) *T { return &v }
