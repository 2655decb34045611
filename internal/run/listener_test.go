package run

import (
	"testing"

	"coldfloor/internal/engine"
	"coldfloor/internal/engine/enginetest"
)

func TestListenersKeepTheirContract(t *testing.T) {
	p := enginetest.Plan(t)
	enginetest.AssertListener(t, p, func() engine.Listener { return newTally(p) })
	enginetest.AssertListener(t, p, func() engine.Listener {
		rec, err := Begin(openTemp(t), p, Opening{}, newClock())
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() {
			if err := rec.Close(); err != nil {
				t.Error(err)
			}
		})
		return rec
	})
}
