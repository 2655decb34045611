package journal

import (
	"bytes"
	"os"
	"testing"

	"coldfloor/internal/mutate"
)

// keptBodies is what is kept of a journal as an index, without its checksums.
func keptBodies(t testing.TB) [][]byte {
	keepFrom = 1000
	defer func() { keepFrom = 256 << 10 }()
	var all [][]byte
	for _, n := range []int{1, 3} {
		path := long(t, n)
		if _, err := ReadOverview(path); err != nil {
			t.Fatal(err)
		}
		text, err := os.ReadFile(keptPath(path))
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, text[len(keptHead)+stampLength+8:])
	}
	return all
}

// decodes fails if a kept index, whatever is in it, is neither decoded nor
// refused.
func decodes(t testing.TB, body []byte) {
	k := keeper{}
	k.Reading, k.Buf = true, bytes.Clone(body)
	var x index
	k.int64(&x.length)
	if k.index(&x); k.Err != nil {
		return
	}
	runs, err := x.shelf.all()
	if err != nil {
		return
	}
	if len(runs) != x.shelf.len() {
		t.Fatalf("%d runs of %d", len(runs), x.shelf.len())
	}
	for _, r := range runs {
		r.RoundsDone()
		r.Contacts()
		_ = r.figures().extents
	}
}

// FuzzKept looks for a kept index that breaks its decoder.
func FuzzKept(f *testing.F) {
	for _, b := range keptBodies(f) {
		f.Add(b)
	}
	f.Fuzz(func(t *testing.T, body []byte) { decodes(t, body) })
}

// TestMutatedKept is FuzzKept with indexes that were changed a little.
func TestMutatedKept(t *testing.T) {
	mutate.Run(t, 2000, keptBodies(t), []string{"\x00", "\x01", "\xff", "\x80\x80\x01", "\xff\xff\xff\xff\xff\xff\xff\xff\xff\x01", "\x80\x80\x80\x80\x80\x80\x80\x80\x80\x80\x80"}, decodes)
}

// A kept index that is damaged anywhere is passed over: the overview is that of
// the journal.
func TestDamagedKeptIsPassedOver(t *testing.T) {
	keepFrom = 1000
	defer func() { keepFrom = 256 << 10 }()
	path := long(t, 3)
	if _, err := ReadOverview(path); err != nil {
		t.Fatal(err)
	}
	good, err := os.ReadFile(keptPath(path))
	if err != nil {
		t.Fatal(err)
	}
	mutate.Run(t, 100, [][]byte{good}, []string{"\x00", "\xff", keptHead}, func(t testing.TB, bad []byte) {
		if err := os.WriteFile(keptPath(path), bad, 0o600); err != nil {
			t.Fatal(err)
		}
		o, err := ReadOverview(path)
		if err != nil {
			t.Fatal(err)
		}
		agrees(t, o, path)
	})
}
