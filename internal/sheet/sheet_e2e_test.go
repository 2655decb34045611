//go:build e2e

package sheet

import (
	"bytes"
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coldfloor/internal/paper"
	"coldfloor/sessions"
)

// tool runs a program over a file or an input and returns what it prints.
func tool(t testing.TB, stdin string, name string, args ...string) string {
	t.Helper()
	c := exec.Command(name, args...)
	c.Stdin = strings.NewReader(stdin)
	var out, errs bytes.Buffer
	c.Stdout, c.Stderr = &out, &errs
	if err := c.Run(); err != nil {
		t.Fatalf("%s: %v\n%s", name, err, errs.String())
	}
	return out.String()
}

// squeezed returns text without its spaces and hyphens, which a reader of
// columns may place as it likes.
func squeezed(text string) string {
	return strings.NewReplacer(" ", "", "\n", "", "\f", "", "-", "").Replace(text)
}

// Poppler, which shares no code with the writer, finds every text of every
// built-in session, the fonts embedded, the number of pages, and no word off
// the page.
func TestPopplerReadsThePDF(t *testing.T) {
	for _, b := range sessions.Builtins() {
		for _, on := range paper.Sizes {
			t.Run(b.Name+" on "+on.Name, func(t *testing.T) {
				d := builtin(t, b)
				file := filepath.Join(t.TempDir(), "sheet.pdf")
				printed, err := d.WriteFile(file, PDF, on, false, false)
				if err != nil || len(printed.Missing) > 0 {
					t.Fatal(printed, err)
				}
				checkInfo(t, file, printed.Pages, on)
				checkFonts(t, file)
				checkWordsOnPage(t, file, on)
				checkTexts(t, d, file)
			})
		}
	}
}

func checkInfo(t *testing.T, file string, pages int, on paper.Size) {
	info := tool(t, "", "pdfinfo", file)
	if !regexp.MustCompile(`(?m)^Pages:\s+` + strconv.Itoa(pages) + `$`).MatchString(info) {
		t.Errorf("not %d pages:\n%s", pages, info)
	}
	m := regexp.MustCompile(`(?m)^Page size:\s+([\d.]+) x ([\d.]+) pts`).FindStringSubmatch(info)
	w, _ := strconv.ParseFloat(m[1], 64)
	h, _ := strconv.ParseFloat(m[2], 64)
	if abs := (w*paper.Point - on.Width) * (h*paper.Point - on.Height); abs > 0.1 || abs < -0.1 {
		t.Errorf("pages of %s", m[0])
	}
}

func checkFonts(t *testing.T, file string) {
	lines := strings.Split(strings.TrimSpace(tool(t, "", "pdffonts", file)), "\n")[2:]
	if len(lines) != 2 {
		t.Errorf("%d fonts, want 2", len(lines))
	}
	for _, l := range lines {
		// name type encoding emb sub uni object
		if f := strings.Fields(l); f[len(f)-5] != "yes" || f[len(f)-3] != "yes" {
			t.Errorf("not embedded, or not readable as text: %s", l)
		}
	}
}

// checkWordsOnPage holds every word, as Poppler measures it, to the printed
// area.
func checkWordsOnPage(t *testing.T, file string, on paper.Size) {
	box := regexp.MustCompile(`<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*)</word>`)
	words := box.FindAllStringSubmatch(tool(t, "", "pdftotext", "-bbox", file, "-"), -1)
	if len(words) < 100 {
		t.Fatalf("only %d words", len(words))
	}
	const eps = 0.1
	for _, w := range words {
		var at [4]float64
		for i := range at {
			pt, _ := strconv.ParseFloat(w[i+1], 64)
			at[i] = pt * paper.Point
		}
		if at[0] < margin-eps || at[1] < margin-3 || at[2] > on.Width-margin+eps || at[3] > on.Height-margin+3 {
			t.Errorf("%q is off the printed area: %.1f", w[5], at)
		}
	}
}

// checkTexts looks for what a player reads, in the order in which Poppler
// reads the cells.
func checkTexts(t *testing.T, d *Doc, file string) {
	raw := squeezed(tool(t, "", "pdftotext", "-raw", file, "-"))
	layout := tool(t, "", "pdftotext", "-layout", file, "-")
	want := append([]string{d.Title, d.About, d.Total.String(), d.Effort.Question, "somewhat hard"}, d.Cautions...)
	for _, b := range d.Blocks {
		want = append(want, b.Name(), strings.Join(b.Facts, " · "), b.Before.String())
		for _, r := range b.Rows {
			want = append(want, r.ID+r.Name, strings.Join(r.Cues, " · "), r.Dose.String(), strings.Join(r.Details, ", "), r.Then.Figure.String(), r.Then.Label)
			for _, n := range r.Notes {
				want = append(want, n.Text)
			}
		}
	}
	for _, text := range want {
		if !strings.Contains(raw, squeezed(text)) {
			t.Errorf("not found: %q", text)
		}
	}
	for _, b := range d.Blocks {
		for _, r := range b.Rows {
			if r.Then.Large && !strings.Contains(strings.Join(strings.Fields(layout), " "), r.Then.Figure.String()) {
				t.Errorf("the rest %s is not found", r.Then.Figure)
			}
		}
	}
}

// Accents and other scripts come back as they were written, Hebrew in its
// reading order.
func TestPopplerReadsEveryScript(t *testing.T) {
	texts := []string{"Ausfallschritt, größer", "Bật nhảy hai chân", "Μαλακή προσγείωση", "Пружинистые прыжки", "Żółw, čeština, Şükür", "כתפיים"}
	d := docWith("x")
	for i, text := range texts {
		d.Blocks[0].Rows[0].Notes = append(d.Blocks[0].Rows[0].Notes, Note{fmt.Sprint("Text ", i), text})
	}
	file := filepath.Join(t.TempDir(), "sheet.pdf")
	if printed, err := d.WriteFile(file, PDF, paper.Sizes[0], false, false); err != nil || len(printed.Missing) > 0 {
		t.Fatal(printed, err)
	}
	raw := squeezed(tool(t, "", "pdftotext", "-raw", file, "-"))
	for _, text := range texts {
		if !strings.Contains(raw, squeezed(text)) {
			t.Errorf("%q is not found in\n%s", text, raw)
		}
	}
}

// The reference reader of GitHub's Markdown shows each text as it was written,
// and finds the same table whatever the texts hold.
func TestCmarkShowsTheTexts(t *testing.T) {
	tags := regexp.MustCompile(`<[^>]*>`)
	read := func(d *Doc) string {
		var md bytes.Buffer
		if err := d.Markdown(&md); err != nil {
			t.Fatal(err)
		}
		return tool(t, md.String(), "cmark-gfm", "--unsafe", "-e", "table", "-e", "autolink", "-e", "strikethrough")
	}
	plain := tags.FindAllString(read(docWith("x")), -1)
	rapid.Check(t, func(t *rapid.T) {
		text := hostile().Draw(t, "text")
		page := read(docWith(text))
		found := tags.FindAllString(page, -1)
		if strings.Join(found, "") != strings.Join(plain, "") && !strings.Contains(text, "x@y") {
			t.Fatalf("%q makes %v", text, found)
		}
		shown := html.UnescapeString(tags.ReplaceAllString(page, ""))
		name := docWith(text).Blocks[0].Rows[0].Name
		if n := strings.Count(strings.Join(strings.Fields(shown), " "), strings.Join(strings.Fields(name), " ")); n < 10 {
			t.Fatalf("%q is shown %d times in\n%s", name, n, shown)
		}
	})
}

// The pages are drawn without a complaint, and there is ink in black and white
// only.
func TestPopplerDrawsInBlackAndWhite(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "sheet.pdf")
	if _, err := superset(t).WriteFile(file, PDF, paper.Sizes[0], false, false); err != nil {
		t.Fatal(err)
	}
	tool(t, "", "pdftoppm", "-r", "40", "-aa", "no", "-aaVector", "no", "-singlefile", file, filepath.Join(dir, "page"))
	src, err := os.ReadFile(filepath.Join(dir, "page.ppm"))
	if err != nil {
		t.Fatal(err)
	}
	var w, h, top int
	if _, err := fmt.Sscanf(string(src), "P6\n%d %d\n%d\n", &w, &h, &top); err != nil {
		t.Fatal(err)
	}
	ink := 0
	for _, v := range src[len(src)-3*w*h:] {
		switch v {
		case 0:
			ink++
		case 255:
		default:
			t.Fatalf("a colour or a grey: %d", v)
		}
	}
	if share := float64(ink) / float64(3*w*h); share < 0.02 || share > 0.2 {
		t.Errorf("%.1f %% of the page is ink", share*100)
	}
}

// On the sheet for the wall every capital and figure is 9.31 mm high at least,
// as Poppler measures the type, every block has pages of its own, no word of a
// name is broken, and name, dose, side and rest of every exercise are there.
func TestLargeIsReadFromTwoMetres(t *testing.T) {
	word := regexp.MustCompile(`<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*)</word>`)
	for _, b := range sessions.Builtins() {
		d := builtin(t, b)
		file := filepath.Join(t.TempDir(), "wall.pdf")
		printed, err := d.WriteFile(file, PDF, paper.Sizes[0], true, false)
		if err != nil || printed.Pages < len(d.Blocks) {
			t.Fatalf("%s: %d pages for %d blocks, %v", b.Name, printed.Pages, len(d.Blocks), err)
		}
		page, pages := "", strings.Split(tool(t, "", "pdftotext", "-bbox", file, "-"), "</page>")
		var raw []string
		for i, p := range pages[:len(pages)-1] {
			var body []string
			for _, w := range word.FindAllStringSubmatch(p, -1) {
				top, _ := strconv.ParseFloat(w[2], 64)
				foot, _ := strconv.ParseFloat(w[4], 64)
				if top*paper.Point > paper.Sizes[0].Height-margin-6 {
					continue // the foot of the page
				}
				// Poppler's box is as high as the typeface's ascent and descent.
				if high := (foot - top) * paper.Point * paper.CapHeight / (paper.Ascent + paper.Descent); high < 9.31 {
					t.Errorf("%s, page %d: %q is %.2f mm high", b.Name, i+1, w[5], high)
				}
				body = append(body, html.UnescapeString(w[5]))
			}
			page = squeezed(strings.Join(body, ""))
			raw = append(raw, page)
		}
		all := strings.Join(raw, "")
		for _, block := range d.Blocks {
			for _, r := range block.Rows {
				for _, text := range []string{r.ID + r.Name, r.Dose.String(), r.Side, r.Then.String(), r.Then.Label} {
					if !strings.Contains(all, squeezed(capitals(text))) {
						t.Errorf("%s: %q is not found", b.Name, text)
					}
				}
			}
		}
	}
}
