package live

import (
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/engine/enginetest"
	"coldfloor/sound"
)

func TestSoundKeepsTheListenersContract(t *testing.T) {
	p := enginetest.Plan(t)
	enginetest.AssertListener(t, p, func() engine.Listener {
		l := newLive(Options{Volume: 1, Muted: true}, &simDevice{})
		t.Cleanup(l.Close)
		start := time.Now()
		l.Follow(p, sound.Options{Pips: 3}, func() time.Duration { return time.Since(start) }, 1)
		return l
	})
}
