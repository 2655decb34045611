package sheet

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"
	"unicode"

	"pgregory.net/rapid"

	"coldfloor/internal/paper"
	"coldfloor/internal/plan"
	"coldfloor/internal/text"
	"coldfloor/sessions"
	"coldfloor/sessions/sessionstest"
)

// checkPages holds every text to its box, every box to the printed area, and
// no two boxes of a page to the same place.
func checkPages(t interface{ Fatalf(string, ...any) }, r *recorder, on paper.Size, width func(paper.Face, string) float64) {
	const eps = 0.02
	for n, page := range r.pages {
		for i, a := range page {
			if w := width(a.face, a.text); w > a.box.W+eps+w*0.002 {
				t.Fatalf("page %d: %q is %.2f mm wide, its box %.2f", n+1, a.text, w, a.box.W)
			}
			if a.box.X < margin-eps || a.box.X+a.box.W > on.Width-margin+eps || a.box.Y < margin-eps || a.box.Y+a.box.H > on.Height-margin+eps {
				t.Fatalf("page %d: %q is set off the page at %v", n+1, a.text, a.box)
			}
			for _, b := range page[i+1:] {
				across := math.Min(a.box.X+a.box.W, b.box.X+b.box.W) - math.Max(a.box.X, b.box.X)
				down := math.Min(a.box.Y+a.box.H, b.box.Y+b.box.H) - math.Max(a.box.Y, b.box.Y)
				if across > eps && down > eps {
					t.Fatalf("page %d: %q and %q overlap by %.2f × %.2f mm", n+1, a.text, b.text, across, down)
				}
			}
		}
	}
}

// words draws texts of any length, of words of any length.
func words(most int) *rapid.Generator[string] {
	word := rapid.OneOf(rapid.StringMatching(`[a-zA-Z,.]{1,9}`), rapid.StringMatching(`[WM]{20,150}`),
		rapid.SampledFrom([]string{"Übergrößenträger", "προπόνηση", "прыжок-упор", "Ệ", "A\u030A\u0301\u0323", "ﬃ", "כתפיים", "跳", "—"}))
	return rapid.Custom(func(t *rapid.T) string {
		s := strings.Join(rapid.SliceOfN(word, 1, most).Draw(t, "words"), " ")
		runes := []rune(s)
		return string(runes[:min(len(runes), sessions.MaxText)])
	})
}

// label is words, within the bounds of a label.
func label(t *rapid.T, name string) string {
	runes := []rune(words(30).Draw(t, name))
	return string(runes[:min(len(runes), sessions.MaxLabel)])
}

func TestNoTextLeavesItsBox(t *testing.T) {
	width := ruler()
	rapid.Check(t, func(t *rapid.T) {
		s := sessionstest.Draw(t)
		s.Title, s.For = label(t, "title"), words(80).Draw(t, "for")
		for i := range s.Blocks {
			b := &s.Blocks[i]
			b.Title = label(t, "block")
			b.Rest = time.Duration(rapid.Int64Range(0, int64(4*time.Minute)).Draw(t, "rest"))
			if rapid.IntRange(0, 3).Draw(t, "many rounds") == 0 {
				b.Rounds = rapid.IntRange(1, 70).Draw(t, "rounds")
			}
			for j := range b.Exercises {
				e := &b.Exercises[j]
				e.Name = label(t, "name")
				e.How = words(100).Draw(t, "how")
				e.Easier.Name = words(40).Draw(t, "easier")
				e.Cues = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) string { return label(t, "cue") }), 0, 12).Draw(t, "cues")
			}
		}
		if _, length := sessions.Size(s); length > sessions.MaxLength {
			t.Skip("no file may hold it")
		}
		on := rapid.SampledFrom(paper.Sizes).Draw(t, "paper")
		d := Of(plan.Of(s), &text.English)
		r, set := record(d, on)
		checkPages(t, r, on, width)
		checkComplete(t, d, r, set)
	})
}

// checkComplete holds that every letter of name, cues and texts is printed, in
// order, however it was broken.
func checkComplete(t *rapid.T, d *Doc, r *recorder, s *setter) {
	var all strings.Builder
	for _, page := range r.pages {
		for _, p := range page {
			if p.box.X < s.x+s.cols.text-0.1 { // the column of the exercise
				all.WriteString(p.text)
			}
		}
	}
	letters := func(text string) string {
		return strings.Map(func(r rune) rune {
			if unicode.IsSpace(r) {
				return -1
			}
			return r
		}, s.types.Printable(text))
	}
	printed := letters(all.String())
	for _, b := range d.Blocks {
		for _, row := range b.Rows {
			for _, text := range append([]string{row.ID + row.Name}, row.Cues...) {
				// A page may end within, and its number and heads come between.
				if l := letters(text); len(r.pages) == 1 && !strings.Contains(printed, l) {
					t.Fatalf("%q is not printed", text)
				}
			}
		}
	}
}

// A page that goes on with the table names its columns, and the block it goes
// on with.
func TestHeadIsRepeated(t *testing.T) {
	for _, b := range sessions.Builtins() {
		d := builtin(t, b)
		r, _ := record(d, paper.Sizes[0])
		for n, page := range r.pages[1:] {
			if page[0].text != text.English.Sheet.Columns[0] {
				t.Errorf("%s: page %d begins with %q", b.Name, n+2, page[0].text)
			}
		}
		for n, page := range r.pages {
			want := fmt.Sprintf("page %d of %d", n+1, len(r.pages))
			if !printedOn(page, want) {
				t.Errorf("%s: no %q", b.Name, want)
			}
		}
	}
}

func printedOn(page []set, text string) bool {
	for _, s := range page {
		if s.text == text {
			return true
		}
	}
	return false
}

// A row stands on one page, unless it is higher than one.
func TestNoRowIsTorn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := Of(plan.Of(sessionstest.Draw(t)), &text.English)
		for i := range d.Blocks {
			for j := range d.Blocks[i].Rows {
				r := &d.Blocks[i].Rows[j]
				r.Notes = append(r.Notes, Note{"", strings.Repeat("text ", rapid.IntRange(0, 300).Draw(t, "words")) + "end" + r.ID})
			}
		}
		rec, _ := record(d, paper.Sizes[1])
		for _, b := range d.Blocks {
			for _, row := range b.Rows {
				start, end := -1, -1
				for n, page := range rec.pages {
					for _, s := range page {
						if strings.HasPrefix(s.text, row.ID+" ") && s.face.Bold && start < 0 {
							start = n
						}
						if strings.HasSuffix(s.text, "end"+row.ID+".") {
							end = n
						}
					}
				}
				if start < 0 || start != end {
					t.Fatalf("row %s starts on page %d and ends on page %d", row.ID, start+1, end+1)
				}
			}
		}
	})
}

// The rests of an ordinary session are at least as high as ISO 9241-3 asks for
// comfortable reading at 2 m: 16 minutes of arc, 2·D·tan(angle/2).
func TestRestsAreReadFromTheFloor(t *testing.T) {
	least := 2 * 2000 * math.Tan(16.0/60/2*math.Pi/180)
	if math.Abs(least-9.31) > 0.005 {
		t.Fatalf("16' at 2 m is %.3f mm", least)
	}
	for _, b := range sessions.Builtins() {
		d := builtin(t, b)
		for _, on := range paper.Sizes {
			r, s := record(d, on)
			found := 0
			for _, page := range r.pages {
				for _, set := range page {
					if set.box.X < s.x+s.w-s.cols.then || !set.face.Tight || !unicode.IsDigit(rune(set.text[0])) || set.box.Y < 40 {
						continue
					}
					found++
					if h := paper.CapHeight * set.face.Size * paper.Point; h < least {
						t.Errorf("%s: rest %s is %.2f mm high", b.Name, set.text, h)
					}
				}
			}
			if found == 0 {
				t.Errorf("%s: no rest found", b.Name)
			}
		}
	}
}

// A short session takes one page; the long built-in ones, of sixteen and more
// exercises with their texts, two or three.
func TestPages(t *testing.T) {
	d := superset(t)
	for _, on := range paper.Sizes {
		if r, _ := record(d, on); len(r.pages) != 1 {
			t.Errorf("the superset takes %d pages of %s", len(r.pages), on.Name)
		}
	}
	for _, b := range sessions.Builtins() {
		d := builtin(t, b)
		rows := 0
		for _, b := range d.Blocks {
			rows += len(b.Rows)
		}
		r, _ := record(d, paper.Sizes[0])
		if most := 1 + rows/9; len(r.pages) > most {
			t.Errorf("%s with %d exercises takes %d pages of A4, want at most %d", b.Name, rows, len(r.pages), most)
		}
	}
}

func TestPDFIsDeterministic(t *testing.T) {
	var first, second bytes.Buffer
	for _, b := range []*bytes.Buffer{&first, &second} {
		if printed, err := superset(t).PDF(b, paper.Sizes[0]); err != nil || printed.Pages != 1 || len(printed.Missing) != 0 {
			t.Fatal(printed, err)
		}
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("two sheets of one session differ")
	}
}

func TestLackingCharactersAreSeenAndNamed(t *testing.T) {
	d := superset(t)
	d.Blocks[0].Rows[0].Name = "跳 ﬃ 🏸 Ệ"
	var b bytes.Buffer
	printed, err := d.PDF(&b, paper.Sizes[0])
	if err != nil || string(printed.Missing) != "跳🏸" {
		t.Fatalf("missing %q, %v", string(printed.Missing), err)
	}
	if r, _ := record(d, paper.Sizes[0]); !printedOn(r.pages[0], "1a ◊ ffi ◊ Ệ") && !printedOn(r.pages[0], "◊ ffi ◊ Ệ") {
		t.Error("the characters are not replaced")
	}
	for r, want := range map[rune]string{'跳': "跳 (U+8DF3)", '\u202E': "U+202E", '\u20DD': "U+20DD", '\uFFFD': "� (U+FFFD)"} {
		if got := paper.NameOf(r); got != want {
			t.Errorf("NameOf(%U) = %q, want %q", r, got, want)
		}
	}
}
