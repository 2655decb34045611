package runs

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"testing"
	"time"
)

// stampIn returns the stamp in what is kept of a journal.
func stampIn(t testing.TB, path string) []byte {
	t.Helper()
	text, err := os.ReadFile(keptPath(path))
	if err != nil {
		t.Fatal(err)
	}
	return text[len(ofA.title()):][:stampSize]
}

// A stamp counts for the notes that it was made for and for no others, which
// somebody else may have kept in their place meanwhile.
func TestStampOfOtherNotes(t *testing.T) {
	dir := club(t, 1, 6)
	path := filepath.Join(dir, "player-001.jsonl")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	settled(t, path)
	told(t, dir, briefly("a"), Options{})
	earlier, err := os.ReadFile(keptPath(path))
	if err != nil {
		t.Fatal(err)
	}
	text[len(text)/2] ^= 1
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	settled(t, path)
	want := told(t, dir, briefly("a"), Options{})
	copy(earlier[len(ofA.title()):], stampIn(t, path))
	if err := os.WriteFile(keptPath(path), earlier, 0o600); err != nil {
		t.Fatal(err)
	}
	if got := told(t, dir, briefly("a"), Options{}); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// What is not a file, or too large to be what was kept, is not read.
func TestKeptIsNoSuchFile(t *testing.T) {
	dir := club(t, 1, 6)
	want := told(t, dir, briefly("a"), Options{})
	kept := keptPath(filepath.Join(dir, "player-001.jsonl"))
	for name, put := range map[string]func() error{
		"large":             func() error { return errors.Join(os.WriteFile(kept, nil, 0o600), os.Truncate(kept, 1<<40)) },
		"a link to nowhere": func() error { return os.Symlink("nowhere", kept) },
	} {
		if err := errors.Join(os.Remove(kept), put()); err != nil {
			t.Logf("%s: %v", name, err) // a system or a disk that has no such thing
		}
		if got := told(t, dir, briefly("a"), Options{}); !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
}

// Every byte of what is kept is held against a checksum.
func TestKeptDamagedAnywhere(t *testing.T) {
	dir := club(t, 1, 6)
	path := filepath.Join(dir, "player-001.jsonl")
	told(t, dir, briefly("a"), Options{})
	text, err := os.ReadFile(keptPath(path))
	if err != nil {
		t.Fatal(err)
	}
	kept := func(text []byte) *notes {
		if err := os.WriteFile(keptPath(path), text, 0o600); err != nil {
			t.Fatal(err)
		}
		return taken(t, path)
	}
	whole := kept(text)
	if whole == nil || len(whole.heads) != 6 {
		t.Fatal("what was kept is not taken")
	}
	stamp := len(ofA.title())
	for i := range text {
		damaged := slices.Clone(text)
		damaged[i] ^= 0x10
		n := kept(damaged)
		if inStamp := i >= stamp && i < stamp+stampSize; n != nil && (!inStamp || !reflect.DeepEqual(n.heads, whole.heads)) {
			t.Fatalf("byte %d of %d was changed, and it was taken", i, len(text))
		}
		if i%5 == 0 && kept(text[:i]) != nil {
			t.Fatalf("it was cut to %d bytes, and taken", i)
		}
	}
}

// An edit that leaves the length and the time of the last change as they were
// is seen.
func TestEditOfTheSameLength(t *testing.T) {
	dir := club(t, 1, 6)
	path := filepath.Join(dir, "player-001.jsonl")
	long := time.Now().Add(-time.Hour)
	if err := os.Chtimes(path, long, long); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		told(t, dir, briefly("a"), Options{})
	}
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	text[len(text)/2] ^= 1
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(path, long, long); err != nil {
		t.Fatal(err)
	}
	got := told(t, dir, briefly("a"), Options{})
	forgetIn(t, dir)
	if want := told(t, dir, briefly("a"), Options{}); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
