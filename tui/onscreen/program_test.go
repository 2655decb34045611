//go:build unix

package onscreen

import (
	"bytes"
	"io"
	"os"
	"sync"
	"syscall"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/creack/pty"
)

// greeter shows a word, and ends with the key q.
type greeter struct{}

func (greeter) Init() tea.Cmd { return nil }
func (greeter) View() string  { return "hello" }
func (g greeter) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if k, ok := msg.(tea.KeyMsg); ok && k.String() == "q" {
		return g, tea.Quit
	}
	return g, nil
}

// terminal is the other end of a terminal of the test's own.
type terminal struct {
	keys *os.File
	mu   sync.Mutex
	out  bytes.Buffer
}

// onTerminal makes a terminal the standard input and output of the test.
func onTerminal(t *testing.T) *terminal {
	t.Helper()
	ours, theirs, err := pty.Open()
	if err != nil {
		t.Skip("no pseudo-terminal: ", err)
	}
	if err := pty.Setsize(ours, &pty.Winsize{Rows: 12, Cols: 40}); err != nil {
		t.Fatal(err)
	}
	in, out := os.Stdin, os.Stdout
	os.Stdin, os.Stdout = theirs, theirs
	x := &terminal{keys: ours}
	t.Cleanup(func() { os.Stdin, os.Stdout = in, out; theirs.Close(); ours.Close() })
	go func() { _, _ = io.Copy(x, ours) }()
	return x
}

// Write keeps what was written to the terminal.
func (x *terminal) Write(b []byte) (int, error) {
	x.mu.Lock()
	defer x.mu.Unlock()
	return x.out.Write(b)
}

// await waits until a text was written so many times.
func (x *terminal) await(t *testing.T, text string, times int) {
	t.Helper()
	for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		x.mu.Lock()
		n := bytes.Count(x.out.Bytes(), []byte(text))
		x.mu.Unlock()
		if n >= times {
			return
		}
	}
	t.Fatalf("%q was not written %d times: %q", text, times, x.out.String())
}

// TestProgramOnATerminal: the picture is shown over the whole terminal, is drawn
// whole again after a stop, and the terminal is given back at the end.
func TestProgramOnATerminal(t *testing.T) {
	x := onTerminal(t)
	t.Setenv("TERM", "xterm-256color")
	p := Program(greeter{}, lipgloss.NewRenderer(x))
	done := make(chan error, 1)
	var last tea.Model
	go func() {
		var err error
		last, err = Run(p)
		done <- err
	}()
	x.await(t, "\x1b[?1049h", 1)
	x.await(t, "hello", 1)
	if err := syscall.Kill(syscall.Getpid(), syscall.SIGCONT); err != nil {
		t.Fatal(err)
	}
	x.await(t, "hello", 2)
	if _, err := x.keys.WriteString("q"); err != nil {
		t.Fatal(err)
	}
	select {
	case err := <-done:
		if err != nil {
			t.Error(err)
		}
	case <-time.After(20 * time.Second):
		t.Fatal("it does not end")
	}
	if _, ok := last.(greeter); !ok {
		t.Errorf("the model at the end is a %T", last)
	}
	x.await(t, "\x1b[?1049l", 1)
}
