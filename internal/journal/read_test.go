package journal

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"iter"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"coldfloor/internal/mutate"
)

// collect reads all, the damage apart.
func collect(t testing.TB, seq iter.Seq2[Entry, error]) (lines []Entry, damage []*Damage) {
	t.Helper()
	for e, err := range seq {
		var d *Damage
		switch {
		case errors.As(err, &d):
			damage = append(damage, d)
		case err != nil:
			t.Fatal(err)
		default:
			e.Text = nil
			lines = append(lines, e)
		}
	}
	return lines, damage
}

func readAll(t testing.TB, text []byte) ([]Entry, []*Damage) {
	t.Helper()
	return collect(t, Read(bytes.NewReader(text)))
}

// twoRuns is a small journal in which two runs interleave.
func twoRuns(t testing.TB) []byte {
	t.Helper()
	var out bytes.Buffer
	for _, l := range everything(t, "A")[:5] {
		for _, id := range []string{"A", "B"} {
			l.Run = id
			write(t, &out, l)
		}
	}
	write(t, &out, Line{V: Version, Run: "B", N: 6, At: start, Event: EventRating,
		Rating: &Rating{RPE: ptr(4.0), Note: ptr("häuslich, “kalt”")}})
	return out.Bytes()
}

// write writes a line as Append does.
func write(t testing.TB, out io.Writer, l Line) {
	t.Helper()
	text, err := Encode(&l)
	if err == nil {
		_, err = out.Write(text)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// A journal damaged at every byte in turn is read up to and after the damage.
func TestReadDamagedAtEveryByte(t *testing.T) {
	text := twoRuns(t)
	whole, damage := readAll(t, text)
	if len(damage) > 0 || len(whole) < 8 {
		t.Fatalf("%d lines, damage %v", len(whole), damage)
	}
	damages := map[string]func(at int) []byte{
		"flipped":   func(at int) []byte { b := bytes.Clone(text); b[at] ^= 0xff; return b },
		"zeroed":    func(at int) []byte { b := bytes.Clone(text); b[at] = 0; return b },
		"a newline": func(at int) []byte { b := bytes.Clone(text); b[at] = '\n'; return b },
		"a brace":   func(at int) []byte { b := bytes.Clone(text); b[at] = '}'; return b },
		"missing":   func(at int) []byte { return slices.Delete(bytes.Clone(text), at, at+1) },
		"cut off":   func(at int) []byte { return text[:at] },
	}
	for name, damage := range damages {
		for at := range text {
			hit := 1 + bytes.Count(text[:at], []byte("\n")) // number of the line that is hit
			got, _ := readAll(t, damage(at))
			keys := map[string]bool{}
			for _, e := range got {
				keys[fmt.Sprint(e.Run, e.N, e.At, e.Event)] = true
			}
			for _, e := range whole {
				after := e.Number > hit && name != "cut off" && (text[at] != '\n' || e.Number > hit+1)
				if (e.Number < hit || after) && !keys[fmt.Sprint(e.Run, e.N, e.At, e.Event)] {
					t.Fatalf("byte %d %s, in line %d: line %d is not read", at, name, hit, e.Number)
				}
			}
		}
	}
}

func TestReadTellsOfDamage(t *testing.T) {
	const good = `{"v":1,"run":"A","n":1,"at":"2026-07-14T18:30:00+02:00","t_s":0,"event":"pause","pause":{"cause":"key"}}`
	with := func(old, new string) string { return strings.Replace(good, old, new, 1) }
	for text, want := range map[string]string{
		good:                         "",
		good + "\r":                  "",
		"\n\n" + good:                "",
		"\ufeff" + good:              "",
		with(`"v":1`, `"v":1,"x":7`): "", // a newer program of the same version may say more
		good[:40]:                    "line 1 is damaged: it is cut off, or is not JSON; it is kept, but not read",
		"\x00\x00\x00":               "line 1 is damaged: it is cut off, or is not JSON",
		"null":                       "line 1 is damaged: it has no version",
		with(`"event"`, `"move":{"cause":"skip"},"event"`):                      "it holds several events",
		with(`}}`, `},"crc":"00000000","x":1}`):                                 "its checksum does not fit",
		with("key", "\xff"):                                                     "line 1 is damaged: it is not valid UTF-8",
		with(`"v":1`, `"v":2`):                                                  "line 1 is of version 2, this program reads up to 1",
		with(`"v":1,"run":"A"`, `"v":2,"run":[]`):                               "line 1 is of version 2",
		with(`"A"`, `"../A"`):                                                   "line 1 is damaged: it names no run",
		with(`"n":1`, `"n":0`):                                                  "has no number",
		with(`"n":1`, `"n":99999999999`):                                        "has no number",
		with(`"at":"2026-07-14T18:30:00+02:00",`, ""):                           "has no time",
		with(`"event":"pause"`, `"event":"somersault"`):                         `line 1 has an event "somersault", which this program does not know`,
		with(`"event":"pause"`, `"event":"rest"`):                               `does not say what of "rest"`,
		with(`"t_s":0`, `"t_s":-1`):                                             "has an impossible value",
		strings.Repeat("x", maxLine+1):                                          "longer than 8 MiB",
		strings.Repeat("\x00", 3*maxLine) + "\n{":                               "longer than 8 MiB",
		with(`"pause","pause":{"cause":"key"}`, `"rating","rating":{"rpe":11}`): "out of bounds",
		with(`"pause","pause":{"cause":"key"}`, `"rest","rest":{"block":1,"round":1,"taken_s":1e300}`):     "out of bounds",
		with(`"pause","pause":{"cause":"key"}`, `"set","set":{"block":1000000000,"round":1,"exercise":1}`): "out of bounds",
		with(`"pause","pause":{"cause":"key"}`, `"started","started":{"blocks":[{"rounds":-1}]}`):          `a dose of block ""`,
		with(`"pause","pause":{"cause":"key"}`, `"correct","correct":{"length_s":-1}`):                     "out of bounds",
	} {
		lines, damage := readAll(t, []byte(text))
		switch {
		case want == "" && (len(lines) != 1 || len(damage) != 0):
			t.Errorf("%.60q: %d lines, damage %v", text, len(lines), damage)
		case want != "" && (len(lines) != 0 || len(damage) == 0 || !strings.Contains(damage[0].Error(), want)):
			t.Errorf("%.60q: %d lines, damage %v; want %q", text, len(lines), damage, want)
		}
	}
}

func TestReadGoesOnAfterALongLine(t *testing.T) {
	text := append(bytes.Repeat([]byte("x"), 2*maxLine), '\n')
	lines, damage := readAll(t, append(text, twoRuns(t)...))
	if len(damage) != 1 || len(lines) < 8 || lines[0].Number != 2 {
		t.Errorf("%d lines from number %d, damage %v", len(lines), lines[0].Number, damage)
	}
}

func TestReadPassesOnErrors(t *testing.T) {
	gone := errors.New("the disk is gone")
	n := 0
	var last error
	for _, err := range Read(io.MultiReader(bytes.NewReader(twoRuns(t)), iotest.ErrReader(gone))) {
		n++
		last = err
	}
	if n < 9 || last != gone {
		t.Errorf("%d lines, then %v", n, last)
	}
}

func TestReadByAnyBufferIsTheSame(t *testing.T) {
	text := twoRuns(t)
	want, _ := readAll(t, text)
	got, _ := collect(t, Read(iotest.OneByteReader(bytes.NewReader(text))))
	if fmt.Sprint(len(got)) != fmt.Sprint(len(want)) || !reflect.DeepEqual(got, want) {
		t.Errorf("%d lines, want %d", len(got), len(want))
	}
}

// FuzzRead: whatever the bytes, reading and folding end, and what is whole
// after them is read.
func FuzzRead(f *testing.F) {
	for _, s := range journals(f) {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text []byte) { reads(t, text) })
}

// TestMutated is FuzzRead with journals that were changed a little.
func TestMutated(t *testing.T) { mutate.Run(t, 1000, journals(t), tokens, reads) }

// journals is journals, good and bad.
func journals(t testing.TB) [][]byte {
	text := twoRuns(t)
	golden, err := os.ReadFile("testdata/everything.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	return [][]byte{text, golden, text[:len(text)/2], []byte("\x00\x00{}\n{\"v\":1}\n")}
}

// reads fails unless the bytes are read and folded, and what follows too.
func reads(t testing.TB, text []byte) {
	const last = `{"v":1,"run":"LAST","n":1,"at":"2026-07-14T18:30:00Z","t_s":0,"event":"pause","pause":{"cause":"key"}}`
	runs, _, err := foldAll(bytes.NewReader(append(bytes.Clone(text), "\n"+last...)))
	if err != nil {
		t.Fatal(err)
	}
	if !slices.ContainsFunc(runs, func(r *Run) bool { return r.ID == "LAST" }) {
		t.Fatal("the whole line at the end is not read")
	}
	for _, r := range runs {
		r.RoundsDone()
		r.Contacts()
	}
}
