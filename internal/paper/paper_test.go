package paper

import (
	"bytes"
	"strings"
	"testing"

	"codeberg.org/go-pdf/fpdf"
	"pgregory.net/rapid"
)

// ruler measures with the PDF library and not with what set the text.
func ruler() func(f Face, s string) float64 {
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm"})
	NewSetting().AddTo(pdf)
	return func(f Face, s string) float64 {
		style := ""
		if f.Bold {
			style = "B"
		}
		pdf.SetFont(Family, style, f.Size)
		return pdf.GetStringWidth(s)
	}
}

// Hebrew is drawn from its last character to its first, figures as they are
// (Unicode Standard Annex 9).
func TestVisual(t *testing.T) {
	for line, want := range map[string]string{
		"Squat jump (2)": "Squat jump (2)",
		"שלום":           "םולש",
		"Do שלום now":    "Do םולש now",
		"שלום (אב) 12":   "12 (בא) םולש",
		"see אב 12 גד":   "see דג 12 בא",
		"שָׁ":            "שָׁ",
	} {
		if got := Visual(line); got != want {
			t.Errorf("visual(%q) = %q, want %q", line, got, want)
		}
	}
}

// However narrow the column, every letter is set, in order, and no line is
// wider than the column, as long as the column holds one letter.
func TestWrapKeepsEveryLetter(t *testing.T) {
	types, width := NewTypeface(), ruler()
	rapid.Check(t, func(t *rapid.T) {
		text, column := words().Draw(t, "text"), rapid.Float64Range(12, 190).Draw(t, "column")
		f := Face{Bold: rapid.Bool().Draw(t, "bold"), Size: rapid.Float64Range(7, 24).Draw(t, "size")}
		hang := rapid.Float64Range(0, 3).Draw(t, "hang")
		var got strings.Builder
		for _, l := range types.Flow([]Run{Text(f, "1a"), Text(f, text)}, column, hang) {
			w := l.Indent
			for _, r := range l.Runs {
				got.WriteString(strings.ReplaceAll(r.Text, " ", ""))
				w += width(r.Face, r.Text)
			}
			if w > column*1.002+0.02 {
				t.Fatalf("a line of %.2f mm in a column of %.2f: %v", w, column, l.Runs)
			}
		}
		if want := "1a" + strings.ReplaceAll(types.Printable(text), " ", ""); got.String() != want {
			t.Fatalf("set %q, want %q", got.String(), want)
		}
	})
}

// words draws texts of some scripts, of short words and of long ones.
func words() *rapid.Generator[string] {
	word := rapid.OneOf(rapid.StringMatching(`[a-zA-Z]{1,30}`), rapid.StringMatching(`[a-z]{2,9}-[a-z]{2,9}/[a-z]{2,9}`),
		rapid.SampledFrom([]string{"größer", "nhảy", "Пружина", "שלום", "2:30", "e\u0301tude", "跳"}))
	return rapid.Map(rapid.SliceOfN(word, 1, 40), func(w []string) string { return strings.Join(w, " ") })
}

func TestFit(t *testing.T) {
	types := NewTypeface()
	f, lines := types.Fit(Face{Bold: true, Size: 24}, 15, "Deep court", 190, 2)
	if f.Size != 24 || len(lines) != 1 {
		t.Errorf("a short title is set at %v on %d lines", f.Size, len(lines))
	}
	f, lines = types.Fit(Face{Bold: true, Size: 24}, 15, strings.Repeat("long words ", 20), 190, 2)
	if f.Size != 15 || len(lines) < 3 || HeightOf(lines) != float64(len(lines))*f.Height() {
		t.Errorf("a long title is set at %v on %d lines", f.Size, len(lines))
	}
	if got := types.Clip(f, "a title that is far too long", 30); !strings.HasSuffix(got, "…") || types.Width(f, got) > 30 {
		t.Errorf("Clip = %q", got)
	}
	if got := types.Clip(f, "short", 30); got != "short" {
		t.Errorf("Clip = %q", got)
	}
	if types.Whole(f, "Hampelmannsprung", 10) || !types.Whole(f, "a b c", 10) {
		t.Error("Whole does not tell whether a word fits")
	}
}

// The same drawing gives the same bytes, and what the typeface lacks is told.
func TestDocument(t *testing.T) {
	draw := func() []byte {
		types := NewTypeface()
		c := NewDocument(Sizes[0], types, types.Printable("Title 跳"), "maker")
		c.Page()
		c.Text(Box(10, 10, 100, 20), Centre, Face{Size: 12}, "in the middle")
		c.Line(10, 40, 100, 40, 0.3)
		c.Area(Box(10, 50, 20, 20), Hatched, 0.2)
		c.Area(Box(40, 50, 20, 20), Black, 0)
		DrawLines(c, types, types.Wrap(Face{Bold: true, Size: 10}, "some words", 50), 10, 80, 50, Right)
		Single(Face{Size: 9, Tight: true}, "12").Draw(c, types, 10, 100, 50, Left)
		if got := string(types.Missing()); got != "跳" {
			t.Errorf("missing %q", got)
		}
		var b bytes.Buffer
		if err := c.Write(&b); err != nil {
			t.Fatal(err)
		}
		return b.Bytes()
	}
	if !bytes.Equal(draw(), draw()) {
		t.Error("two documents differ")
	}
	s := NewSetting()
	if l := s.Wrap(false, 10, "one שלום two", 200); len(l) != 1 || l[0] != "one םולש two" || s.Line("a跳") != "a◊" || string(s.Missing()) != "跳" || s.Width(true, 10, "abc") <= s.Width(false, 10, "abc") {
		t.Errorf("the setting breaks lines as %q", l)
	}
	if p, ok := FindSize("Letter"); !ok || p.Width != 215.9 {
		t.Errorf("FindSize = %v", p)
	}
}
