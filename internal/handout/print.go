package handout

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"hash"
	"math"
	"os"
	"sync"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
	"coldfloor/sound"
	"coldfloor/sound/track"
)

// printOf returns the print of a track that is not made yet: of its title and
// chapters, of every cue in it and when it begins, of the words, and of how
// tracks are made.
func printOf(ctx context.Context, p *plan.Plan, heard Heard) (print, error) {
	way, err := way()
	if err != nil {
		return print{}, err
	}
	h := sha256.New()
	fmt.Fprintf(h, "%x %q %d\n", way, p.Session.Title, p.Total)
	for _, b := range p.Blocks {
		fmt.Fprintf(h, "%q %d\n", b.Title, b.Start)
	}
	fmt.Fprintf(h, "%x\n", heard.Print)
	cues := heard.Cues
	cues.AllPaced = true
	clips := map[*sound.Clip]print{}
	for placed := range sound.Timeline(p, sound.Beginning(p), cues) {
		if err := ctx.Err(); err != nil {
			return print{}, err
		}
		clip, ok := clips[placed.Clip]
		if !ok {
			clip = samplesOf(placed.Clip)
			clips[placed.Clip] = clip
		}
		fmt.Fprintf(h, "%d %x\n", placed.At, clip)
	}
	return sumOf(h), nil
}

// samplesOf returns the print of a clip's sound.
func samplesOf(c *sound.Clip) print {
	h := sha256.New()
	var b []byte
	for _, s := range c.Samples() {
		b = binary.LittleEndian.AppendUint32(b[:0], math.Float32bits(s))
		h.Write(b)
	}
	return sumOf(h)
}

func sumOf(h hash.Hash) (p print) {
	h.Sum(p[:0])
	return p
}

// short is a session whose track has some of everything that is mixed and
// encoded: clips alone and over each other, and silence.
const short = `coldfloor: 1
title: Short
lead_in: 2s
blocks:
  - {title: Up, exercises: [{name: Hop, reps: 3, rep: 100ms}, {name: Hold, time_per_side: 1s, switch: 1s}], change: 200ms}
`

// way returns what stands for how tracks are made: that of a short session,
// which is another as soon as anything about mixing or encoding is.
var way = sync.OnceValues(func() (print, error) {
	s, err := sessions.Parse("short", []byte(short))
	if err != nil {
		return print{}, err
	}
	file, err := os.CreateTemp("", "coldfloor-way")
	if err != nil {
		return print{}, err
	}
	defer os.Remove(file.Name())
	defer file.Close()
	if err := track.Write(context.Background(), file, track.FLAC, plan.Of(s), sound.Options{Pips: sound.DefaultPips, Clicks: true}, nil); err != nil {
		return print{}, err
	}
	var all bytes.Buffer
	if _, err := file.Seek(0, 0); err != nil {
		return print{}, err
	}
	if _, err := all.ReadFrom(file); err != nil {
		return print{}, err
	}
	return sha256.Sum256(all.Bytes()), nil
})
