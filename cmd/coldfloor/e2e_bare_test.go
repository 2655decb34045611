//go:build e2e && linux

package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/creack/pty"
)

// bare is a terminal of which only the two ends are there, so that no other
// program adds to what is measured.
type bare struct {
	cmd   *exec.Cmd
	file  *os.File
	began time.Time

	mu    sync.Mutex
	bytes int
	seen  []byte
	times []time.Time // of each read
	ends  []int       // of each read in seen
	done  chan struct{}
}

// startBare starts a program in a terminal, which ends with the test at the
// latest.
func startBare(t *testing.T, cols, rows uint16, answers bool, env []string, args ...string) *bare {
	t.Helper()
	x := &bare{cmd: exec.Command(args[0], args[1:]...), done: make(chan struct{})}
	x.cmd.Env = append(env[1:], "TERM=xterm-256color") // after env -i
	x.began = time.Now()
	var err error
	if x.file, err = pty.StartWithSize(x.cmd, &pty.Winsize{Cols: cols, Rows: rows}); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(x.end)
	go x.read(answers)
	return x
}

// read takes what the program writes.
func (x *bare) read(answers bool) {
	defer close(x.done)
	b := make([]byte, 1<<16)
	for {
		n, err := x.file.Read(b)
		if err != nil {
			return
		}
		x.mu.Lock()
		x.bytes += n
		if len(x.seen) < 1<<16 {
			x.seen = append(x.seen, b[:n]...)
			x.times, x.ends = append(x.times, time.Now()), append(x.ends, len(x.seen))
		}
		x.mu.Unlock()
		if answers && bytes.Contains(b[:n], []byte("\x1b]11;?")) {
			_, _ = x.file.WriteString("\x1b]11;rgb:0000/0000/0000\a")
		}
		if answers { // it repeats every character
			for range bytes.Count(b[:n], []byte("\x1b[6n")) {
				_, _ = x.file.WriteString("\x1b[2;4R")
			}
		}
	}
}

// first returns how long after the start text was first written whole.
func (x *bare) first(t *testing.T, text string) time.Duration {
	t.Helper()
	for deadline := time.Now().Add(30 * time.Second); time.Now().Before(deadline); time.Sleep(2 * time.Millisecond) {
		x.mu.Lock()
		at := bytes.Index(x.seen, []byte(text))
		if at >= 0 {
			i, _ := slices.BinarySearch(x.ends, at+len(text))
			defer x.mu.Unlock()
			return x.times[i].Sub(x.began)
		}
		x.mu.Unlock()
	}
	t.Fatalf("%v never wrote %q, but at first\n%q", x.cmd.Args, text, x.seen[:min(len(x.seen), 4000)])
	return 0
}

// keys types text.
func (x *bare) keys(t *testing.T, text string) {
	t.Helper()
	if _, err := x.file.WriteString(text); err != nil {
		t.Fatal(err)
	}
}

// written returns how many bytes were written to the terminal so far.
func (x *bare) written() int {
	x.mu.Lock()
	defer x.mu.Unlock()
	return x.bytes
}

// spent returns the processor time of the program and of what it ran and
// waited for: proc_pid_stat(5), fields 14 to 17, in ticks of USER_HZ, which is
// 100 wherever Go runs.
func (x *bare) spent(t *testing.T) time.Duration {
	t.Helper()
	b := x.proc(t, "stat")
	fields := strings.Fields(b[strings.LastIndex(b, ")")+1:]) // from field 3 on
	var ticks int
	for _, f := range fields[14-3 : 17-3+1] {
		n, err := strconv.Atoi(f)
		if err != nil {
			t.Fatal(err)
		}
		ticks += n
	}
	return time.Duration(ticks) * time.Second / 100
}

// memory returns what proc_pid_status(5) says of the program's memory, in MB.
func (x *bare) memory(t *testing.T) map[string]float64 {
	t.Helper()
	m := map[string]float64{}
	for line := range strings.Lines(x.proc(t, "status")) {
		var name string
		var kB float64
		if n, _ := fmt.Sscanf(line, "%s %f kB", &name, &kB); n == 2 {
			m[strings.TrimSuffix(name, ":")] = kB * 1024 / 1e6
		}
	}
	return m
}

// proc returns a file of the program's in /proc.
func (x *bare) proc(t *testing.T, name string) string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("/proc", strconv.Itoa(x.cmd.Process.Pid), name))
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// end kills the program; a second call does nothing.
func (x *bare) end() {
	_ = x.cmd.Process.Kill()
	_ = x.cmd.Wait()
	_ = x.file.Close()
	<-x.done
}
