package runs

import (
	"encoding/binary"
	"os"
	"strings"
	"testing"

	"coldfloor/internal/journal"
	"coldfloor/internal/mutate"
)

// spillFiles is how many files the lines of a spill of the tests may be of.
const spillFiles = 3

// spills is spills as they are written.
func spills(t testing.TB) (all [][]byte) {
	for _, lines := range [][]string{made(t, "Ana", 1, 1), append(made(t, "Bea", 3, 2), made(t, "", 2, 3)...), nil} {
		h := share{bound: 1 << 30, blocks: map[string]*block{}}
		for i := range spillFiles {
			if err := h.lines(i, &File{}, strings.NewReader(strings.Join(lines, ""))); err != nil {
				t.Fatal(err)
			}
		}
		s, err := writeSpill(t.TempDir(), h.blocks, spillFiles)
		if err != nil {
			t.Fatal(err)
		}
		text := make([]byte, s.size)
		if _, err := s.f.ReadAt(text, 0); err != nil && s.size > 0 {
			t.Fatal(err)
		}
		if err := s.close(); err != nil {
			t.Fatal(err)
		}
		all = append(all, text)
	}
	return all
}

// spillOf returns what puts a text in the place of a spill.
func spillOf(t testing.TB) func(text []byte) *spill {
	f, err := os.CreateTemp(t.TempDir(), "")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return func(text []byte) *spill {
		if _, err := f.WriteAt(text, 0); err != nil {
			t.Fatal(err)
		}
		if err := f.Truncate(int64(len(text))); err != nil {
			t.Fatal(err)
		}
		return &spill{f: f, size: int64(len(text)), files: spillFiles}
	}
}

// unspills fails if a spill, whatever is in it, is neither read nor refused, or
// if more is read of it than there can be.
func unspills(t testing.TB, s *spill) {
	var lines, bytes int64
	for _, headsAlone := range []bool{true, false} {
		var c codec
		_ = merge([]source{s.read(headsAlone)}, func(b *block) error {
			for _, f := range b.files {
				if f < 0 || f >= spillFiles {
					t.Fatalf("a file %d", f)
				}
			}
			if bytes += int64(len(b.data)); headsAlone {
				return nil
			}
			all, err := b.lines(&c)
			if err != nil {
				return err
			}
			lines += int64(len(all))
			journal.Build(all).RoundsDone()
			return nil
		})
	}
	if lines > s.size || bytes > s.size {
		t.Fatalf("%d lines in %d bytes, of %d", lines, bytes, s.size)
	}
}

// FuzzSpill looks for a spill that breaks what reads it.
func FuzzSpill(f *testing.F) {
	for _, s := range spills(f) {
		f.Add(s)
	}
	put := spillOf(f)
	f.Fuzz(func(t *testing.T, text []byte) { unspills(t, put(text)) })
}

// odd is what is put into files that were coded.
var odd = []string{"\x00", "\x01", "\xff", "\x80\x80\x01", "\xff\xff\xff\xff\xff\xff\xff\xff\xff\x01", "\xff\xff\xff\xff\xff\xff\xff\xff\x7f", "\x80\x80\x80\x80\x80\x80\x80\x80\x80\x80\x80"}

// TestMutatedSpill is FuzzSpill with spills that were changed a little.
func TestMutatedSpill(t *testing.T) {
	put := spillOf(t)
	mutate.Run(t, 2000, spills(t), odd, func(t testing.TB, text []byte) { unspills(t, put(text)) })
}

// A spill that ends early, be it at a block's end, is refused, and so is one that
// tells of more than there is.
func TestSpillCutShort(t *testing.T) {
	put := spillOf(t)
	refused := func(s *spill, what string, n int) {
		if err := merge([]source{s.read(true)}, func(*block) error { return nil }); err != errShort {
			t.Fatalf("%s %d: %v", what, n, err)
		}
	}
	for _, text := range spills(t) {
		for i := range text {
			s := put(text)
			if err := s.f.Truncate(int64(i)); err != nil {
				t.Fatal(err)
			}
			refused(s, "cut to", i)
		}
	}
	for n := range 64 {
		refused(put(binary.AppendUvarint(nil, 1<<n)), "a length of 2 to the power of", n)
	}
}

// A block names files that there are, rising.
func TestBlockOf(t *testing.T) {
	for _, x := range []struct {
		files []int
		fine  bool
	}{{[]int{0}, true}, {[]int{0, 1, 2}, true}, {nil, false}, {[]int{-1}, false}, {[]int{-1, 2}, false}, {[]int{0, 3}, false}, {[]int{2, 1}, false}} {
		if _, err := blockOf((&block{run: "R", files: x.files}).head(), 3); (err == nil) != x.fine {
			t.Errorf("%d: %v", x.files, err)
		}
	}
}
