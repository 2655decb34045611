//go:build e2e

package voice

import (
	"context"
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/sound"
)

// TestVoice has the system's own speech say a session and checks what came of
// it as numbers.
func TestVoice(t *testing.T) {
	p := testPlan(t)
	for _, code := range Languages() {
		v, err := New(Options{Language: language(t, code), Pips: 3, Count: 4})
		if err != nil {
			t.Fatal(err)
		}
		start, words := sound.Beginning(p), v.Words(engine.Options{})
		if placed := words(p, start); len(placed) != 0 {
			t.Fatalf("%s: %d words before any was rendered", code, len(placed))
		}
		if err := v.Prepare(context.Background(), p, nil); err != nil {
			t.Fatal(err)
		}
		placed := words(p, start)
		if want := len(Script(p, start, v.opts)); len(placed) != want {
			t.Errorf("%s: %d of %d texts found room", code, len(placed), want)
		}
		for _, w := range placed {
			if d := w.Clip.Duration(); d < 100*time.Millisecond || d > 8*time.Second {
				t.Errorf("%s: %q lasts %v", code, w.Clip.Name, d)
			}
			var peak float32
			for _, x := range w.Clip.Samples() {
				peak = max(peak, x, -x)
			}
			if peak < 0.59 || peak > 0.61 {
				t.Errorf("%s: %q peaks at %v", code, w.Clip.Name, peak)
			}
		}
	}
}
