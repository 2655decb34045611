package plain

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"github.com/adrg/xdg"
	"github.com/rogpeppe/go-internal/txtar"

	"coldfloor/internal/journal/journaltest"
	"coldfloor/internal/run"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/internal/text/texttest"
	"coldfloor/internal/transcripttest"
)

// TestTranscripts plays whole starts of the program. Each file under testdata
// holds a session and, for each start in turn, a script and what was said; all
// starts of a file share a journal and a home. A script's first line may set
// options; each further line is a text to wait for, in quotes, a time to let
// pass then, and what is typed: a line, ^D (the keyboard is gone), ^C or HUP
// (the signals). A script without such lines has no keyboard. At the end stands
// what the journal then holds.
func TestTranscripts(t *testing.T) {
	transcripttest.Play(t, func(t *testing.T, ar *txtar.Archive) *txtar.Archive { return played(t, ar, &text.English) })
}

// played returns a transcript with what was said in a language now.
func played(t *testing.T, ar *txtar.Archive, l *text.Language) *txtar.Archive {
	t.Cleanup(xdg.Reload) // after the environment is as it was
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	xdg.Reload()
	path := filepath.Join(t.TempDir(), "journal.jsonl")
	session := ""
	got := &txtar.Archive{Comment: ar.Comment}
	synctest.Test(t, func(t *testing.T) {
		for _, f := range ar.Files {
			switch {
			case f.Name == "session":
				session = string(f.Data)
				got.Files = append(got.Files, f)
			case strings.HasPrefix(f.Name, "start"):
				got.Files = append(got.Files, f, txtar.File{Name: "said" + f.Name[len("start"):], Data: start(t, session, path, string(f.Data), l)})
			}
		}
	})
	got.Files = append(got.Files, txtar.File{Name: "journal", Data: journaltest.Holds(t, path)})
	return got
}

var scripted = regexp.MustCompile(`^"([^"]*)" (\S+) ?(.*)$`)

// start is one start of the program by a script; it returns what was said.
func start(t *testing.T, session, path, script string, l *text.Language) []byte {
	o := run.Options{Language: l, Plan: parse(t, session), Journal: path, Clock: newBubble, Speed: 1, NoKeys: true}
	out := newOutput()
	lines := Options{Out: out, Err: out}
	ctx, cancel := context.WithCancelCause(t.Context())
	defer cancel(nil)
	y := &typist{out: out, cancel: cancel}
	for _, line := range strings.Split(strings.TrimSpace(script), "\n") {
		if words, ok := strings.CutPrefix(line, "options "); ok {
			options(t, words, &o, &lines)
			continue
		}
		m := scripted.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		after, err := time.ParseDuration(m[2])
		if err != nil {
			t.Fatal(err)
		}
		typed := m[3]
		if typed == text.English.Screen.NoResult {
			typed = l.Screen.NoResult
		}
		y.script = append(y.script, cue{m[1], after, typed})
		o.NoKeys, lines.In = false, y
	}
	lines.Flow = run.NewFlow(o)
	if err := errors.Join(Run(ctx, lines), lines.Flow.Close()); err != nil {
		fmt.Fprintln(out, "error:", err)
	}
	return []byte(strings.ReplaceAll(out.String(), path, "JOURNAL"))
}

// options sets what a script's first line says.
func options(t *testing.T, words string, o *run.Options, lines *Options) {
	for _, w := range strings.Fields(words) {
		name, value, _ := strings.Cut(w, "=")
		switch name {
		case "by-hand":
			o.ByHand = true
		case "no-log":
			o.Journal = ""
		case "stamps":
			lines.Stamps = true
		case "speed":
			fmt.Sscan(value, &o.Speed)
		case "player":
			o.Player = settings.Player{Name: value}
		case "later":
			d, err := time.ParseDuration(value)
			if err != nil {
				t.Fatal(err)
			}
			time.Sleep(d)
		default:
			t.Fatalf("no option %q", w)
		}
	}
}

// TestLanguage plays the same starts in a language whose every letter is marked:
// what a player reads has no word that is neither the language's nor the
// session's, nor was typed.
func TestLanguage(t *testing.T) {
	transcripttest.Each(t, func(t *testing.T, ar *txtar.Archive) {
		known := string(ar.Files[0].Data) + "JOURNAL"
		for _, f := range played(t, ar, texttest.Marked()).Files {
			for line := range strings.Lines(string(f.Data)) {
				if m := scripted.FindStringSubmatch(strings.TrimSpace(line)); m != nil && strings.HasPrefix(f.Name, "start") {
					known += " " + m[3]
				}
			}
			if !strings.HasPrefix(f.Name, "said") {
				continue
			}
			if words := texttest.Unmarked(string(f.Data), known); len(words) > 0 {
				t.Errorf("%s: %q in\n%s", f.Name, words, f.Data)
			}
		}
	})
}
