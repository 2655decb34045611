// Package tmuxtest runs a program in a real terminal for tests: tmux holds the
// terminal, the test types keys and polls the screen until it shows what is
// awaited.
package tmuxtest

import (
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

// patience bounds every wait; it only guards against a hang.
const patience = 60 * time.Second

// Terminal is one tmux window with a program in it.
type Terminal struct {
	t      testing.TB
	socket string
}

// Start opens a terminal of cols by rows cells that runs command, a shell
// command line, with env added to a bare environment. It ends with the test.
func Start(t testing.TB, cols, rows int, env []string, command string) *Terminal {
	t.Helper()
	if _, err := exec.LookPath("tmux"); err != nil {
		t.Fatal("tmux is not installed; .ci/run installs it")
	}
	dir, err := os.MkdirTemp("", "tmux") // a short path: sockets have little room
	if err != nil {
		t.Fatal(err)
	}
	term := &Terminal{t: t, socket: filepath.Join(dir, "s")}
	t.Cleanup(func() {
		term.tmux("kill-server")
		os.RemoveAll(dir)
	})
	conf := filepath.Join(dir, "conf")
	// The window stays when the program ends, so that its last screen can be read.
	settings := "set -g status off\nset -g remain-on-exit on\nset -g default-terminal tmux-256color\nset -ga terminal-overrides ',*:Tc'\nset -sg escape-time 0\n"
	if err := os.WriteFile(conf, []byte(settings), 0o600); err != nil {
		t.Fatal(err)
	}
	args := []string{"-f", conf, "new-session", "-d", "-x", strconv.Itoa(cols), "-y", strconv.Itoa(rows), "env"}
	args = append(args, env...)
	// The command has a shell of its own, whose parent notes how it ended.
	args = append(args, "sh", "-c", "("+command+"); echo $? >\"$0.new\"; mv \"$0.new\" \"$0\"", term.status())
	if out, err := term.tmux(args...); err != nil {
		t.Fatalf("tmux: %v\n%s", err, out)
	}
	return term
}

// tmux runs one tmux command on the terminal's own server, in UTF-8.
func (x *Terminal) tmux(args ...string) (string, error) {
	c := exec.Command("tmux", append([]string{"-u", "-S", x.socket}, args...)...)
	out, err := c.CombinedOutput()
	return string(out), err
}

// Keys types keys by their tmux names, such as "Space", "Down", "q".
func (x *Terminal) Keys(keys ...string) {
	x.t.Helper()
	if out, err := x.tmux(append([]string{"send-keys"}, keys...)...); err != nil {
		x.t.Fatalf("send-keys %v: %v\n%s", keys, err, out)
	}
}

// Type types text as it stands.
func (x *Terminal) Type(text string) {
	x.t.Helper()
	if out, err := x.tmux("send-keys", "-l", text); err != nil {
		x.t.Fatalf("typing %q: %v\n%s", text, err, out)
	}
}

// Resize changes the terminal's size.
func (x *Terminal) Resize(cols, rows int) {
	x.t.Helper()
	if out, err := x.tmux("resize-window", "-x", strconv.Itoa(cols), "-y", strconv.Itoa(rows)); err != nil {
		x.t.Fatalf("resize: %v\n%s", err, out)
	}
}

// Screen returns what the terminal shows, without colour.
func (x *Terminal) Screen() string {
	out, _ := x.tmux("capture-pane", "-p")
	return out
}

// Coloured returns what the terminal shows, with its escape sequences.
func (x *Terminal) Coloured() string {
	out, _ := x.tmux("capture-pane", "-p", "-e")
	return out
}

// Attach returns the command that shows the terminal in the one that it is run
// in.
func (x *Terminal) Attach() *exec.Cmd {
	c := exec.Command("tmux", "-u", "-S", x.socket, "attach")
	c.Env = append(os.Environ(), "TERM=xterm-256color", "TMUX=")
	return c
}

// status is the file that holds the exit code of a program that has ended.
func (x *Terminal) status() string { return x.socket + ".status" }

// PID returns the process id of the program that Start ran.
func (x *Terminal) PID() int {
	x.t.Helper()
	out, err := x.tmux("display-message", "-p", "#{pane_pid}")
	if err != nil {
		x.t.Fatalf("no process id: %v %q", err, out)
	}
	shell := strings.TrimSpace(out)
	children, err := os.ReadFile(filepath.Join("/proc", shell, "task", shell, "children"))
	if err != nil {
		x.t.Fatal(err)
	}
	pid, err := strconv.Atoi(strings.TrimSpace(string(children)))
	if err != nil {
		x.t.Fatalf("the terminal's shell runs %q, not one program", children)
	}
	return pid
}

// WaitFor polls the screen until it holds every one of texts.
func (x *Terminal) WaitFor(texts ...string) string {
	x.t.Helper()
	return x.Until(strings.Join(texts, ", "), func(screen string) bool {
		for _, text := range texts {
			if !strings.Contains(screen, text) {
				return false
			}
		}
		return true
	})
}

// Until polls the screen until ok says that it shows what is awaited, and
// returns that screen.
func (x *Terminal) Until(what string, ok func(screen string) bool) string {
	x.t.Helper()
	deadline := time.Now().Add(patience)
	for {
		screen := x.Screen()
		if ok(screen) {
			return screen
		}
		if time.Now().After(deadline) {
			x.t.Fatalf("the screen never showed %s; it shows:\n%s", what, screen)
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// Slap types a key again and again until the screen holds text, as a player does
// who is not heard at first.
func (x *Terminal) Slap(key, text string) string {
	x.t.Helper()
	return x.Until(text, func(screen string) bool {
		if strings.Contains(screen, text) {
			return true
		}
		x.Keys(key)
		time.Sleep(200 * time.Millisecond)
		return false
	})
}

// WaitExit polls until the program has ended, and returns its exit code: 128
// and the signal's number where a signal killed it.
func (x *Terminal) WaitExit() int {
	x.t.Helper()
	deadline := time.Now().Add(patience)
	for {
		if src, err := os.ReadFile(x.status()); err == nil {
			code, err := strconv.Atoi(strings.TrimSpace(string(src)))
			if err != nil {
				x.t.Fatal(err)
			}
			return code
		}
		if time.Now().After(deadline) {
			x.t.Fatalf("the program never ended; the screen shows:\n%s", x.Screen())
		}
		time.Sleep(20 * time.Millisecond)
	}
}
