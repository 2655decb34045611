package plain

import (
	"io"
	"testing"

	"coldfloor/internal/engine"
	"coldfloor/internal/engine/enginetest"
)

func TestPrinterKeepsTheListenersContract(t *testing.T) {
	p := enginetest.Plan(t)
	enginetest.AssertListener(t, p, func() engine.Listener { return NewPrinter(p, io.Discard, true, true) })
}
