package journal

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"io"
	"os"
	"testing"

	"coldfloor/internal/mutate"
)

// keptTexts is what is kept of a journal as an index, from the length of its
// front on.
func keptTexts(t testing.TB) [][]byte {
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
		all = append(all, text[len(keptHead)+stampLength+2*4:])
	}
	return all
}

// decodes fails if a kept index, whatever is in it, is neither decoded nor
// refused. Its checksums are made to fit.
func decodes(t testing.TB, text []byte) {
	if len(text) < 4 {
		return
	}
	n, rest := binary.LittleEndian.Uint32(text), bytes.Clone(text[4:])
	front, runs := rest[:min(int(n), len(rest))], rest[min(int(n), len(rest)):]
	x, err := openIndex(front, io.NewSectionReader(bytes.NewReader(runs), 0, int64(len(runs))))
	if err != nil {
		return
	}
	for i := range x.shelf.len() {
		at, end := x.shelf.place(i)
		if at > end || end > int64(len(runs)) {
			continue
		}
		sum := crc32.Checksum(runs[at:end], castagnoli)
		binary.LittleEndian.PutUint32(x.shelf.heads[(i+1)*headSize-4:], sum)
		if r, err := x.shelf.reader().decode(i); err == nil {
			r.RoundsDone()
			r.Contacts()
			_ = r.figures().extents
		}
	}
	if all, err := x.shelf.decode(); err == nil && len(all) != x.shelf.len() {
		t.Fatalf("%d runs of %d", len(all), x.shelf.len())
	}
}

// FuzzKept looks for a kept index that breaks its decoder.
func FuzzKept(f *testing.F) {
	for _, b := range keptTexts(f) {
		f.Add(b)
	}
	f.Fuzz(func(t *testing.T, text []byte) { decodes(t, text) })
}

// TestMutatedKept is FuzzKept with indexes that were changed a little.
func TestMutatedKept(t *testing.T) {
	mutate.Run(t, 2000, keptTexts(t), []string{"\x00", "\x01", "\xff", "\x80\x80\x01", "\xff\xff\xff\xff\xff\xff\xff\xff\xff\x01", "\x80\x80\x80\x80\x80\x80\x80\x80\x80\x80\x80"}, decodes)
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

// What is kept of a run may be damaged, or be gone, when it is asked for: then
// it is the journal's.
func TestDamagedKeptRunIsRead(t *testing.T) {
	keepFrom = 1000
	defer func() { keepFrom = 256 << 10 }()
	path := long(t, 40)
	if _, err := ReadOverview(path); err != nil {
		t.Fatal(err)
	}
	damage := map[string]func(t *testing.T, f *os.File, size int64){
		"the last run": func(t *testing.T, f *os.File, size int64) {
			if _, err := f.WriteAt([]byte("\xff\xff\xff\xff"), size-4); err != nil {
				t.Fatal(err)
			}
		},
		"half of it": func(t *testing.T, f *os.File, size int64) {
			if err := f.Truncate(size - 2000); err != nil {
				t.Fatal(err)
			}
		},
	}
	for name, do := range damage {
		t.Run(name, func(t *testing.T) {
			good, err := os.ReadFile(keptPath(path))
			if err != nil {
				t.Fatal(err)
			}
			defer os.WriteFile(keptPath(path), good, 0o600)
			o, err := ReadOverview(path)
			if err != nil || o.index.shelf == nil {
				t.Fatal("the index is not used:", err)
			}
			f, err := os.OpenFile(keptPath(path), os.O_WRONLY, 0)
			if err != nil {
				t.Fatal(err)
			}
			defer f.Close()
			do(t, f, int64(len(good)))
			agrees(t, o, path)
		})
	}
}
