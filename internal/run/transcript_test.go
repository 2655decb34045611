package run

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/adrg/xdg"
	"github.com/rogpeppe/go-internal/txtar"

	"coldfloor/internal/journal/journaltest"
	"coldfloor/internal/plan"
	"coldfloor/internal/text"
	"coldfloor/internal/text/texttest"
	"coldfloor/internal/transcripttest"
	"coldfloor/sessions"
)

// TestMain keeps what the tests remember out of the home folder.
func TestMain(m *testing.M) {
	dir, err := os.MkdirTemp("", "run")
	if err != nil {
		panic(err)
	}
	os.Setenv("XDG_STATE_HOME", dir)
	xdg.Reload()
	code := m.Run()
	os.RemoveAll(dir)
	os.Exit(code)
}

// TestTranscripts drives the flow as a screen or plain lines do. Each file under
// testdata holds a session and, for each start of the program in turn, what was
// done, a line each, and what the flow then needed or the run showed; all starts
// of a file share a clock, a journal and a home. Stage and act say what can be
// done. At the end stands what the journal then holds.
func TestTranscripts(t *testing.T) {
	transcripttest.Play(t, func(t *testing.T, ar *txtar.Archive) *txtar.Archive {
		now, _ := played(t, ar, nil)
		return now
	})
}

// played returns a transcript with what the flow needs in a language now, and
// what a player was shown of it.
func played(t *testing.T, ar *txtar.Archive, l *text.Language) (got *txtar.Archive, read []string) {
	t.Cleanup(xdg.Reload) // after the environment is as it was
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	xdg.Reload()
	t.Chdir(t.TempDir()) // what is saved elsewhere goes there
	folder := filepath.Join(t.TempDir(), "data")
	s := &stage{t: t, clock: newClock(), journal: filepath.Join(folder, "journal.jsonl"), language: l}
	got = &txtar.Archive{Comment: ar.Comment}
	for _, f := range ar.Files {
		switch {
		case f.Name == "session":
			s.plan = planOf(t, string(f.Data))
			got.Files = append(got.Files, f)
		case strings.HasPrefix(f.Name, "start"):
			got.Files = append(got.Files, f, txtar.File{Name: "shown" + f.Name[len("start"):], Data: s.start(string(f.Data))})
		}
	}
	if _, err := os.Stat(s.journal); err == nil {
		got.Files = append(got.Files, txtar.File{Name: "journal", Data: journaltest.Holds(t, s.journal)})
	}
	for i := range s.read {
		s.read[i] = strings.ReplaceAll(s.read[i], folder, "")
	}
	return got, s.read
}

// TestLanguage plays the same starts in a language whose every letter is marked:
// what a player is asked or told has no word that is neither the language's nor
// the session's.
func TestLanguage(t *testing.T) {
	transcripttest.Each(t, func(t *testing.T, ar *txtar.Archive) {
		known := yesterdayTold + " journal jsonl"
		for _, b := range sessions.Builtins() {
			known += string(b.Source)
		}
		for _, f := range ar.Files {
			if f.Name == "session" {
				known += string(f.Data)
			}
		}
		_, read := played(t, ar, texttest.Marked())
		for _, said := range read {
			if words := texttest.Unmarked(said, known); len(words) > 0 {
				t.Errorf("%q in %q", words, said)
			}
		}
	})
}

func planOf(t testing.TB, text string) *plan.Plan {
	t.Helper()
	s, err := sessions.Parse("test.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

// paced is a test's clock that says another speed of itself.
type paced struct {
	*clock
	speed float64
}

func (p paced) Speed() float64 { return p.speed }

// length returns a length of time.
func (s *stage) length(text string) time.Duration {
	d, err := time.ParseDuration(text)
	if err != nil {
		s.t.Fatal(err)
	}
	return d
}
