package journal

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"testing"
)

var damageSeed = flag.Int("damage.seed", 2026, "of the damage trial")

var damages = flag.Int("damages", 2_000, "how many random damages the damage trial does")

// damaged returns text with one random damage, and what it was.
func damaged(r *rand.Rand, text []byte) ([]byte, string) {
	b := bytes.Clone(text)
	at := r.IntN(len(b))
	lines := bytes.SplitAfter(b, []byte("\n"))
	i := r.IntN(len(lines))
	switch r.IntN(9) {
	case 0:
		b[at] ^= 1 << r.IntN(8)
		return b, "a bit flipped"
	case 1:
		b[at] = byte(r.IntN(256))
		return b, "a byte changed"
	case 2:
		return slices.Delete(b, at, min(len(b), at+1+r.IntN(60))), "bytes deleted"
	case 3:
		clear(b[at:min(len(b), at+1+r.IntN(600))])
		return b, "bytes zeroed"
	case 4:
		return b[:at], "cut off"
	case 5:
		lines[i] = bytes.TrimSuffix(lines[i], []byte("\n"))
		return bytes.Join(lines, nil), "a line feed lost"
	case 6:
		lines = slices.Insert(lines, r.IntN(len(lines)+1), lines[i])
		return bytes.Join(lines, nil), "a line doubled"
	case 7:
		digits := slices.Collect(func(yield func(int) bool) {
			for at, c := range b {
				if '0' <= c && c <= '9' && !yield(at) {
					return
				}
			}
		})
		at := digits[r.IntN(len(digits))]
		b[at] = '0' + byte(r.IntN(10))
		return b, "a digit changed"
	}
	from := r.IntN(len(b))
	piece := bytes.Clone(b[from:min(len(b), from+1+r.IntN(200))])
	return slices.Insert(b, at, piece...), "a piece of it inserted"
}

// trial is what came of damages.
type trial struct {
	Changed  int // a line was read that says what none of the journal's does
	Dropped  int // a line whose bytes are whole was not read
	Untold   int // lines are gone from within a run and nothing says so
	Repaired int // every line was read all the same
	Told     int // lines are gone, and it is said
	Ends     int // the ends of runs are gone, as if they had been killed there
}

// written returns a line as it stands in a journal, without its line feed.
func written(t *testing.T, l *Line) string {
	t.Helper()
	text, err := Encode(l)
	if err != nil {
		t.Fatal(err)
	}
	return string(bytes.TrimSuffix(text, []byte("\n")))
}

// judge reads a damaged journal whose whole one has those records.
func (c *trial) judge(t *testing.T, text []byte, whole map[string]bool, kind string) {
	var f Fold
	read := map[string]bool{}
	told := false
	for e, err := range Read(bytes.NewReader(text)) {
		if err != nil {
			told = true
			continue
		}
		said := written(t, &e.Line)
		if !whole[said] {
			c.Changed++
			t.Errorf("%s: line %d reads as %s", kind, e.Number, said)
		}
		read[said] = true
		f.Add(e)
	}
	_, problems := f.Runs()
	told = told || len(problems) > 0
	for said := range whole {
		if !read[said] && bytes.Contains(text, []byte(said)) {
			c.Dropped++
			t.Errorf("%s: not read: %s", kind, said)
		}
	}
	switch {
	case len(read) == len(whole):
		c.Repaired++
	case told:
		c.Told++
	case onlyEnds(t, read, whole):
		c.Ends++
	default:
		c.Untold++
		t.Errorf("%s: %d of %d lines are read, and nothing says so", kind, len(read), len(whole))
	}
}

// onlyEnds reports whether the lines that are not read are the last of their runs.
func onlyEnds(t *testing.T, read, whole map[string]bool) bool {
	highest, lowest := map[string]int{}, map[string]int{}
	for said := range whole {
		var l Line
		if err := json.Unmarshal([]byte(said), &l); err != nil {
			t.Fatal(err)
		}
		if read[said] {
			highest[l.Run] = max(highest[l.Run], l.N)
		} else if lowest[l.Run] == 0 || l.N < lowest[l.Run] {
			lowest[l.Run] = l.N
		}
	}
	for run, n := range lowest {
		if n < highest[run] {
			return false
		}
	}
	return true
}

// A journal of real runs is damaged at random, many times: nothing that it says
// is changed, no line that is whole is lost, and what is gone is told.
func TestDamageIsNeverSilent(t *testing.T) {
	j := openTemp(t)
	for _, id := range []string{"AAAAAAAA", "BBBBBBBB", "CCCCCCCC"} {
		if err := j.Append(everything(t, id)...); err != nil {
			t.Fatal(err)
		}
		if err := j.Amend(id, Line{Event: EventRating, Rating: &Rating{Pain: ptr(true), Where: ptr("left knee"), Note: ptr("“sharp”\non landing")}},
			Line{Event: EventMeasure, Measure: &Measure{Place: Place{1, 1, 1}, Name: "Broad jump", Side: "both", Try: 1, Measure: "distance", Value: ptr(2.31)}},
			Line{Event: EventCorrect, Correct: &Correct{LengthS: ptr(600.0)}}, Line{Event: EventWithdraw}); err != nil {
			t.Fatal(err)
		}
	}
	text := []byte(contents(t, j))
	whole := map[string]bool{}
	for e, err := range Read(bytes.NewReader(text)) {
		if err != nil {
			t.Fatal(err)
		}
		whole[written(t, &e.Line)] = true
	}
	r := rand.New(rand.NewPCG(uint64(*damageSeed), 11))
	var all trial
	for range *damages {
		hit, kind := damaged(r, text)
		if len(hit) > 0 && r.IntN(4) == 0 {
			var second string
			hit, second = damaged(r, hit)
			kind += ", " + second
		}
		all.judge(t, hit, whole, kind)
	}
	t.Logf("%d damages of a journal of %d lines: %+v", *damages, len(whole), all)
}

// Lines without a checksum, as earlier versions wrote them, read as before.
func TestLinesWithoutChecksumRead(t *testing.T) {
	text, err := os.ReadFile("testdata/everything.jsonl")
	if err != nil || bytes.Contains(text, []byte(`"crc"`)) {
		t.Fatal("the journal of an earlier version has checksums", err)
	}
	old, damage := readAll(t, text)
	var sealed bytes.Buffer
	for _, e := range old {
		write(t, &sealed, e.Line)
	}
	again, more := readAll(t, sealed.Bytes())
	if len(damage)+len(more) > 0 || fmt.Sprintf("%+v", len(old)) != fmt.Sprintf("%+v", len(again)) {
		t.Errorf("%v, %v, %d and %d lines", damage, more, len(old), len(again))
	}
	// RFC 3720, appendix B.4, whose bytes are in the order of the wire.
	if got := string(appendSeal(nil, make([]byte, 32))); got != `,"crc":"8a9136aa` {
		t.Errorf("CRC-32C of 32 zeros is %s", got)
	}
}
