package report

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"coldfloor/internal/fault"
	"coldfloor/internal/measured"
	"coldfloor/internal/report/reporttest"
	"coldfloor/internal/review"
	"coldfloor/internal/safetext"
	"coldfloor/internal/wholefile"
)

var update = flag.Bool("update", false, "rewrite the golden files; read them before you commit")

// golden compares with a file under testdata.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs; run with -update and read it. Got:\n%.3000s", name, got)
	}
}

func textOf(t *testing.T, s *review.Squad, whole bool) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Of(s).Text(&b, whole); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func page(t *testing.T, s *review.Squad) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Of(s).HTML(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestGolden(t *testing.T) {
	one := InView(reporttest.Squad("Player 1"), 8)
	golden(t, "player.txt", textOf(t, one, false))
	golden(t, "player.html", page(t, one))
	src, err := json.MarshalIndent(JSONOf(one), "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "player.json", append(src, '\n'))
	all := InView(reporttest.Squad(reporttest.Names...), 3)
	golden(t, "squad.txt", textOf(t, all, false))
	golden(t, "squad-whole.txt", textOf(t, all, true))
	golden(t, "empty.txt", textOf(t, reporttest.Squad(), false))
}

// A page is read as XML except for its void elements and its doctype, so that
// every element is known to be closed; it names no other file or machine, and
// nothing on it runs.
func TestPageStandsAlone(t *testing.T) {
	squad := reporttest.Squad("Player 1", "</title><script>alert(1)</script>", "a\u202eb\x1b[2J")
	squad.Players[0].Measured = measured.Of([]measured.Result{{Name: "<script>\u202e\x1b jump", Measure: "distance", Way: "<link", Value: new(float64)}})
	src := string(page(t, squad))
	for _, outside := range []string{"http:", "https:", "src=", "@import", "url(", "<script", "<link", "\u202e", "\x1b"} {
		if i := strings.Index(src, outside); i >= 0 {
			t.Errorf("the page holds %q: %q", outside, src[i:min(len(src), i+60)])
		}
	}
	body := src[strings.Index(src, "<body"):strings.Index(src, "</html>")]
	body = strings.ReplaceAll(body, "<br>", "<br/>")
	d := xml.NewDecoder(strings.NewReader(body))
	d.Entity = xml.HTMLEntity
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
	}
	if charts := strings.Count(src, `<svg viewBox="0 0 246 150" role="img" aria-label=`); charts != 3*8+1 {
		t.Errorf("%d charts, want eight of each player and one of a test", charts)
	}
}

// Every link of the squad's table leads to a part of the page.
func TestLinksLeadSomewhere(t *testing.T) {
	src := string(page(t, reporttest.Squad(reporttest.Names...)))
	links := regexp.MustCompile(`href="#([^"]+)"`).FindAllStringSubmatch(src, -1)
	if len(links) != 6 {
		t.Errorf("%d links, want one to each player and one back", len(links))
	}
	for _, l := range links {
		if !strings.Contains(src, `id="`+l[1]+`"`) {
			t.Errorf("nothing is called %s", l[1])
		}
	}
}

// Weeks in view change what is listed, and no figure of those weeks: the
// averages begin long before.
func TestWeeksInViewChangeNoFigure(t *testing.T) {
	all := reporttest.Squad("Player 1")
	long, short := all.Players[0], InView(all, 3).Players[0]
	if len(short.Weeks) != 3 || short.Sessions != long.Sessions {
		t.Fatalf("%d weeks, %d sessions of %d", len(short.Weeks), short.Sessions, long.Sessions)
	}
	a, _ := long.LastDay()
	b, _ := short.LastDay()
	if a != b {
		t.Errorf("the last day is %+v in a short view, %+v in a long one", b, a)
	}
	from := short.Weeks[0].Monday.Format(dateOnly)
	if short.Days[0].Date.Format(dateOnly) != from {
		t.Errorf("days begin at %v, weeks at %s", short.Days[0].Date, from)
	}
	for _, s := range short.Recent {
		if s.Start.Format(dateOnly) < from {
			t.Errorf("a session of %v is listed", s.Start)
		}
	}
	if n := len(short.Recent); long.Recent[n].Start.Format(dateOnly) >= from {
		t.Errorf("a session of %v is not listed", long.Recent[n].Start)
	}
}

// What a pain note says stands word for word in every form.
func TestPainIsNeverLost(t *testing.T) {
	s := reporttest.Squad(reporttest.Names...)
	told := 0
	for _, p := range s.Players {
		told += p.Painful
	}
	for form, src := range map[string][]byte{"text": textOf(t, s, false), "whole text": textOf(t, s, true), "page": page(t, s)} {
		if n := bytes.Count(src, []byte("on landing, from the third round on")); n < told || told < 5 {
			t.Errorf("%s: %d notes of %d", form, n, told)
		}
	}
}

// Pain comes before every other figure of a player.
func TestPainComesFirst(t *testing.T) {
	for _, p := range reporttest.Squad(reporttest.Names...).Players {
		if first := Overview(p).Facts[0]; first.Name != "pain" {
			t.Errorf("%s begins with %s", p.Name, first.Name)
		}
	}
}

// Whatever a player is called, no line of text is led astray.
func TestTextIsSafe(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := reporttest.Squad("Player 1", rapid.String().Draw(rt, "name"))
		var b bytes.Buffer
		if err := Of(s).Text(&b, false); err != nil {
			rt.Fatal(err)
		}
		for _, l := range strings.Split(b.String(), "\n") {
			if safetext.Clean(l) != l {
				rt.Fatalf("%q is not safe", l)
			}
		}
	})
}

func TestScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-1e5, 0).Draw(t, "low")
		high := low + rapid.Float64Range(1e-3, 1e6).Draw(t, "span")
		n := rapid.IntRange(1, 10).Draw(t, "n")
		at := Scale(low, high, n)
		if len(at) < 2 || at[0] > low+1e-6*(high-low) || at[len(at)-1] < high-1e-6*(high-low) || len(at) > n+3 {
			t.Fatalf("%v to %v in %d: %v", low, high, n, at)
		}
	})
	if got := strings.Join(Marks(Scale(0, 1, 4)), " "); got != "0.00 0.25 0.50 0.75 1.00" {
		t.Errorf("got %s", got)
	}
	if got := strings.Join(Marks(Scale(-8, 9, 4)), " "); got != "-10 -5 0 5 10" {
		t.Errorf("got %s", got)
	}
}

func TestPDF(t *testing.T) {
	write := func() []byte {
		var b bytes.Buffer
		missing, err := Of(reporttest.Squad("Player 1", "Ωμέγα 选手")).PDF(&b)
		if err != nil {
			t.Fatal(err)
		}
		if string(missing) != "手选" {
			t.Errorf("missing %q", string(missing))
		}
		return b.Bytes()
	}
	src := write()
	if !bytes.HasPrefix(src, []byte("%PDF-")) || !bytes.Equal(src, write()) {
		t.Error("not a PDF, or not the same twice")
	}
}

func TestWriteFile(t *testing.T) {
	d := Of(reporttest.Squad("Player 1"))
	for _, name := range []string{"a.pdf", "a.html"} {
		file := filepath.Join(t.TempDir(), name)
		format, ok := FormatOf(file)
		if !ok {
			t.Fatal(name)
		}
		for range 2 { // the second time over the first
			if _, err := d.WriteFile(file, format, false); err != nil {
				t.Fatal(err)
			}
		}
		if info, err := os.Stat(file); err != nil || info.Mode().Perm()&0o077 != 0 {
			t.Errorf("%v, %v: others can read it", info.Mode(), err)
		}
		if err := os.WriteFile(file, []byte("a letter"), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := d.WriteFile(file, format, false); !errors.Is(err, wholefile.ErrThere) || !strings.Contains(fault.Text(err), "hint: ") {
			t.Errorf("over a letter: %v", err)
		}
		if src, _ := os.ReadFile(file); string(src) != "a letter" {
			t.Error("the letter is lost")
		}
		if _, err := d.WriteFile(file, format, true); err != nil {
			t.Error(err)
		}
	}
	if _, ok := FormatOf("review.txt"); ok {
		t.Error("a report is written as .txt")
	}
	if _, err := d.WriteFile(filepath.Join(t.TempDir(), "no", "a.pdf"), PDF, false); err == nil || !strings.Contains(fault.Text(err), "hint: make it first") {
		t.Errorf("into no folder: %v", err)
	}
}

// A long note is in every report, all of it.
func TestNothingIsCut(t *testing.T) {
	var words []string
	for i := range 200 {
		words = append(words, "w"+strconv.Itoa(i))
	}
	s := reporttest.Squad("Player 1")
	p := s.Players[0]
	p.Pain[0].Note = strings.Join(words, " ")
	for name, src := range map[string]string{"text": string(textOf(t, s, true)), "page": string(page(t, s))} {
		for _, w := range words {
			if !strings.Contains(src, w+" ") && !strings.Contains(src, w+"\n") && !strings.Contains(src, w+"<") {
				t.Errorf("the %s lacks %s", name, w)
			}
		}
	}
}

// Figures that are all 0 are figures: only if there are none is there nothing
// to show.
func TestZeroesAreShown(t *testing.T) {
	c := Chart{Kind: Spans, Spots: []Spot{{Label: "2026-01-05", Values: []float64{0, 0, 0}}}}
	if low, high, ok := c.Range(); !ok || low != 0 || high <= 0 {
		t.Errorf("rests all kept to the second are drawn from %v to %v, %v", low, high, ok)
	}
	if _, _, ok := (&Chart{Spots: []Spot{{Label: "2026-01-05"}}}).Range(); ok {
		t.Error("there is something to show of nothing")
	}
}

// TestPartsByTheirLimit: rests cut short that are marked as too many are not
// written as if they were just not.
func TestPartsByTheirLimit(t *testing.T) {
	for s, want := range map[review.Share]string{{Done: 10, Prescribed: 49}: "20.4", {Done: 10, Prescribed: 51}: "19.6", {Done: 10, Prescribed: 50}: "20", {Done: 9, Prescribed: 40}: "23"} {
		if got := bare(s, review.CutLimit); got != want {
			t.Errorf("%v is %s, want %s", s, got, want)
		}
	}
}
