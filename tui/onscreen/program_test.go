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

// count returns how many times a text was written.
func (x *terminal) count(text string) int {
	x.mu.Lock()
	defer x.mu.Unlock()
	return bytes.Count(x.out.Bytes(), []byte(text))
}

// await waits until a text was written so many times.
func (x *terminal) await(t *testing.T, text string, times int) {
	t.Helper()
	for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		if x.count(text) >= times {
			return
		}
	}
	t.Fatalf("%q was not written %d times: %q", text, times, x.out.String())
}

// start runs a program that is told of clicks on the terminal. The function that
// is returned ends it by its key, and returns what its model is at the end.
func (x *terminal) start(t *testing.T) (end func() tea.Model) { return x.run(t, greeter{}, "hello") }

// run is start for a model that shows a text at first.
func (x *terminal) run(t *testing.T, m tea.Model, first string) (end func() tea.Model) {
	t.Setenv("TERM", "xterm-256color")
	p := New(m, lipgloss.NewRenderer(x), true)
	done := make(chan error, 1)
	var last tea.Model
	go func() {
		var err error
		last, err = p.Run()
		done <- err
	}()
	x.await(t, first, 1)
	return func() tea.Model {
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
		return last
	}
}

// raise sends the test itself a signal.
func raise(t *testing.T, s syscall.Signal) {
	t.Helper()
	if err := syscall.Kill(syscall.Getpid(), s); err != nil {
		t.Fatal(err)
	}
}

// TestProgramOnATerminal: the picture is shown over the whole terminal, is drawn
// whole again after a stop, and the terminal is given back at the end.
func TestProgramOnATerminal(t *testing.T) {
	x := onTerminal(t)
	end := x.start(t)
	x.await(t, "\x1b[?1049h", 1)
	raise(t, syscall.SIGCONT)
	x.await(t, "hello", 2)
	if last, ok := end().(greeter); !ok {
		t.Errorf("the model at the end is a %T", last)
	}
	x.await(t, "\x1b[?1049l", 2)
}

// TestProgramIsStopped: the shell has its terminal back for as long as the job is
// stopped, and after that the program has all of it that it had: the screen of its
// own, clicks and pasted text.
func TestProgramIsStopped(t *testing.T) {
	x := onTerminal(t)
	stopped, stop := make(chan bool), halt
	halt = func() { stopped <- true }
	defer func() { halt = stop }()
	end := x.start(t)
	modes := []string{"\x1b[?1049", "\x1b[?1002", "\x1b[?2004"}
	for i := range 2 {
		raise(t, syscall.SIGTSTP)
		<-stopped
		raise(t, syscall.SIGCONT)
		x.await(t, "hello", 2+i)
	}
	end()
	x.await(t, modes[0]+"l", 3)
	for _, m := range modes {
		x.await(t, m+"h", 3)
		if n := x.count(m + "h"); n != 3 {
			t.Errorf("%q was set %d times, at the start and after two stops", m+"h", n)
		}
	}
}
