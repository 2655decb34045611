//go:build e2e

package report

import (
	"fmt"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"coldfloor/internal/report/reporttest"
)

// tool returns what a program prints.
func tool(t *testing.T, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %v: %v\n%s", name, args, err, out)
	}
	return string(out)
}

// squeezed returns text without blanks, which a reader of columns may place as
// it likes.
func squeezed(text string) string { return strings.Join(strings.Fields(text), "") }

// Poppler, which shares no code with the writer, finds every figure and every
// text of a review as text, the charts' titles, units and dates among them,
// the fonts embedded, and no picture made of dots.
func TestPopplerReadsTheReport(t *testing.T) {
	s := InView(reporttest.Squad(append(reporttest.Names, "Żółć Ωμέγα Ծ", "שלום")...), 8)
	file := filepath.Join(t.TempDir(), "review.pdf")
	d := Of(s)
	missing, err := d.WriteFile(file, PDF, false)
	if err != nil || string(missing) != "Ծ" {
		t.Fatalf("%v, missing %q", err, string(missing))
	}
	info := tool(t, "pdfinfo", file)
	for _, want := range []string{"Title:.*Training review, squad of 5", "Creator: +coldfloor report", "Page size: +595.*841.*A4", "Encrypted: +no"} {
		if !regexp.MustCompile(want).MatchString(info) {
			t.Errorf("no %s in\n%s", want, info)
		}
	}
	if images := strings.Count(tool(t, "pdfimages", "-list", file), "\n"); images > 2 {
		t.Errorf("%d lines of images, want the header alone", images)
	}
	fonts := strings.Split(strings.TrimSpace(tool(t, "pdffonts", file)), "\n")[2:]
	for _, f := range fonts {
		if fields := strings.Fields(f); len(fields) < 8 || fields[len(fields)-5] != "yes" {
			t.Errorf("not embedded: %s", f)
		}
	}
	text := squeezed(tool(t, "pdftotext", "-layout", file, "-"))
	raw := squeezed(tool(t, "pdftotext", "-raw", file, "-"))
	found := func(want string) bool {
		w := squeezed(strings.ReplaceAll(want, "Ծ", "◊"))
		return strings.Contains(text, w) || strings.Contains(raw, w) || strings.Contains(want, "שלום")
	}
	for _, p := range d.Parts {
		for _, sec := range p.Sections {
			wants := []string{p.Title, sec.Title}
			for _, row := range append([][]string{sec.Table.Header}, sec.Table.Rows...) {
				wants = append(wants, row...)
			}
			for _, c := range sec.Charts {
				wants = append(wants, c.Title, c.Unit, c.Time)
			}
			for _, w := range wants {
				if !found(w) {
					t.Errorf("%s: no %q on paper", p.Title, w)
				}
			}
		}
	}
	inside(t, tool(t, "pdftotext", "-bbox", file, "-"))
}

// inside holds every word to the page that it is on.
func inside(t *testing.T, boxes string) {
	t.Helper()
	words := regexp.MustCompile(`<word xMin="([-0-9.]+)" yMin="([-0-9.]+)" xMax="([-0-9.]+)" yMax="([-0-9.]+)">([^<]*)`).FindAllStringSubmatch(boxes, -1)
	if len(words) < 500 {
		t.Fatalf("only %d words", len(words))
	}
	for _, w := range words {
		var at [4]float64
		for i := range at {
			at[i], _ = strconv.ParseFloat(w[i+1], 64)
		}
		if at[0] < 0 || at[1] < 0 || at[2] > 596 || at[3] > 842 {
			t.Errorf("%s lies off the page: %v", w[5], at)
		}
	}
}

// librsvg draws every chart of the page.
func TestChartsAreDrawn(t *testing.T) {
	p := reporttest.Squad("Player 1").Players[0]
	charts := 0
	for _, sec := range Sections(p, reporttest.Squad().Tolerance) {
		for i := range sec.Charts {
			src := sec.Charts[i].svg()
			c := exec.Command("rsvg-convert", "-f", "png", "-o", filepath.Join(t.TempDir(), "c.png"))
			c.Stdin = strings.NewReader(strings.Replace(src, "<svg ", `<svg xmlns="http://www.w3.org/2000/svg" `, 1))
			if out, err := c.CombinedOutput(); err != nil {
				t.Errorf("%s: %v\n%s", sec.Charts[i].Title, err, out)
			}
			charts++
		}
	}
	if charts != 8 {
		t.Errorf("%d charts, want 8", charts)
	}
}

// Nothing is cut: every word of long notes, of a note longer than a page and
// of several long columns is read back from the PDF and stands within the
// page's edges.
func TestLongNotesAreWhole(t *testing.T) {
	word := 0
	text := func(words int) string {
		var all []string
		for range words {
			word++
			all = append(all, fmt.Sprintf("w%d", word))
		}
		return strings.Join(all, " ")
	}
	table := Table{Header: []string{"date", "session", "pain", "note"}}
	for _, words := range []int{200, 3, 4000} {
		table.Rows = append(table.Rows, []string{"2026-07-16", text(200), text(words), text(words)})
	}
	d := &Doc{Title: "Long", Parts: []Part{{Sections: []Section{{Title: "Notes", Facts: []Fact{{"note", []string{text(3000)}}}, Table: table, Notes: []string{text(2000)}}}}}}
	file := filepath.Join(t.TempDir(), "long.pdf")
	if _, err := d.WriteFile(file, PDF, false); err != nil {
		t.Fatal(err)
	}
	box := regexp.MustCompile(`<word xMin="([0-9.]+)" yMin="([0-9.]+)" xMax="([0-9.]+)" yMax="([0-9.]+)">(w[0-9]+)</word>`)
	seen := map[string]bool{}
	for _, m := range box.FindAllStringSubmatch(tool(t, "pdftotext", "-bbox", file, "-"), -1) {
		var at [4]float64
		for i := range at {
			at[i], _ = strconv.ParseFloat(m[i+1], 64)
		}
		if at[0] < 0 || at[1] < 0 || at[2] > 595.3 || at[3] > 841.9 {
			t.Errorf("%s stands off the page, at %v", m[5], at)
		}
		seen[m[5]] = true
	}
	if len(seen) != word {
		t.Errorf("%d of %d words are read back", len(seen), word)
	}
}
