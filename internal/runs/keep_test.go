package runs

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/journalgen"
)

// brief is what the tests make of a run.
type brief struct {
	Run  *journal.Run
	Sets int
}

// briefs codes them.
type briefs struct{}

func (briefs) Again() {}

func (briefs) Code(c *journal.RunCoder, b *brief) {
	if !c.Reading {
		b.Run = b.Run.Slim()
	}
	c.Run(&b.Run)
	c.Int(&b.Sets)
}

// briefly makes briefs of a name.
func briefly(name string) Kind[brief] {
	return Kind[brief]{Name: name, Whole: 2, Of: func(r *journal.Run) brief { return brief{r, len(r.Sets)} }, Coder: func() Coder[brief] { return briefs{} }}
}

// club returns a folder of a few players' sealed journals.
func club(t testing.TB, players, sessions int) string {
	t.Helper()
	dir := t.TempDir()
	if _, err := journalgen.Folder(dir, players, sessions, monday); err != nil {
		t.Fatal(err)
	}
	return dir
}

// told returns what a survey of a folder tells, as text.
func told(t testing.TB, dir string, k Kind[brief], o Options) []string {
	t.Helper()
	s, err := Make([]string{dir}, o, k)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	var all []string
	for _, f := range s.Files {
		all = append(all, fmt.Sprint(f))
	}
	var places []Place
	err = s.Each(func(n *Note[brief]) error {
		b := n.Of
		all = append(all, fmt.Sprint(n.Player, n.Name, b.Run.ID, b.Run.Start, b.Run.Contacts(), b.Run.RoundsDone(), b.Sets))
		places = append(places, n.Place)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	full, err := s.Full(places)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range full {
		all = append(all, fmt.Sprint(r.ID, r.Sets, r.Rests))
	}
	return all
}

// files lists a folder, with what begins with a dot.
func files(t testing.TB, dir string) (names []string) {
	t.Helper()
	all, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range all {
		names = append(names, e.Name())
	}
	return names
}

// forgetIn removes what is kept in a folder.
func forgetIn(t testing.TB, dir string) {
	t.Helper()
	for _, name := range files(t, dir) {
		if filepath.Ext(name) == ".review" {
			if err := os.Remove(filepath.Join(dir, name)); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// What is kept is the user's alone, beside each journal that is long enough.
func TestKeptBeside(t *testing.T) {
	dir := club(t, 1, 3)
	short, err := os.ReadFile(filepath.Join(dir, "player-001.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "short.jsonl"), short[:keepFrom/2], 0o644); err != nil {
		t.Fatal(err)
	}
	told(t, dir, briefly("a"), Options{})
	if got, want := files(t, dir), []string{".player-001.jsonl.review", "player-001.jsonl", "short.jsonl"}; !slices.Equal(got, want) {
		t.Fatalf("there are %q, want %q", got, want)
	}
	info, err := os.Stat(keptPath(filepath.Join(dir, "player-001.jsonl")))
	if err != nil || info.Mode().Perm()&0o077 != 0 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
}

// Where nothing can be kept, nothing is, and nobody is told.
func TestNothingCanBeKept(t *testing.T) {
	for name, prevent := range map[string]func(dir string) error{
		"a folder in its place": func(dir string) error { return os.Mkdir(filepath.Join(dir, ".player-001.jsonl.review"), 0o700) },
		"a folder not to be written": func(dir string) error {
			if os.Geteuid() == 0 {
				return os.MkdirAll(filepath.Join(dir, ".player-001.jsonl.review", "x"), 0o700) // root may write anywhere
			}
			t.Cleanup(func() { _ = os.Chmod(dir, 0o700) })
			return os.Chmod(dir, 0o500)
		},
	} {
		dir := club(t, 1, 5)
		want := told(t, club(t, 1, 5), briefly("a"), Options{})
		if err := prevent(dir); err != nil {
			t.Fatal(err)
		}
		before := files(t, dir)
		for range 2 {
			if got := told(t, dir, briefly("a"), Options{}); !slices.Equal(got[1:], want[1:]) {
				t.Errorf("%s: %q, want %q", name, got, want)
			}
		}
		if after := files(t, dir); !slices.Equal(before, after) {
			t.Errorf("%s: there are %q, and were %q", name, after, before)
		}
	}
}

// What was kept of something else is made anew.
func TestKeptOfAnotherKind(t *testing.T) {
	dir := club(t, 2, 5)
	told(t, dir, briefly("a"), Options{})
	other := briefly("b")
	other.Of = func(r *journal.Run) brief { return brief{r, 100 + len(r.Sets)} }
	got := told(t, dir, other, Options{})
	forgetIn(t, dir)
	if want := told(t, dir, other, Options{}); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// ofA is what briefly("a") keeps.
var ofA = maker{name: "a", whole: 2}

// opened opens a journal.
func opened(t testing.TB, path string) *reading {
	t.Helper()
	j, err := openReading(path, &counted{stopped: func() error { return nil }})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { j.Close() })
	return j
}

// settled waits until the system would tell of one more write to a journal, and
// reports whether it can.
func settled(t testing.TB, path string) bool {
	t.Helper()
	for began := time.Now(); time.Since(began) < 5*time.Second; runtime.Gosched() {
		j, err := openReading(path, nil)
		if err != nil {
			t.Fatal(err)
		}
		j.Close()
		if j.stamped() {
			return true
		}
	}
	return false
}

// taken returns what is kept of a journal, if it is taken.
func taken(t testing.TB, path string) *notes { return ofA.kept(path, opened(t, path), new([]byte)) }

// What is kept follows its journal, be it longer or shorter than before, and has
// the stamp of its file, so that it need not be read again.
func TestKeptFollowsItsJournal(t *testing.T) {
	dir := club(t, 1, 6)
	path := filepath.Join(dir, "player-001.jsonl")
	more := made(t, "Player 001", 3, 7)
	begun, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range [][]byte{begun, append(bytes.Clone(begun), strings.Join(more, "")...), []byte(strings.Join(more, ""))} {
		if err := os.WriteFile(path, text, 0o600); err != nil {
			t.Fatal(err)
		}
		stamped := settled(t, path)
		got := told(t, dir, briefly("a"), Options{})
		n := taken(t, path)
		if n == nil || n.end.At != int64(len(text)) {
			t.Fatalf("%d bytes: kept are %+v", len(text), n)
		}
		if s := stampIn(t, path); stamped && !bytes.Equal(s[:journal.StampLength], opened(t, path).stamp) {
			t.Errorf("%d bytes: it does not have the journal's stamp, but %x", len(text), s)
		}
		second := told(t, dir, briefly("a"), Options{})
		forgetIn(t, dir)
		want := told(t, dir, briefly("a"), Options{})
		if !slices.Equal(got, want) || !slices.Equal(second, want) {
			t.Errorf("%d bytes: %q, then %q, want %q", len(text), got, second, want)
		}
	}
}
