//go:build e2e && linux

package main

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
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

// linear returns the light of one channel of an sRGB colour, 0 to 1 (IEC
// 61966-2-1).
func linear(channel uint8) float64 {
	v := float64(channel) / math.MaxUint8
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

// faults lists the cells that cannot be read well, each pair of colours once.
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
				n := c.(color.NRGBA)
				hexes = append(hexes, fmt.Sprintf("#%02x%02x%02x", n.R, n.G, n.B))
				lit = append(lit, 0.2126*linear(n.R)+0.7152*linear(n.G)+0.0722*linear(n.B))
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
