//go:build e2e

package main

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/gopxl/beep/v2/wav"
)

// TestSpokenTrackLeavesStartsAlone writes a session as a track with words and
// without. What the words add must be silence wherever a cue but a pip sounds:
// speech has ended before the next start, and starts are as exact as without.
func TestSpokenTrackLeavesStartsAlone(t *testing.T) {
	h := newHome(t, short)
	plain, spoken, cues := filepath.Join(h.dir, "plain.wav"), filepath.Join(h.dir, "spoken.wav"), filepath.Join(h.dir, "cues.csv")
	h.coldfloor("track", h.file, "-o", plain)
	h.coldfloor("track", h.file, "-o", spoken, "--voice", "--cues", cues)
	a, b := readWAV(t, plain), readWAV(t, spoken)

	f, err := os.Open(cues)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	starts, words := 0, 0
	for _, row := range rows[1:] {
		at, err := strconv.Atoi(row[1])
		if err != nil {
			t.Fatal(err)
		}
		switch name := row[2]; {
		case strings.HasPrefix(name, "words: "):
			if at < len(a) && added(a, b, at, at+22050) < 0.05 {
				t.Errorf("%s at sample %d is not heard", name, at)
			}
			words++
		case name != "get ready":
			if d := added(a, b, at, at+4410); d > 1.0/32768 {
				t.Errorf("%s at sample %d is covered by words, by %v", name, at, d)
			}
			starts++
		}
	}
	if starts < 8 || words < 8 {
		t.Errorf("%d cues and %d words in %d rows", starts, words, len(rows))
	}
}

// added returns the largest difference between two tracks from one sample to
// another.
func added(a, b []float64, from, to int) (most float64) {
	for i := from; i < min(to, len(a), len(b)); i++ {
		most = max(most, math.Abs(a[i]-b[i]))
	}
	return most
}

// readWAV returns the samples of the first channel.
func readWAV(t *testing.T, path string) []float64 {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	s, _, err := wav.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	var out []float64
	chunk := make([][2]float64, 4096)
	for {
		n, ok := s.Stream(chunk)
		if !ok {
			return out
		}
		for _, x := range chunk[:n] {
			out = append(out, x[0])
		}
	}
}
