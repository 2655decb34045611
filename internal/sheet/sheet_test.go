package sheet

import (
	"bytes"
	"flag"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coldfloor/internal/fault"
	"coldfloor/internal/paper"
	"coldfloor/internal/plan"
	"coldfloor/internal/text"
	"coldfloor/sessions"
	"coldfloor/sessions/sessionstest"
	"coldfloor/sessions/weeks"
)

var update = flag.Bool("update", false, "write the golden files anew")

// superset is the document of a session with one of everything.
func superset(t *testing.T) *Doc {
	t.Helper()
	o, err := weeks.Open(filepath.Join("testdata", "superset.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return Of(plan.Of(o.Session), &text.English)
}

// builtin is the document of a built-in session.
func builtin(t *testing.T, b sessions.Builtin) *Doc {
	t.Helper()
	s, err := b.Session()
	if err != nil {
		t.Fatal(err)
	}
	return Of(plan.Of(s), &text.English)
}

func TestGolden(t *testing.T) {
	d := superset(t)
	var md, page bytes.Buffer
	if err := d.Markdown(&md); err != nil {
		t.Fatal(err)
	}
	if err := d.HTML(&page, paper.Sizes[0]); err != nil {
		t.Fatal(err)
	}
	for file, got := range map[string][]byte{"superset.md": md.Bytes(), "superset.html": page.Bytes()} {
		file = filepath.Join("testdata", file)
		if *update {
			if err := os.WriteFile(file, got, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s differs (%v); see it with -update and git diff", file, err)
		}
	}
}

// The page asks for nothing: it has no address and no other file, and its script asks for none.
func TestHTMLIsSelfContained(t *testing.T) {
	var b bytes.Buffer
	if err := superset(t).HTML(&b, paper.Sizes[0]); err != nil {
		t.Fatal(err)
	}
	for _, bad := range []string{"http", "src=", "href=", "@import", "fetch", "import(", "<script ", "<link", "<b>\n", "ZgotmplZ"} {
		if strings.Contains(b.String(), bad) {
			t.Errorf("the page contains %q", bad)
		}
	}
	for _, m := range regexp.MustCompile(`url\([^)]*\)`).FindAllString(b.String(), -1) {
		if m != "url(#hatch)" {
			t.Errorf("the page asks for %s", m)
		}
	}
}

// Whatever a text holds, the page shows it and takes none of it for markup.
func TestHTMLEscapes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := hostile().Draw(t, "text")
		d := docWith(text)
		var b, plain bytes.Buffer
		if d.HTML(&b, paper.Sizes[0]) != nil || docWith("x").HTML(&plain, paper.Sizes[0]) != nil {
			t.Fatal("not written")
		}
		tags := regexp.MustCompile(`<[^>]*>`)
		if got, want := len(tags.FindAllString(b.String(), -1)), len(tags.FindAllString(plain.String(), -1)); got != want {
			t.Fatalf("%d tags, want %d", got, want)
		}
		shown := html.UnescapeString(tags.ReplaceAllString(b.String(), ""))
		if n := strings.Count(shown, strings.TrimSpace(d.Blocks[0].Rows[0].Name)); n < 5 {
			t.Fatalf("%q is shown %d times", text, n)
		}
	})
}

// docWith returns a document whose every free text is the given one.
func docWith(said string) *Doc {
	s := &sessions.Session{Title: said, For: said, LeadIn: sessions.DefaultLeadIn, Blocks: []sessions.Block{{
		Title: said, Trains: []string{said}, Rounds: 2, Rest: sessions.DefaultChange, RestAfter: sessions.DefaultChange,
		Exercises: []sessions.Exercise{{Name: said, Reps: 3, Rep: sessions.DefaultRep, Cues: []string{said}, How: said, Easier: sessions.Variant{Name: said}, Load: said}},
	}}}
	s.Blocks = append(s.Blocks, s.Blocks[0])
	return Of(plan.Of(s), &text.English)
}

// hostile draws texts that mean something to a page, a table or a printer.
func hostile() *rapid.Generator[string] {
	part := rapid.OneOf(
		rapid.SampledFrom([]string{"<b>", "</td>", "&amp;", "|", "**", "`", "```", "](", "<!--", "\"", "'", "\\", "{{.}}", "www.x.y", "https://x.y", "#", "- ", "1. ", "~~", "_a_", "x@y.z", "-->", "$x$", ":"}),
		rapid.StringMatching(`[a-zäß ]{1,12}`), rapid.SampledFrom([]string{"Жим", "Ώμος", "Nhảy", "כתף", "跳", "🦵"}))
	return rapid.Custom(func(t *rapid.T) string {
		return "x" + strings.Join(rapid.SliceOfN(part, 1, 12).Draw(t, "parts"), "") + "x"
	})
}

// A player ticks each work step of the plan in a box of its own.
func TestBoxesAreTheWorkSteps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := plan.Of(sessionstest.Draw(t))
		want := 0
		for _, s := range p.Steps {
			if s.Kind == plan.Work {
				want++
			}
		}
		got := 0
		for _, b := range Of(p, &text.English).Blocks {
			for _, r := range b.Rows {
				for _, round := range r.Rounds {
					got += len(round.Boxes)
				}
			}
		}
		if got != want {
			t.Fatalf("%d boxes, want %d", got, want)
		}
	})
}

// The parts of the strip meet end to end and sum to the times of the plan.
func TestStripIsThePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := plan.Of(sessionstest.Draw(t))
		sums, at := map[plan.Kind]float64{}, 0.0
		for _, part := range Of(p, &text.English).Strip.Parts {
			if d := part.From - at; d < -1e-9 || d > 1e-9 {
				t.Fatalf("a part starts at %v, the one before ends at %v", part.From, at)
			}
			sums[part.Kind] += part.To - part.From
			at = part.To
		}
		for kind, want := range map[plan.Kind]float64{plan.Work: p.Work.Seconds(), plan.Rest: p.Rest.Seconds(), plan.Change: p.Change.Seconds()} {
			if d := sums[kind]*p.Total.Seconds() - want; d < -1e-6 || d > 1e-6 {
				t.Fatalf("%s is off by %v s", kind, d)
			}
		}
	})
}

func TestWords(t *testing.T) {
	for n, want := range map[int]string{0: "a", 25: "z", 26: "aa", 27: "ab", 701: "zz", 702: "aaa"} {
		if got := letter(n); got != want {
			t.Errorf("letter(%d) = %q, want %q", n, got, want)
		}
	}
	for ms, want := range map[int]string{0: "0 s", 500: "0.5 s", 75_000: "75 s", 119_000: "119 s", 120_000: "2 min", 150_000: "2:30", 5_400_000: "90 min", 90_500: "90.5 s", 150_500: "2min30.5s"} {
		if got := figure(milliseconds(ms)).String(); got != want {
			t.Errorf("figure of %d ms = %q, want %q", ms, got, want)
		}
	}
}

// The words and the time of asking are those of Foster et al., J Strength Cond
// Res 2001;15:109–115.
func TestEffortAsksInFostersWords(t *testing.T) {
	e := effortAsked(&text.English)
	want := "0 rest, 1 very very easy, 2 easy, 3 moderate, 4 somewhat hard, 5 hard, 6 , 7 very hard, 8 , 9 , 10 maximal"
	var got []string
	for _, g := range e.Scale {
		got = append(got, g.Number+" "+g.Words)
	}
	if strings.Join(got, ", ") != want || !strings.Contains(e.Question, "30 minutes after the end") {
		t.Errorf("%s %v", e.Question, got)
	}
}

func TestFormatOf(t *testing.T) {
	for file, want := range map[string]Format{"a.pdf": PDF, "b/a.PDF": PDF, "a.html": HTML, "a.htm": HTML, "a.md": Markdown} {
		if got, ok := FormatOf(file); !ok || got != want {
			t.Errorf("FormatOf(%q) = %q, %v", file, got, ok)
		}
	}
	for _, file := range []string{"", "pdf", "a.txt", "a.pdf.gz", "a."} {
		if got, ok := FormatOf(file); ok {
			t.Errorf("FormatOf(%q) = %q", file, got)
		}
	}
}

func TestWriteFile(t *testing.T) {
	d, dir := superset(t), t.TempDir()
	for _, format := range []Format{PDF, HTML, Markdown} {
		file := filepath.Join(dir, "sheet"+string(format))
		for range 2 { // the second replaces the first
			if _, err := d.WriteFile(file, format, paper.Sizes[0], false, false); err != nil {
				t.Fatal(err)
			}
		}
		if err := os.WriteFile(file, []byte("mine, about coldfloor sheet"), 0o644); err != nil {
			t.Fatal(err)
		}
		if _, err := d.WriteFile(file, format, paper.Sizes[0], false, false); err == nil || !strings.Contains(err.Error(), "not a sheet") {
			t.Errorf("%s: another's file is replaced: %v", format, err)
		}
		if got, _ := os.ReadFile(file); string(got) != "mine, about coldfloor sheet" {
			t.Errorf("%s: another's file is touched", format)
		}
		if _, err := d.WriteFile(file, format, paper.Sizes[0], false, true); err != nil {
			t.Error(err)
		}
	}
	if _, err := d.WriteFile(filepath.Join(dir, "no", "a.md"), Markdown, paper.Sizes[0], false, false); err == nil || !strings.Contains(fault.Text(err), "hint: ") {
		t.Errorf("a folder that is missing: %v", err)
	}
	if _, err := d.WriteFile(dir, Markdown, paper.Sizes[0], false, false); err == nil {
		t.Error("a folder is replaced")
	}
}

func ExampleDoc() {
	o, err := weeks.Open("ten-minutes")
	if err != nil {
		fmt.Println(err)
		return
	}
	d := Of(plan.Of(o.Session), &text.English)
	row := d.Blocks[1].Rows[3]
	fmt.Println(row.ID, row.Name, row.Dose, row.Side, row.Then.Figure, row.Then.Label)
	// Output: 2d Side plank 15 s each side 45 s between rounds
}
