package onscreen

import (
	"bytes"
	"os"
	"strings"
	"sync"

	"github.com/charmbracelet/x/ansi"
)

// window is a terminal's output. At times the program has all of the terminal, at
// others the shell has it.
type window struct {
	*os.File
	mu  sync.Mutex
	has bool
}

// Write implements io.Writer for pictures. While the terminal is given back none
// gets there: it is the shell's then.
func (w *window) Write(b []byte) (int, error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if !w.has {
		return len(b), nil
	}
	return w.File.Write(b)
}

// set changes the terminal's state. The Linux console, and any terminal that is set
// so, has no second screen that can be left for the first one and what that held:
// it is cleared before it is left, or the shell would write into the picture.
func (w *window) set(b []byte) error {
	w.mu.Lock()
	defer w.mu.Unlock()
	switch {
	case bytes.Contains(b, []byte(ansi.SetModeAltScreenSaveCursor)):
		w.has = true
	case bytes.Contains(b, []byte(ansi.ResetModeAltScreenSaveCursor)):
		w.has = false
		b = append([]byte(ansi.CursorHomePosition+ansi.EraseScreenBelow), b...)
	}
	_, err := w.File.Write(b)
	return err
}

// quiet is a terminal's output that passes on how Bubble Tea sets the terminal up,
// and nothing that it draws.
type quiet struct{ *window }

// Write implements io.Writer.
func (q quiet) Write(b []byte) (int, error) {
	if ansi.Strip(strings.Trim(string(b), "\r\n")) != "" {
		return len(b), nil
	}
	return len(b), q.set(b)
}

// WriteString implements io.StringWriter.
func (q quiet) WriteString(s string) (int, error) { return q.Write([]byte(s)) }
