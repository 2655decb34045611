package voice

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/sessions"
	"coldfloor/sound"
)

// speaksAs is the variable that makes the test's own program a speech program,
// and says how it behaves: "well", or "broken".
const speaksAs = "COLDFLOOR_TEST_SPEAKS"

func TestMain(m *testing.M) {
	if how := os.Getenv(speaksAs); how != "" {
		os.Exit(speak(how))
	}
	os.Exit(m.Run())
}

// speak is a speech program: it takes the text from standard input and writes
// 10 ms of sound for each of its letters. It notes the language and the text.
func speak(how string) int {
	if how == "broken" {
		fmt.Fprintln(os.Stderr, "no such voice")
		return 1
	}
	text, err := io.ReadAll(os.Stdin)
	if err != nil {
		return 2
	}
	out := os.Args[slices.Index(os.Args, "-w")+1]
	if err := os.WriteFile(out, spoken(22050, 1, 16, 220*len(text)), 0o600); err != nil {
		return 3
	}
	log, err := os.OpenFile(os.Getenv(speaksAs+"_LOG"), os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o600)
	if err != nil {
		return 4
	}
	defer log.Close()
	fmt.Fprintf(log, "%s: %s\n", os.Args[slices.Index(os.Args, "-v")+1], text)
	return 0
}

// withSpeech makes the test's own program the only speech program there is. It
// returns the file in which it notes what it says.
func withSpeech(t *testing.T, how string) (log string) {
	t.Helper()
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" {
		t.Skip("the speech program has another name and other options here")
	}
	own, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := os.Symlink(own, filepath.Join(dir, "espeak-ng")); err != nil {
		t.Fatal(err)
	}
	log = filepath.Join(t.TempDir(), "said")
	t.Setenv("PATH", dir)
	t.Setenv(speaksAs, how)
	t.Setenv(speaksAs+"_LOG", log)
	return log
}

// newVoice returns a German voice.
func newVoice(t *testing.T) *Voice {
	t.Helper()
	v, err := New(Options{Language: language(t, "de"), Pips: sound.DefaultPips, Count: 5})
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestPrepare: all that the script says is rendered once, in the language, and
// placed where the script wants it; before that nothing is said.
func TestPrepare(t *testing.T) {
	log := withSpeech(t, "well")
	v, p := newVoice(t), testPlan(t)
	words := v.Words(engine.Options{AllPaced: true})
	if early := words(p, sound.Beginning(p)); len(early) > 0 {
		t.Errorf("%d texts are said before they are ready", len(early))
	}
	ready := 0
	if err := v.Prepare(t.Context(), p, func() { ready++ }); err != nil || v.Err() != nil || ready != 2 {
		t.Fatalf("%v, %v, ready %d times", err, v.Err(), ready)
	}
	o := v.opts
	o.Run = engine.Options{AllPaced: true}
	script, placed := Script(p, sound.Beginning(p), o), words(p, sound.Beginning(p))
	if len(placed) != len(script) {
		t.Errorf("%d of %d texts are said", len(placed), len(script))
	}
	for i, w := range placed {
		if w.At != script[i].From || w.At+w.Clip.Duration() > script[i].Until {
			t.Errorf("%s is said from %v for %v, outside %v to %v", w.Clip.Name, w.At, w.Clip.Duration(), script[i].From, script[i].Until)
		}
	}
	content, err := os.ReadFile(log)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(content)), "\n")
	slices.Sort(lines)
	if len(slices.Compact(slices.Clone(lines))) != len(lines) || !strings.HasPrefix(lines[0], "de: ") {
		t.Errorf("rendered twice, or not in German: %q", lines)
	}
}

// TestSpokenDirections: a direction is called in the language once it is ready,
// by the coach's own word for it.
func TestSpokenDirections(t *testing.T) {
	log := withSpeech(t, "well")
	s, err := sessions.Parse("c.yaml", []byte("coldfloor: 1\ntitle: C\nblocks: [{title: B, exercises: [{name: Shadow, time: 20s, calls: [front left, back]}]}]"))
	if err != nil {
		t.Fatal(err)
	}
	v := newVoice(t)
	if v.Spoken("front left") != nil {
		t.Error("called before it is ready")
	}
	if err := v.Prepare(t.Context(), plan.Of(s), nil); err != nil {
		t.Fatal(err)
	}
	content, _ := os.ReadFile(log)
	if v.Spoken("front left") == nil || v.Spoken("back") == nil || v.Spoken("nowhere") != nil || !strings.Contains(string(content), "vorn links") {
		t.Errorf("said: %s", content)
	}
}

// TestSpeechFails: the first failure is kept, with the program's own words, and
// nothing is said; a run goes on without.
func TestSpeechFails(t *testing.T) {
	withSpeech(t, "broken")
	v, p := newVoice(t), testPlan(t)
	err := v.Prepare(t.Context(), p, nil)
	if err == nil || !strings.Contains(err.Error(), "espeak-ng") || !strings.Contains(err.Error(), "no such voice") {
		t.Errorf("failed with %v", err)
	}
	if said := v.Words(engine.Options{AllPaced: true})(p, sound.Beginning(p)); len(said) > 0 {
		t.Errorf("%d texts are said", len(said))
	}
}

// TestPrepareEnds: what is no longer wanted is not rendered, and is no failure.
func TestPrepareEnds(t *testing.T) {
	log := withSpeech(t, "well")
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	v := newVoice(t)
	if err := v.Prepare(ctx, testPlan(t), nil); err != nil {
		t.Error(err)
	}
	if content, _ := os.ReadFile(log); len(content) > 0 {
		t.Errorf("said: %s", content)
	}
}

// TestNoSpeech: without a speech program the error names the ones there could be.
func TestNoSpeech(t *testing.T) {
	withSpeech(t, "well")
	t.Setenv("PATH", t.TempDir())
	_, err := New(Options{Language: language(t, "en")})
	var none *NoSpeech
	if !errors.As(err, &none) || none.Programs[0] != "espeak-ng" || !strings.Contains(err.Error(), "there is no espeak-ng and no espeak") {
		t.Errorf("%v", err)
	}
}
