package runs

import (
	"bytes"
	"fmt"
	"hash/crc32"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"coldfloor/internal/journal"
)

// inParts calls do with every journal cut into n parts, if it is alone.
func inParts(t testing.TB, n int, do func()) {
	t.Helper()
	least, processors := leastPart, runtime.GOMAXPROCS(n)
	defer func() { leastPart = least; runtime.GOMAXPROCS(processors) }()
	leastPart = 1
	do()
}

// riffled puts the lines of some sessions among those of the next, so that runs
// go on across any cut.
func riffled(r *rand.Rand, lines []string) []string {
	half := len(lines) / 2
	a, b := lines[:half], lines[half:]
	var all []string
	for len(a)+len(b) > 0 {
		from := &a
		if len(a) == 0 || len(b) > 0 && r.IntN(2) == 0 {
			from = &b
		}
		n := min(len(*from), 1+r.IntN(40))
		all, *from = append(all, (*from)[:n]...), (*from)[n:]
	}
	return all
}

// damagedAt damages a line in one of the ways there are.
func damagedAt(r *rand.Rand, lines []string, i int) {
	switch line := lines[i]; r.IntN(5) {
	case 0:
		lines[i] = line[:len(line)/2] + "\n"
	case 1:
		lines[i] = strings.TrimSuffix(line, "\n") // it has lost its line feed
	case 2:
		lines[i] = strings.Replace(line, `{"v":1`, `{"v":99`, 1)
	case 3:
		lines[i] = "\n\r\n" + line
	case 4:
		lines[i] = strings.Repeat("x", 70<<10) + "\n" // longer than what is read at a time
	}
}

// oddJournal is a journal of which a part may stand in several of its parts.
func oddJournal(t testing.TB, r *rand.Rand, player string) []string {
	lines := made(t, player, 6+r.IntN(8), uint64(r.IntN(3)))
	if r.IntN(4) > 0 {
		lines = riffled(r, lines)
	}
	for range r.IntN(4) { // lines that arrive again
		lines = append(lines, lines[r.IntN(len(lines))])
	}
	for range r.IntN(3) {
		damagedAt(r, lines, r.IntN(len(lines)))
	}
	if r.IntN(4) == 0 {
		lines[0] = "\ufeff" + lines[0]
	}
	if last := &lines[len(lines)-1]; r.IntN(3) == 0 {
		*last = (*last)[:1+r.IntN(len(*last))]
	}
	return lines
}

// oddFolder is a folder of one such journal, or of one and a copy that differs.
func oddFolder(t testing.TB, r *rand.Rand) string {
	files := map[string][]string{"a.jsonl": oddJournal(t, r, "Ana")}
	if r.IntN(2) == 0 {
		other := slices.Clone(files["a.jsonl"])
		for range 1 + r.IntN(3) {
			i := r.IntN(len(other))
			other[i] = strings.Replace(other[i], `"taken_s":`, `"taken_s":1`, 1)
		}
		files["b.jsonl"] = other[:len(other)-r.IntN(20)]
	}
	return folder(t, files)
}

// However many parts a journal is cut into, it tells the same, and so does what
// is kept of it when it has grown.
func TestPartsTellTheSame(t *testing.T) {
	for seed := range uint64(20) {
		r := rand.New(rand.NewPCG(seed, 1))
		dir := oddFolder(t, r)
		more := oddJournal(t, r, "Ana")
		path := filepath.Join(dir, "a.jsonl")
		begun, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if len(begun) < keepFrom {
			t.Fatal("a journal too short to be kept")
		}
		var want [2][]string
		for n := 1; n <= 5; n++ {
			inParts(t, n, func() {
				forgetIn(t, dir)
				if err := os.WriteFile(path, begun, 0o600); err != nil {
					t.Fatal(err)
				}
				alone := told(t, dir, briefly("a"), Options{})
				if taken(t, path) == nil {
					t.Fatalf("seed %d, %d parts: what is kept is not of this journal", seed, n)
				}
				if err := os.WriteFile(path, append(bytes.Clone(begun), strings.Join(more, "")...), 0o600); err != nil {
					t.Fatal(err)
				}
				grown := told(t, dir, briefly("a"), Options{})
				if n == 1 {
					want = [2][]string{alone, grown}
				}
				for i, got := range [][]string{alone, grown} {
					if !slices.Equal(got, want[i]) {
						t.Fatalf("seed %d, %d parts, grown %d times:\n%q\nand in one\n%q", seed, n, i, got, want[i])
					}
				}
			})
		}
	}
}

// A journal that ends before it should, as one that is being replaced does, is
// read as far as it goes, whatever parts it was to be read in.
func TestPartsOfAJournalThatEndsEarly(t *testing.T) {
	lines := made(t, "Ana", 4, 1)
	text := strings.Join(lines, "")
	path := filepath.Join(folder(t, map[string][]string{"a.jsonl": lines}), "a.jsonl")
	for _, part := range []int{1, 3, 8} {
		inParts(t, 4, func() {
			end := part * len(text) / 10
			if err := os.WriteFile(path, []byte(text[:end]), 0o600); err != nil {
				t.Fatal(err)
			}
			j := opened(t, path)
			v := newSurveyor(j, ofA, nil)
			v.of = func(*journal.Run) func(*journal.RunCoder) { return func(*journal.RunCoder) {} }
			err := v.readTo(int64(len(text)), j)
			if want := strings.Count(text[:end], "\n"); err != nil || v.file.Lines != want || v.end.At != int64(end) {
				t.Errorf("%d tenths: %d lines up to %d, %v; want %d up to %d", part, v.file.Lines, v.end.At, err, want, end)
			}
		})
	}
}

// A damaged line has the number that it has in the file, whichever part it is in.
func TestPartsNumberLines(t *testing.T) {
	for at := range 7 {
		lines := made(t, "Ana", 8, 1)
		i := at * (len(lines) - 1) / 6
		lines[i] = "{\n"
		for n := 1; n <= 5; n++ {
			inParts(t, n, func() {
				s, err := Make([]string{folder(t, map[string][]string{"a.jsonl": lines})}, Options{}, briefly("a"))
				if err != nil {
					t.Fatal(err)
				}
				defer s.Close()
				if f := s.Files[0]; f.Lines != len(lines)-1 || f.Damaged != 1 || !strings.HasPrefix(f.First.Error(), fmt.Sprintf("line %d ", i+1)) {
					t.Errorf("%d parts, line %d: %+v", n, i+1, f)
				}
			})
		}
	}
}

// A journal is shared out among the processors as far as the others leave them.
func TestPartsOfALongJournal(t *testing.T) {
	processors := runtime.GOMAXPROCS(4)
	defer runtime.GOMAXPROCS(processors)
	for _, x := range []struct {
		size, total int64
		want        int
	}{
		{100 << 20, 100 << 20, 4}, {100 << 20, 101 << 20, 4}, {100 << 20, 200 << 20, 2}, {100 << 20, 1000 << 20, 1},
		{leastPart - 1, leastPart - 1, 1}, {3 * leastPart, 3 * leastPart, 3}, {0, 0, 1}, {5 << 20, 1 << 20, 4},
	} {
		if got := (&counted{total: x.total}).parts(x.size); got != x.want {
			t.Errorf("%d of %d bytes: %d parts, want %d", x.size, x.total, got, x.want)
		}
	}
}

func TestJoinedSums(t *testing.T) {
	text := []byte(strings.Join(made(t, "Ana", 1, 1), ""))
	for _, at := range []int{0, 1, 4095, 4096, 5000, len(text)} {
		a, b := text[:at], text[at:]
		if got, want := joined(crc32.Checksum(a, castagnoli), crc32.Checksum(b, castagnoli), int64(len(b))), crc32.Checksum(text, castagnoli); got != want {
			t.Errorf("cut at %d: %08x, want %08x", at, got, want)
		}
	}
}
