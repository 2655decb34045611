package weeks

import (
	"strings"
	"testing"

	"coldfloor/internal/yamlread"
)

// endless is a reader that never ends.
type endless struct{ read int }

func (e *endless) Read(p []byte) (int, error) { e.read += len(p); clear(p); return len(p), nil }

func TestReadTakesNoMoreThanItCanUse(t *testing.T) {
	var e endless
	if _, err := Read("pipe", ".", &e); err == nil || !strings.Contains(err.Error(), "larger than 1 MiB") {
		t.Errorf("Read = %v", err)
	}
	if e.read > 2*yamlread.MaxBytes {
		t.Errorf("%d bytes were read", e.read)
	}
}
