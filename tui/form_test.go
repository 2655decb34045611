package tui

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/rogpeppe/go-internal/txtar"

	"coldfloor/internal/journal/journaltest"
	"coldfloor/internal/run"
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
