// Package sound makes what a player hears: cues as short clips, a timeline
// that says when each is heard, and one scheduler that mixes clips at exact
// sample positions. Its two rooms play from them: live to the sound device,
// track to a file.
package sound

import (
	"fmt"
	"sync"
	"time"

	"github.com/gopxl/beep/v2"
)

// SampleRate is the rate, in samples a second, of every clip, of the scheduler
// and of the track.
const SampleRate beep.SampleRate = 44100

// Kind is what a clip is to the player.
type Kind int

// The kinds of clip.
const (
	Signal Kind = iota // something begins, ends or is announced
	Click              // goes along with the work, softly
	Word               // spoken
	Call               // a direction to react to, as tones or spoken
)

// Clip is a stretch of mono sound at SampleRate with a name: a cue, or spoken
// words. A Clip is never changed once made, so that many may play it at once.
type Clip struct {
	Name    string // short, lower case, stable: it stands in cue lists
	Kind    Kind
	length  int // in samples
	samples func() []float32
}

// NewClip returns a clip of samples from -1 to 1, which it keeps.
func NewClip(name string, kind Kind, samples []float32) *Clip {
	return &Clip{name, kind, len(samples), func() []float32 { return samples }}
}

// newCue returns a clip of notes played one after another at a loudness from 0
// to 1. Its samples are made when they are first wanted, for most commands
// play nothing.
func newCue(name string, loudness float64, notes ...note) *Clip {
	kind := Signal
	if loudness == soft {
		kind = Click
	}
	return &Clip{name, kind, lengthOf(notes), sync.OnceValue(func() []float32 { return synthesise(loudness, notes) })}
}

// Samples returns the clip's samples, from -1 to 1, which are not to be
// changed.
func (c *Clip) Samples() []float32 { return c.samples() }

// Len returns how many samples the clip has.
func (c *Clip) Len() int { return c.length }

// Duration returns how long the clip sounds.
func (c *Clip) Duration() time.Duration { return SampleRate.D(c.length) }

// Streamer returns a fresh streamer that plays the clip once from its start,
// the same on both channels.
func (c *Clip) Streamer() beep.StreamSeeker { return &clipStreamer{clip: c} }

// Position returns the sample at which session time t falls: t times
// SampleRate, rounded to the nearest sample, halves away from zero. It is the
// only place where times become samples, so that live sound and track agree.
func Position(t time.Duration) int {
	const second = int64(time.Second)
	n, half := int64(t)*int64(SampleRate), second/2
	if n < 0 {
		half = -half
	}
	return int((n + half) / second)
}

// clipStreamer is one playing of a clip.
type clipStreamer struct {
	clip *Clip
	pos  int
}

// Stream implements beep.Streamer.
func (s *clipStreamer) Stream(samples [][2]float64) (n int, ok bool) {
	rest := s.clip.Samples()[s.pos:]
	n = min(len(samples), len(rest))
	for i, v := range rest[:n] {
		samples[i] = [2]float64{float64(v), float64(v)}
	}
	s.pos += n
	return n, n > 0 || len(samples) == 0 && len(rest) > 0
}

// Err implements beep.Streamer; it is always nil.
func (s *clipStreamer) Err() error { return nil }

// Len implements beep.StreamSeeker.
func (s *clipStreamer) Len() int { return s.clip.length }

// Position implements beep.StreamSeeker.
func (s *clipStreamer) Position() int { return s.pos }

// Seek implements beep.StreamSeeker.
func (s *clipStreamer) Seek(p int) error {
	if p < 0 || p > s.Len() {
		return fmt.Errorf("seek to sample %d of a clip of %d", p, s.Len())
	}
	s.pos = p
	return nil
}
