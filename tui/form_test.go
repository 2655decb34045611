package tui

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"
	"github.com/rogpeppe/go-internal/txtar"

	"coldfloor/internal/journal/journaltest"
	"coldfloor/internal/run"
	"coldfloor/internal/text"
	"coldfloor/tui/glyph"
)

// TestForm fills in the form after a run. Each file under testdata/form holds
// what is pressed, and then what the form shows after each line of it and what
// stands in the journal at the end. What stands in quotes is typed. With "stop"
// in a part "before" the run is stopped at its second exercise.
func TestForm(t *testing.T) {
	files, err := filepath.Glob("testdata/form/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatalf("no transcripts: %v", err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) { fillIn(t, file) })
	}
}

func fillIn(t *testing.T, file string) {
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	ar := txtar.Parse(want)
	got := txtar.Archive{Comment: ar.Comment}
	log := filepath.Join(t.TempDir(), "journal.jsonl")
	p := newProgram(t, run.Options{Journal: log, Plan: evening(t)})
	stopped := false
	for _, f := range ar.Files {
		switch f.Name {
		case "before":
			stopped = string(f.Data) == "stop\n"
			got.Files = append(got.Files, f)
		case "keys":
			toForm(p, stopped)
			got.Files = append(got.Files, f, txtar.File{Name: "form", Data: p.fill(string(f.Data))})
		}
	}
	p.close()
	got.Files = append(got.Files, txtar.File{Name: "journal", Data: ratingsOnly(journaltest.Holds(t, log))})
	text := txtar.Format(&got)
	if bytes.Equal(text, want) {
		return
	}
	if !*update {
		t.Errorf("it differs; got\n%s", text)
	} else if err := os.WriteFile(file, text, 0o644); err != nil {
		t.Fatal(err)
	}
}

// toForm takes the run to its end, or stops it at its second exercise, and goes
// on to the form.
func toForm(p *program, stopped bool) {
	if stopped {
		for p.app.run.run.View().Step < stepLeft {
			p.pass(time.Second)
		}
		p.keys("q", "q")
		p.await("Effort")
		return
	}
	p.toEnd()
	p.clock.now += time.Minute
	p.keys("x")
	p.await("Effort")
}

// presses matches a key, or a text in quotes that is typed.
var presses = regexp.MustCompile(`"[^"]*"|\S+`)

// fill presses the keys of each line, and returns what is seen after each.
func (p *program) fill(keys string) []byte {
	var out bytes.Buffer
	for line := range strings.Lines(keys) {
		fmt.Fprint(&out, "> ", line)
		for _, k := range presses.FindAllString(line, -1) {
			if typed, ok := strings.CutPrefix(k, `"`); ok {
				p.keys(strings.Split(strings.TrimSuffix(typed, `"`), "")...)
				continue
			}
			p.keys(k)
		}
		fmt.Fprint(&out, p.seen())
	}
	return out.Bytes()
}

// seen returns the lines that are on the screen, except blank ones and
// large letters, which say the line at the cursor once more.
func (p *program) seen() string {
	if p.quit {
		return "the program ends\n"
	}
	var lines strings.Builder
	for l := range strings.Lines(ansi.Strip(p.app.View())) {
		if l = strings.TrimRight(l, " \n"); l != "" && !strings.ContainsAny(l, "█▀▄▌▐") {
			lines.WriteString(l + "\n")
		}
	}
	return lines.String()
}

// ratingsOnly leaves out what stands below each run.
func ratingsOnly(holds []byte) []byte {
	var out []byte
	for line := range bytes.Lines(holds) {
		if !bytes.HasPrefix(line, []byte(" ")) {
			out = append(out, line...)
		}
	}
	return out
}

// The effort's figures stand beside their words in every window and language.
func TestScaleIsNotTornApart(t *testing.T) {
	for _, code := range text.Codes() {
		s := testStyle(termenv.Ascii, glyph.Quadrant)
		s.lang = text.In(code)
		blocks := run.Prescribed(evening(t))
		m := newFinishScreen(blocks, make([]int, len(blocks)), "done", s)
		for _, size := range sizes {
			view := m.resized(size.width, size.height).View()
			for _, part := range s.lang.Form.Scale() {
				if !strings.Contains(view, part) && !strings.Contains(view, "█") {
					t.Errorf("%q is broken at %d×%d:\n%s", part, size.width, size.height, view)
				}
			}
		}
	}
}

// Every key that the foot names at a line of the form does something there, in
// every language, and yes and no are answered by their own first letters.
func TestKeysOfTheForm(t *testing.T) {
	for _, code := range text.Codes() {
		s := testStyle(termenv.Ascii, glyph.Quadrant)
		s.lang = text.In(code)
		blocks := run.Prescribed(evening(t))
		form := newFinishScreen(blocks, make([]int, len(blocks)), "done", s).resized(80, 24)
		form.rounds, form.rpe, form.pain = slices.Repeat([]int{1}, len(blocks)), 5, yes // each can be changed, and the line for the pain's place is there
		for at := range len(form.entries()) {
			form.at = 0
			for form.at < at {
				form, _ = form.move(1)
			}
			for _, b := range form.keys.at(form.line()) {
				k := b.Keys()[0]
				same := at == 0 && k == "up" || k == form.keys.Yes.Keys()[0] // it is so already
				if after, cmd := form.Update(keyMsg(k)); after.View() == form.View() && cmd == nil && !same {
					t.Errorf("%s: %q does nothing at line %d:\n%s", code, k, at, form.View())
				}
				if !strings.Contains(form.View(), b.Help().Key+" "+b.Help().Desc) {
					t.Errorf("%s: %q is not shown at line %d:\n%s", code, k, at, form.View())
				}
			}
		}
		form.pain, form.at = notSaid, len(form.rounds)+linePain
		for answer, want := range map[string]int{s.lang.Form.Yes: yes, s.lang.Form.No: no} {
			if after, _ := form.Update(keyMsg(answer[:1])); after.pain != want {
				t.Errorf("%s: %q does not answer %s", code, answer[:1], answer)
			}
		}
	}
}
