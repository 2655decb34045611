package onscreen

import (
	"bytes"
	"os"
	"strings"
	"sync"

	"github.com/charmbracelet/x/ansi"
)

// window is a terminal's output, of which the program has the whole at times.
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

// set sets the terminal to something. The Linux console, and others that are
// told to, have no second screen, to be left for the first one with what it held:
// before it is left it is cleared, or the shell would write into the picture.
func (w *window) set(b []byte) error {
	w.mu.Lock()
	defer w.mu.Unlock()
	switch {
	case bytes.Contains(b, []byte(ansi.SetAltScreenSaveCursorMode)):
		w.has = true
	case bytes.Contains(b, []byte(ansi.ResetAltScreenSaveCursorMode)):
		w.has = false
		b = append([]byte(ansi.CursorHomePosition+ansi.EraseScreenBelow), b...)
	}
	_, err := w.File.Write(b)
	return err
}

// quiet is a terminal's output that passes on what Bubble Tea sets the terminal
// to, and nothing that it draws.
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
