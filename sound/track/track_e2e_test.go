//go:build e2e

package track

import (
	"encoding/binary"
	"fmt"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"coldfloor/sound"
	"coldfloor/sound/soundtest"
)

// tool runs a program and returns what it printed.
func tool(t *testing.T, name string, args ...string) []byte {
	t.Helper()
	c := exec.Command(name, args...)
	var stderr strings.Builder
	c.Stderr = &stderr
	out, err := c.Output()
	if err != nil {
		t.Fatalf("%s: %v: %s", name, err, stderr.String())
	}
	return out
}

// samplesOf reads raw 16-bit little-endian samples.
func samplesOf(raw []byte) []int32 {
	out := make([]int32, len(raw)/2)
	for i := range out {
		out[i] = int32(int16(binary.LittleEndian.Uint16(raw[2*i:])))
	}
	return out
}

const twoBlocks = `
lead_in: 5s
blocks:
  - title: Up – first
    rounds: 2
    rest: 20s
    exercises:
      - {name: Hops, reps: 2, rep: 1s}
      - {name: Lunge, reps_per_side: 3, tempo: 2-1-1, switch: 3s}
  - title: Hold
    exercises: [{name: Plank, time: 30s}]
`

// TestTheReferenceDecoderFindsEveryCue decodes with the flac program and finds
// each cue at its sample.
func TestTheReferenceDecoderFindsEveryCue(t *testing.T) {
	p := soundtest.Planned(t, twoBlocks)
	o := sound.Options{Pips: 3, Clicks: true}
	file := writtenTrack(t, FLAC, p, o)
	tool(t, "flac", "--test", "--silent", "--warnings-as-errors", file)
	got := samplesOf(tool(t, "flac", "--decode", "--silent", "--stdout", "--force-raw-format", "--endian=little", "--sign=signed", file))
	if !slices.Equal(got, mixdown(p, o)) {
		t.Error("the decoded samples are not the clips at their samples")
	}
	for c := range sound.Timeline(p, sound.Beginning(p), o) {
		at, first := sound.Position(c.At), 0
		for pcm(float64(c.Clip.Samples()[first])) == 0 {
			first++ // of a cue that swells from nothing
		}
		if got[at] != 0 || got[at+first] != pcm(float64(c.Clip.Samples()[first])) {
			t.Errorf("%s at %v does not begin at sample %d", c.Clip.Name, c.At, at)
		}
	}
}

func TestTheReferenceToolsReadTitleAndChapters(t *testing.T) {
	p := soundtest.Planned(t, twoBlocks)
	list := string(tool(t, "metaflac", "--list", writtenTrack(t, FLAC, p, sound.Options{})))
	for _, want := range []string{
		"TITLE=Test", "CHAPTER001=00:00:05.000", "CHAPTER001NAME=Up – first", "CHAPTER002NAME=Hold",
		"number of tracks: 3", fmt.Sprintf("offset: %d", sound.Position(p.Blocks[1].Start)), "(LEAD-OUT)",
		"minimum blocksize: 4096", "maximum blocksize: 4096", fmt.Sprintf("total samples: %d", trackLength(p, sound.Options{})),
	} {
		if !strings.Contains(list, want) {
			t.Errorf("metaflac does not list %q:\n%s", want, list)
		}
	}
}

func TestAnIndependentReaderReadsTheWAV(t *testing.T) {
	p := soundtest.Planned(t, twoBlocks)
	o := sound.Options{Pips: 3}
	got := samplesOf(tool(t, "sox", writtenTrack(t, WAV, p, o), "-t", "raw", "-e", "signed", "-b", "16", "-L", "-"))
	if !slices.Equal(got, mixdown(p, o)) {
		t.Error("the decoded samples are not the clips at their samples")
	}
}
