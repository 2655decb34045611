//go:build e2e && linux

package main

import (
	"bufio"
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
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
	"github.com/lucasb-eyer/go-colorful"
)

// The cells of the font that xterm is started with, in pixels.
const cellWidth, cellHeight = 6, 13

// staged is a session with long steps of every kind, to be skipped through.
const staged = `coldfloor: 1
title: Every phase
lead_in: 90s
blocks:
  - title: Up
    rounds: 2
    rest: 5m
    change: 2m
    exercises:
      - {name: Low hops, reps: 90, rep: 2s, contacts: 1, cues: [Quiet floor], how: On the balls of the feet.}
      - {name: Split squat, reps_per_side: 30, tempo: 3-1-1, switch: 1m, cues: [Chest tall], easier: Half way down}
      - {name: Push-up, reps: 6, finish: hand}
`

// stages are what is typed and then waited for, each photographed.
var stages = []struct{ name, keys, await string }{
	{"lead-in", "", "GET READY"},
	{"work", "\x1b[C", "WORK"},
	{"paused", "p", "PAUSED"},
	{"next exercise", "p\x1b[C", "NEXT EXERCISE"},
	{"tempo", "\x1b[C", "WORK"},
	{"switch", "\x1b[C", "SWITCH SIDES"},
	{"by hand", "\x1b[C\x1b[C\x1b[C", "YOUR PACE"},
	{"rest", "\x1b[C", "REST"},
	{"keys", "?", "REST"},
	{"stop", "?q", "Stop?"},
}

// TestPixelsOfXterm holds the contrast of what a real terminal draws: in each
// cell of a screenshot there are no more than two colours, and where there are
// two they are 4.5 to 1 or more (WCAG 2.2, success criterion 1.4.3).
func TestPixelsOfXterm(t *testing.T) {
	for _, program := range []string{"Xvfb", "xterm", "import"} {
		if _, err := exec.LookPath(program); err != nil {
			t.Skip(err)
		}
	}
	display := xvfb(t)
	for _, name := range []string{"xterm", "xterm-256color"} {
		for _, ground := range []string{"black", "white"} {
			t.Run(name+" on "+ground, func(t *testing.T) {
				x := startXterm(t, display, name, ground)
				for _, s := range stages {
					x.reach(t, s.keys, s.await)
					settled(t, display, s.name)
				}
			})
		}
	}
}

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
	var mu sync.Mutex
	screen := vt.NewEmulator(80, 24)
	go func() { _, _ = io.Copy(tty, os.Stdin) }() // the terminal's answers
	go func() { _, _ = io.Copy(io.Discard, screen) }()
	go func() {
		b := make([]byte, 1<<16)
		for n, err := tty.Read(b); err == nil; n, err = tty.Read(b) {
			_, _ = os.Stdout.Write(b[:n])
			mu.Lock()
			_, _ = screen.Write(b[:n])
			mu.Unlock()
		}
	}()
	shows := func(text string) bool {
		mu.Lock()
		defer mu.Unlock()
		return strings.Contains(screen.String(), text)
	}
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
		for _, k := range strings.SplitAfter(keys, "C") {
			_, _ = io.WriteString(tty, k)
		}
		end := time.Now().Add(30 * time.Second)
		for ; !shows(await) && time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
			if shows("Before the first session") || shows("Before you start") {
				_, _ = io.WriteString(tty, "\r")
				time.Sleep(200 * time.Millisecond)
			}
		}
		if !shows(await) {
			mu.Lock()
			fmt.Fprintf(reached, "%q is not on %q\n", await, screen.String())
			mu.Unlock()
			continue
		}
		fmt.Fprintln(reached, "reached")
	}
}

// settled takes screenshots until two in a row find the same, for xterm draws
// after it has read, and holds the last against the contrast that is asked for.
func settled(t *testing.T, display, name string) {
	t.Helper()
	last := []string{"no screenshot"}
	for end := time.Now().Add(20 * time.Second); ; {
		found := faults(screenshot(t, display))
		if strings.Join(found, "\n") == strings.Join(last, "\n") || time.Now().After(end) {
			for _, f := range found {
				t.Errorf("%s: %s", name, f)
			}
			return
		}
		last = found
	}
}

// screenshot returns what the X server shows, and keeps it if a folder is named.
func screenshot(t *testing.T, display string) image.Image {
	t.Helper()
	c := exec.Command("import", "-window", "root", "png:-")
	c.Env = append(os.Environ(), "DISPLAY="+display)
	b, err := c.Output()
	if err != nil {
		t.Fatal(err)
	}
	shot, err := png.Decode(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if dir := os.Getenv("COLDFLOOR_PICTURES"); dir != "" {
		name := strings.NewReplacer("/", "-", " ", "-").Replace(t.Name())
		_ = os.WriteFile(filepath.Join(dir, fmt.Sprintf("%s-%d.png", name, time.Now().UnixMilli())), b, 0o644)
	}
	return shot
}

// faults tells of cells that cannot be read well, each pair of colours once.
func faults(shot image.Image) (found []string) {
	seen, drawn := map[string]bool{}, false
	for y := range 24 {
		for x := range 80 {
			inks := map[color.Color]int{}
			for i := range cellWidth * cellHeight {
				inks[color.NRGBAModel.Convert(shot.At(x*cellWidth+i%cellWidth, y*cellHeight+i/cellWidth))]++
			}
			drawn = drawn || len(inks) == 2
			var hexes []string
			var lit []float64
			for c := range inks {
				as, _ := colorful.MakeColor(c)
				r, g, b := as.LinearRgb()
				hexes, lit = append(hexes, as.Hex()), append(lit, 0.2126*r+0.7152*g+0.0722*b)
			}
			if len(lit) == 2 {
				if ratio := (max(lit[0], lit[1]) + 0.05) / (min(lit[0], lit[1]) + 0.05); ratio >= 4.5 {
					continue
				}
			}
			pair := strings.Join(hexes, " and ")
			if len(lit) >= 2 && !seen[pair] && !seen[strings.Join([]string{hexes[1], hexes[0]}, " and ")] {
				seen[pair] = true
				found = append(found, fmt.Sprintf("%s in column %d of line %d", pair, x+1, y+1))
			}
		}
	}
	if !drawn {
		found = append(found, "nothing is drawn")
	}
	return found
}
