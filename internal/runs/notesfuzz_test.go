package runs

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"coldfloor/internal/journal"
	"coldfloor/internal/mutate"
)

// keptOf is what is kept of a few journals, whole.
func keptOf(t testing.TB) (all [][]byte) {
	for _, lines := range [][]string{made(t, "Ana", 1, 1), append(made(t, "Bea", 2, 2), made(t, "", 2, 3)...), append(made(t, "Ana", 2, 4), "{\n")} {
		dir := folder(t, map[string][]string{"a.jsonl": lines})
		told(t, dir, briefly("a"), Options{})
		text, err := os.ReadFile(keptPath(filepath.Join(dir, "a.jsonl")))
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, text)
	}
	return all
}

// keptNotes is the notes of these, without checksums.
func keptNotes(t testing.TB) (all [][]byte) {
	for _, text := range keptOf(t) {
		all = append(all, text[len(ofA.title())+stampSize+sumsSize:])
	}
	return all
}

// notesDecode fails if notes, whatever is in them, are neither decoded nor
// refused.
func notesDecode(t testing.TB, text []byte) {
	n, err := decodeNotes(bytes.Clone(text))
	if err != nil {
		return
	}
	if n.end.At < 0 || len(n.heads)*headSize > len(text) || len(n.lines) > len(n.heads) {
		t.Fatalf("%d heads and the lines of %d in %d bytes, up to %d", len(n.heads), len(n.lines), len(text), n.end.At)
	}
	var c codec
	for i := range n.heads {
		b, err := n.body(i)
		if err == nil && len(b.extents) > len(text) {
			t.Fatalf("%d extents in %d bytes", len(b.extents), len(text))
		}
		var of brief
		if err := decodeOne(n, i, briefs{}, &of); err == nil {
			of.Run.RoundsDone()
			of.Run.Days()
		}
		if text, ok := n.lines[i]; ok {
			_, _ = c.runOf(b.run, text)
		}
	}
	goesOn(t, n)
}

// goesOn has notes gone on with, and what is made of them decoded.
func goesOn(t testing.TB, n *notes) {
	v := newSurveyor(nil, ofA, n)
	v.of = func(*journal.Run) func(*journal.RunCoder) { return func(c *journal.RunCoder) {} }
	for s, err := range journal.Stretches(strings.NewReader(goingOn), &v.end) {
		if err != nil {
			t.Fatal(err)
		}
		v.stretch(s)
	}
	if _, err := decodeNotes(v.encode(nil)); err != nil {
		t.Fatalf("gone on with, they cannot be decoded: %v", err)
	}
}

// goingOn is lines of a run.
const goingOn = `{"v":1,"run":"NEW","n":1,"at":"2026-02-02T18:00:00+01:00","t_s":0,"event":"withdraw"}` + "\n"

// FuzzNotes looks for notes that break their decoder.
func FuzzNotes(f *testing.F) {
	for _, n := range keptNotes(f) {
		f.Add(n)
	}
	f.Fuzz(func(t *testing.T, text []byte) { notesDecode(t, text) })
}

// TestMutatedNotes is FuzzNotes with notes that were changed a little.
func TestMutatedNotes(t *testing.T) {
	mutate.Run(t, 2000, keptNotes(t), odd, notesDecode)
}

// Notes that end before their journal begins are refused, and so are those that
// do not have the empty name, which is that of whoever has none.
func TestNotesThatCannotBe(t *testing.T) {
	for what, spoil := range map[string]func(*notes){
		"none":         func(*notes) {},
		"a length":     func(n *notes) { n.end.At = -1 },
		"lines":        func(n *notes) { n.end.Before = -1 },
		"no words":     func(n *notes) { n.heads, n.tables = nil, &journal.RunCoder{} },
		"another word": func(n *notes) { n.tables.Words().List[0] = "Ana" },
	} {
		n, err := decodeNotes(keptNotes(t)[0])
		if err != nil {
			t.Fatal(err)
		}
		n.tables = n.tables.Going()
		spoil(n)
		if _, err := decodeNotes(n.encode(nil)); (err == nil) != (what == "none") {
			t.Errorf("%s: %v", what, err)
		}
	}
}

// Whatever becomes of what is kept, what is told is the same.
func TestMutatedKeptIsPassedOver(t *testing.T) {
	dir := club(t, 1, 3)
	want := told(t, dir, briefly("a"), Options{})
	kept := keptPath(filepath.Join(dir, "player-001.jsonl"))
	own, err := os.ReadFile(kept)
	if err != nil {
		t.Fatal(err)
	}
	mutate.Run(t, 100, append(keptOf(t), own, own, own), append(odd, keptHead), func(t testing.TB, bad []byte) {
		if err := os.WriteFile(kept, bad, 0o600); err != nil {
			t.Fatal(err)
		}
		if got := told(t, dir, briefly("a"), Options{}); !slices.Equal(got, want) {
			t.Fatalf("%q, want %q", got, want)
		}
	})
}
