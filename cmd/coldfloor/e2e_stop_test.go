//go:build e2e && linux

package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"
	"golang.org/x/sys/unix"
)

// shell is a shell with job control on a bare terminal, which nothing but the
// shell continues.
type shell struct {
	t    *testing.T
	cmd  *exec.Cmd
	term *os.File

	mu  sync.Mutex
	out bytes.Buffer
}

func newShell(t *testing.T, h home) *shell {
	t.Helper()
	s := &shell{t: t, cmd: exec.Command("env", append(h.env(), "PS1=ready$ ", "bash", "--norc", "--noprofile", "-i")...)}
	s.cmd.Dir = h.dir
	var err error
	if s.term, err = pty.StartWithSize(s.cmd, &pty.Winsize{Cols: 80, Rows: 24}); err != nil {
		t.Fatal(err)
	}
	go func() {
		b := make([]byte, 4096)
		for {
			n, err := s.term.Read(b)
			s.mu.Lock()
			s.out.Write(b[:n])
			s.mu.Unlock()
			if err != nil {
				return
			}
		}
	}()
	t.Cleanup(func() {
		_ = s.cmd.Process.Kill()
		_ = s.cmd.Wait()
		s.term.Close()
	})
	return s
}

// types types text.
func (s *shell) types(text string) {
	s.t.Helper()
	if _, err := s.term.WriteString(text); err != nil {
		s.t.Fatal(err)
	}
}

// until waits until ok holds.
func (s *shell) until(what string, ok func() bool) {
	s.t.Helper()
	for end := time.Now().Add(30 * time.Second); !ok(); time.Sleep(10 * time.Millisecond) {
		if time.Now().After(end) {
			s.t.Fatalf("%s: not so; the terminal got\n%q", what, s.said())
		}
	}
}

func (s *shell) said() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.out.String()
}

// says waits until text comes after what was last waited for.
func (s *shell) says(text string) {
	s.t.Helper()
	s.until(fmt.Sprintf("says %q", text), func() bool { return strings.Contains(s.said(), text) })
	s.mu.Lock()
	defer s.mu.Unlock()
	s.out.Next(strings.Index(s.out.String(), text) + len(text))
}

// raw reports whether the terminal hands over keys as they are pressed.
func (s *shell) raw() bool {
	s.t.Helper()
	m, err := unix.IoctlGetTermios(int(s.term.Fd()), unix.TCGETS)
	if err != nil {
		s.t.Fatal(err)
	}
	return m.Lflag&(unix.ICANON|unix.ECHO) == 0
}

// job returns the process that the shell has started.
func (s *shell) job() int {
	s.t.Helper()
	out, err := exec.Command("pgrep", "-P", strconv.Itoa(s.cmd.Process.Pid)).Output()
	pid, errNumber := strconv.Atoi(strings.TrimSpace(string(out)))
	if err != nil || errNumber != nil {
		s.t.Fatalf("%q, %v", out, err)
	}
	return pid
}

// TestStoppedAndContinued stops a run with both signals that do so and with the
// shell's key, and continues it with the shell's fg: keys act again, none is
// echoed, and the run is paused where it was.
func TestStoppedAndContinued(t *testing.T) {
	s := newShell(t, newHome(t, staged))
	s.says("ready$")
	s.types(binary() + " run --mute session.yaml\r")
	s.says("Before the first session")
	s.types("\r")
	s.says("you start") // what is to be said of this session
	s.types("\r")
	s.says("GET READY")
	for _, sig := range []syscall.Signal{syscall.SIGTSTP, syscall.SIGSTOP} {
		s.until("the keys are raw", s.raw)
		if err := syscall.Kill(s.job(), sig); err != nil {
			t.Fatal(err)
		}
		s.says("Stopped")
		time.Sleep(3 * time.Second) // longer than a run may be away unnoticed
		s.types("fg\r")
		s.until("the keys are raw again", s.raw)
		s.says("PAUSED")
		s.types("p")
		s.says("GET READY")
	}
	s.types("\x1a") // the shell's key for it pauses at once
	s.says("Stopped")
	s.types("fg\r")
	s.until("the keys are raw again", s.raw)
	s.says("PAUSED")
	s.types("q")
	s.says("Stop?")
	s.types("q")
	s.says("Effort")
	s.types("\x13")
	s.says("log lists it") // nothing was done in it
	s.says("ready$")
}
