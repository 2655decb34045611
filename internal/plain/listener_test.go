package plain

import (
	"coldfloor/internal/text"
	"io"
	"testing"

	"coldfloor/internal/engine"
	"coldfloor/internal/engine/enginetest"
)

func TestPrinterKeepsTheListenersContract(t *testing.T) {
	p := enginetest.Plan(t)
	enginetest.AssertListener(t, p, func() engine.Listener { return NewPrinter(p, &text.English, io.Discard, true, true) })
}
