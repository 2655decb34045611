// Package track writes a session as an audio track: every cue of its timeline
// at its exact sample, as FLAC or WAV, with chapters and a list of cues.
package track

import (
	"context"
	"fmt"
	"io"
	"iter"
	"math"
	"path/filepath"
	"strings"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/sound"
)

// Format is a file format of a track.
type Format string

// The formats.
const (
	FLAC Format = "flac" // RFC 9639, lossless and, for mostly silence, small
	WAV  Format = "wav"  // RIFF, 16-bit PCM, 5 MB a minute
)

// FormatOf returns the format that a file's ending names.
func FormatOf(file string) (f Format, ok bool) {
	f = Format(strings.ToLower(strings.TrimPrefix(filepath.Ext(file), ".")))
	return f, f == FLAC || f == WAV
}

// trackBlock is how many samples are made at a time: the block of a FLAC frame.
const trackBlock = 4096

// encoder writes 16-bit mono samples in one of the formats.
type encoder interface {
	silence(n int) error         // n zero samples, at most trackBlock
	write(samples []int32) error // at most trackBlock
	finish() error               // completes the file's headers
}

// Write writes an untouched run of p to w as audio: every clip of its
// timeline at its exact sample, from the scheduler that plays live. No set
// waits for a key. Progress, if not nil, is told after every second or so of
// work how much of the track is written. Memory stays flat whatever the length.
func Write(ctx context.Context, w io.WriteSeeker, f Format, p *plan.Plan, o sound.Options, progress func(written, all time.Duration)) error {
	o.AllPaced = true
	t := track{plan: p, opts: o, sched: sound.NewScheduler(), length: trackLength(p, o)}
	enc, err := t.encoder(w, f)
	if err != nil {
		return err
	}
	next, stop := iter.Pull(sound.Timeline(p, sound.Beginning(p), o))
	defer stop()
	t.next = next
	t.pull()
	for pos := 0; pos < t.length; pos += trackBlock {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		if err := t.block(enc, min(trackBlock, t.length-pos)); err != nil {
			return err
		}
		if progress != nil && pos%(64*trackBlock) == 0 {
			progress(sound.SampleRate.D(pos), sound.SampleRate.D(t.length))
		}
	}
	return enc.finish()
}

// track is one writing of a track.
type track struct {
	plan   *plan.Plan
	opts   sound.Options
	sched  *sound.Scheduler
	length int // in samples
	next   func() (sound.Placed, bool)
	coming sound.Placed
	more   bool
	mixed  [trackBlock][2]float64
	out    [trackBlock]int32
}

// trackLength returns the length of a track in samples: that of the plan, and
// what still sounds at its end.
func trackLength(p *plan.Plan, o sound.Options) int {
	n := sound.Position(p.Total)
	for c := range sound.Timeline(p, sound.Beginning(p), o) {
		n = max(n, sound.Position(c.At)+c.Clip.Len())
	}
	return n
}

// encoder returns the encoder of a format.
func (t *track) encoder(w io.WriteSeeker, f Format) (encoder, error) {
	switch f {
	case FLAC:
		return newFLACEncoder(w, t.length, t.plan)
	case WAV:
		return newWAVEncoder(w, t.length, t.plan)
	}
	return nil, fmt.Errorf("no track format %q", f)
}

// pull takes the next clip from the timeline.
func (t *track) pull() { t.coming, t.more = t.next() }

// block writes the next n samples.
func (t *track) block(enc encoder, n int) error {
	end := t.sched.Pos() + n
	for ; t.more && sound.Position(t.coming.At) < end; t.pull() {
		t.sched.Place(sound.Position(t.coming.At), t.coming.Clip)
	}
	if t.sched.Silence(n) == n {
		t.sched.Skip(n)
		return enc.silence(n)
	}
	t.sched.Stream(t.mixed[:n])
	for i, v := range t.mixed[:n] {
		t.out[i] = pcm(v[0])
	}
	return enc.write(t.out[:n])
}

// pcm returns a sample as a 16-bit integer.
func pcm(v float64) int32 { return int32(math.Round(min(max(v, -1), 1) * math.MaxInt16)) }
