//go:build e2e && linux

package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// xvfb starts an X server without a screen and returns its display.
func xvfb(t *testing.T) string {
	t.Helper()
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", fmt.Sprintf("%dx%dx24", 80*cellWidth, 24*cellHeight))
	c.ExtraFiles = []*os.File{w}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = c.Process.Kill(); _ = c.Wait() })
	w.Close()
	number, err := bufio.NewReader(r).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	return ":" + strings.TrimSpace(number)
}

// xterm is the program in a real terminal, with somebody between the two who
// reads along and types.
type xterm struct{ steps, reached *bufio.ReadWriter }

// relaying names the folder of the pipes in the environment of the relay.
const relaying = "COLDFLOOR_RELAY"

func init() {
	if dir := os.Getenv(relaying); dir != "" {
		if err := relay(dir); err != nil {
			fmt.Println(err)
			time.Sleep(time.Minute) // it is to be read in a screenshot
		}
		os.Exit(0)
	}
}

// startXterm starts the program in an xterm by a relay.
func startXterm(t *testing.T, display, name, ground string) *xterm {
	t.Helper()
	h := newHome(t, staged)
	ink := "white"
	if ground == "white" {
		ink = "black"
	}
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command("xterm", "-tn", name, "-fn", "-misc-fixed-medium-r-semicondensed--13-*-*-*-*-*-iso10646-1", "-b", "0", "-bw", "0", "-geometry", "80x24+0+0", "-bg", ground, "-fg", ink, "-e", self)
	c.Env = []string{"DISPLAY=" + display, "HOME=" + h.dir, "PATH=" + os.Getenv("PATH"), "LANG=C.UTF-8", relaying + "=" + h.dir,
		"COLDFLOOR_PROGRAM=" + binary(), "XDG_RUNTIME_DIR=" + h.dir}
	for _, pipe := range []string{"steps", "reached"} {
		if err := exec.Command("mkfifo", filepath.Join(h.dir, pipe)).Run(); err != nil {
			t.Fatal(err)
		}
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = c.Process.Kill(); _ = c.Wait() })
	steps, err := os.OpenFile(filepath.Join(h.dir, "steps"), os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	reached, err := os.OpenFile(filepath.Join(h.dir, "reached"), os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { steps.Close(); reached.Close() })
	return &xterm{bufio.NewReadWriter(nil, bufio.NewWriter(steps)), bufio.NewReadWriter(bufio.NewReader(reached), nil)}
}

// reach types keys and waits for a text.
func (x *xterm) reach(t *testing.T, keys, await string) {
	t.Helper()
	fmt.Fprintf(x.steps, "%q %q\n", keys, await)
	if err := x.steps.Flush(); err != nil {
		t.Fatal(err)
	}
	if said, err := x.reached.ReadString('\n'); err != nil || said != "reached\n" {
		t.Fatalf("after %q: %q, %v", keys, said, err)
	}
}

// relay runs the program in a terminal within this one, and for each step that
// it reads from a pipe types keys and waits for a text.
func relay(dir string) error {
	state, err := term.MakeRaw(os.Stdin.Fd())
	if err != nil {
		return err
	}
	defer term.Restore(os.Stdin.Fd(), state)
	c := exec.Command(os.Getenv("COLDFLOOR_PROGRAM"), "run", "--no-log", "--mute", filepath.Join(dir, "session.yaml"))
	c.Env = os.Environ()
	tty, err := pty.StartWithSize(c, &pty.Winsize{Cols: 80, Rows: 24})
	if err != nil {
		return err
	}
	inner := &innerTerm{tty: tty, screen: vt.NewEmulator(80, 24)}
	go func() { _, _ = io.Copy(tty, os.Stdin) }() // the terminal's answers
	go func() { _, _ = io.Copy(io.Discard, inner.screen) }()
	go inner.follow()
	steps, err := os.Open(filepath.Join(dir, "steps"))
	if err != nil {
		return err
	}
	reached, err := os.OpenFile(filepath.Join(dir, "reached"), os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	for lines := bufio.NewReader(steps); ; {
		var keys, await string
		if _, err := fmt.Fscanf(lines, "%q %q\n", &keys, &await); err != nil {
			return err
		}
		fmt.Fprintln(reached, inner.reach(keys, await))
	}
}

// innerTerm is the terminal within a terminal that the program runs in.
type innerTerm struct {
	tty    *os.File
	mu     sync.Mutex
	screen *vt.Emulator
}

// follow passes on what the program writes, and draws it.
func (n *innerTerm) follow() {
	b := make([]byte, 1<<16)
	for read, err := n.tty.Read(b); err == nil; read, err = n.tty.Read(b) {
		_, _ = os.Stdout.Write(b[:read])
		n.mu.Lock()
		_, _ = n.screen.Write(b[:read])
		n.mu.Unlock()
	}
}

// shows reports whether text is on the screen.
func (n *innerTerm) shows(text string) bool {
	n.mu.Lock()
	defer n.mu.Unlock()
	return strings.Contains(n.screen.String(), text)
}

// reach types keys, waits for a text, and says whether it came. What is asked
// before a run is answered.
func (n *innerTerm) reach(keys, await string) string {
	for _, k := range strings.SplitAfter(keys, "C") {
		_, _ = io.WriteString(n.tty, k)
	}
	end := time.Now().Add(30 * time.Second)
	for ; !n.shows(await) && time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		if n.shows("Before the first session") || n.shows("Before you start") {
			_, _ = io.WriteString(n.tty, "\r")
			time.Sleep(200 * time.Millisecond)
		}
	}
	if n.shows(await) {
		return "reached"
	}
	n.mu.Lock()
	defer n.mu.Unlock()
	return fmt.Sprintf("%q is not on %q", await, n.screen.String())
}
