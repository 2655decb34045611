package sound

import (
	"slices"
	"sync"
	"time"

	"github.com/gopxl/beep/v2"
)

// fadeLength is how many samples a sound that is cut short, or a change of
// volume, takes: long enough not to click.
var fadeLength = Position(ramp)

// rewindable is how many samples Rewind may go back.
var rewindable = Position(3 * time.Second)

// Scheduler is a beep.Streamer that never ends: silence, with clips mixed in
// at exact sample positions counted from its first sample. It is safe for
// concurrent use. The zero Scheduler is silent at volume 0; use NewScheduler.
type Scheduler struct {
	mu     sync.Mutex
	pos    int        // of the next sample to be streamed
	ahead  []playback // not yet begun, by start
	now    []playback // begun, and ended no longer than rewindable ago
	gain   float64    // at pos
	volume float64    // what gain moves to
}

// playback is one playing of a clip from a position on.
type playback struct {
	clip  *Clip
	start int
	cut   int // position from which it fades out; -1: it plays to its end
}

// NewScheduler returns a scheduler at position 0 and full volume.
func NewScheduler() *Scheduler { return &Scheduler{gain: 1, volume: 1} }

// Place lets c begin at sample pos. If that is already past it begins with
// the next sample; the position it was given is returned.
func (s *Scheduler) Place(pos int, c *Clip) int {
	s.mu.Lock()
	defer s.mu.Unlock()
	pos = max(pos, s.pos)
	i, _ := slices.BinarySearchFunc(s.ahead, pos+1, func(p playback, pos int) int { return p.start - pos })
	s.ahead = slices.Insert(s.ahead, i, playback{clip: c, start: pos, cut: -1})
	return pos
}

// WithdrawAfter takes back every clip that begins at sample pos or later and
// has not begun.
func (s *Scheduler) WithdrawAfter(pos int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.ahead = slices.DeleteFunc(s.ahead, func(p playback) bool { return p.start >= pos })
}

// Cut fades out, over a few milliseconds, what sounds now.
func (s *Scheduler) Cut() {
	s.mu.Lock()
	defer s.mu.Unlock()
	for i := range s.now {
		if s.now[i].cut < 0 {
			s.now[i].cut = s.pos
		}
	}
}

// Rewind goes back n samples, at most three seconds of them, for a device that
// threw away what it had not played yet. They are streamed again, as things
// stand then.
func (s *Scheduler) Rewind(n int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.pos -= min(n, s.pos, rewindable)
	for len(s.now) > 0 {
		last := s.now[len(s.now)-1]
		if last.start < s.pos {
			return
		}
		s.now = s.now[:len(s.now)-1]
		s.ahead = slices.Insert(s.ahead, 0, last)
	}
}

// Pos returns the position of the next sample to be streamed.
func (s *Scheduler) Pos() int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.pos
}

// SetVolume sets the loudness, from 0 to 1. It is reached over a few
// milliseconds.
func (s *Scheduler) SetVolume(v float64) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.volume = min(max(v, 0), 1)
}

// Silence returns how many samples from here on are silent as things stand,
// at most limit.
func (s *Scheduler) Silence(limit int) int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.silence(limit)
}

// silence is Silence with the lock held.
func (s *Scheduler) silence(limit int) int {
	if slices.ContainsFunc(s.now, func(p playback) bool { return p.end() > s.pos }) {
		return 0
	}
	if len(s.ahead) > 0 {
		return min(limit, s.ahead[0].start-s.pos)
	}
	return limit
}

// Skip passes over up to n samples of silence and returns how many there were.
func (s *Scheduler) Skip(n int) int {
	s.mu.Lock()
	defer s.mu.Unlock()
	n = s.silence(n)
	s.pos += n
	if n >= fadeLength {
		s.gain = s.volume
	}
	return n
}

// Stream implements beep.Streamer.
func (s *Scheduler) Stream(samples [][2]float64) (n int, ok bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	clear(samples)
	end := s.pos + len(samples)
	for len(s.ahead) > 0 && s.ahead[0].start < end {
		s.now = append(s.now, s.ahead[0])
		s.ahead = slices.Delete(s.ahead, 0, 1)
	}
	for _, p := range s.now {
		p.mix(samples, s.pos)
	}
	s.now = slices.DeleteFunc(s.now, func(p playback) bool { return p.end() <= end-rewindable })
	s.amplify(samples)
	s.pos = end
	return len(samples), true
}

// Err implements beep.Streamer; it is always nil.
func (s *Scheduler) Err() error { return nil }

// amplify applies the volume, moving to a new one gradually.
func (s *Scheduler) amplify(samples [][2]float64) {
	if s.gain == 1 && s.volume == 1 {
		return
	}
	step := 1 / float64(fadeLength)
	for i := range samples {
		s.gain += min(max(s.volume-s.gain, -step), step)
		samples[i][0] *= s.gain
		samples[i][1] *= s.gain
	}
}

// end returns the position after the last sample of p.
func (p playback) end() int {
	end := p.start + p.clip.Len()
	if p.cut >= 0 {
		end = min(end, max(p.cut, p.start)+fadeLength)
	}
	return end
}

// mix adds p to samples, the first of which is at pos.
func (p playback) mix(samples [][2]float64, pos int) {
	from, to := max(p.start, pos), min(p.end(), pos+len(samples))
	if from >= to {
		return
	}
	clip := p.clip.Samples()
	for at := from; at < to; at++ {
		v := float64(clip[at-p.start])
		if p.cut >= 0 && at > p.cut {
			v *= swell(p.cut+fadeLength-at, fadeLength)
		}
		samples[at-pos][0] += v
		samples[at-pos][1] += v
	}
}

var _ beep.Streamer = (*Scheduler)(nil)
