package tui

import (
	"coldfloor/internal/text"
	"fmt"
	"path/filepath"
	"testing"
	"time"

	"github.com/muesli/termenv"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/sessions"
	"coldfloor/tui/glyph"
)

// footwork is a plan of one set in which directions are called from the start
// of its fifth second on.
func footwork(t testing.TB, calls string) *plan.Plan {
	t.Helper()
	s, err := sessions.Parse("calls.yaml", []byte("coldfloor: 1\ntitle: T\nlead_in: 1s\nblocks:\n- title: Rallies\n  exercises:\n"+
		"  - {name: Six-corner rally, time: 60s, call_every: 4s, cues: [Split every time], calls: "+calls+"}\n"))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

// TestCallsAreSeen shows each direction as its arrow with its word, from the
// moment it is called until shortly before the next, and then the time.
func TestCallsAreSeen(t *testing.T) {
	const corners = "[front left, front, front right, left, right, back left, back, back right, net]"
	want := map[string]string{"front left": "↖", "front": "↑", "front right": "↗", "left": "←", "right": "→", "back left": "↙", "back": "↓", "back right": "↘", "net": "net"}
	p := footwork(t, corners)
	const seed = 3
	seen := map[string]bool{}
	for c := range p.Calls(1, seed, time.Minute) {
		word := p.Exercise(1).Calls[c.Direction]
		v := engine.View{Phase: engine.Running, Step: 1, Length: time.Minute, Elapsed: c.At, Remaining: time.Minute - c.At}
		s := sceneOf(&text.English, p, v, engine.Options{Seed: seed})
		if s.count.figure != want[word] || word != "net" && s.exercise != word {
			t.Errorf("%s is shown as %+v", word, s.count)
		}
		v.Elapsed = c.At + c.Gap - apart
		v.Remaining = time.Minute - v.Elapsed
		if s = sceneOf(&text.English, p, v, engine.Options{Seed: seed}); s.count.figure != timeLeft(ceilSecond(v.Remaining)) {
			t.Errorf("shortly before the next call %+v is shown", s.count)
		}
		seen[word] = true
	}
	if len(seen) != len(want) {
		t.Errorf("only %v are called", seen)
	}
}

// TestTheScreenWakesForACall looks again when an arrow comes and when it goes.
func TestTheScreenWakesForACall(t *testing.T) {
	m, c := newTestRun(t, footwork(t, "[left, right]"), engine.Options{Seed: 1}, testStyle(termenv.Ascii, glyph.Quadrant))
	m = c.at(m, 5*time.Second-20*time.Millisecond) // the first call comes at 5 s
	if wait, ok := m.wait(); !ok || wait > 21*time.Millisecond {
		t.Errorf("looks again after %v", wait)
	}
	m = c.at(m, 5*time.Second+4*time.Second-apart-20*time.Millisecond)
	if wait, ok := m.wait(); !ok || wait > 21*time.Millisecond {
		t.Errorf("looks again after %v", wait)
	}
}

// TestCallFrames holds a call at every size against the golden frames.
func TestCallFrames(t *testing.T) {
	p := footwork(t, "[front left, front right, left, right, back left, back right]")
	seed := uint64(1)
	for { // one that calls the front left first
		if c, _ := p.CallAt(1, seed, time.Minute, 4*time.Second); c.Direction == 0 {
			break
		}
		seed++
	}
	for _, size := range sizes {
		name := fmt.Sprintf("call-%dx%d", size.width, size.height)
		frame := func(profile termenv.Profile) string {
			m, c := newTestRun(t, p, engine.Options{Seed: seed}, testStyle(profile, glyph.Quadrant))
			return c.at(m, 5500*time.Millisecond).resized(size.width, size.height).View()
		}
		golden(t, filepath.Join("testdata", "frames", name+".txt"), frame(termenv.Ascii)+"\n")
		fits(t, frame(termenv.TrueColor), size.width, size.height)
		if *pictures != "" {
			picture(t, filepath.Join(*pictures, name+".svg"), frame(termenv.TrueColor), size.width, size.height)
		}
	}
}
