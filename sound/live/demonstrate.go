package live

import (
	"context"
	"time"

	"coldfloor/sound"
)

// between is the silence between two cues of a demonstration, and apartBy the
// time from one soft click or pip to the next of its kind.
const (
	between = 900 * time.Millisecond
	apartBy = 700 * time.Millisecond
)

// Ready waits until the device plays, or is given up, and reports whether it
// plays.
func (l *Sound) Ready(ctx context.Context) bool {
	poll := time.NewTicker(20 * time.Millisecond)
	defer poll.Stop()
	for {
		l.mu.Lock()
		s := l.state
		l.mu.Unlock()
		if s != opening || ctx.Err() != nil {
			return s == playing || s == asleep
		}
		select {
		case <-poll.C:
		case <-ctx.Done():
		}
	}
}

// Quiet waits until all that was to be heard has been, or ctx is done. It
// returns at once if there is no device.
func (l *Sound) Quiet(ctx context.Context) {
	poll := time.NewTicker(20 * time.Millisecond)
	defer poll.Stop()
	for {
		l.mu.Lock()
		quiet := len(l.queue) == 0 || l.state != playing && l.state != asleep
		l.mu.Unlock()
		if quiet || ctx.Err() != nil {
			return
		}
		select {
		case <-poll.C:
		case <-ctx.Done():
		}
	}
}

// Demonstrate plays clips one after the other, tells of each by its index as it
// begins, and returns when the last has been heard or ctx is done.
func (l *Sound) Demonstrate(ctx context.Context, list []*sound.Clip, tell func(i int)) error {
	for i, c := range list {
		tell(i)
		clips := demonstration(c)
		l.Play(clips...)
		last := clips[len(clips)-1]
		select {
		case <-time.After(last.At + last.Clip.Duration() + between):
		case <-ctx.Done():
			return ctx.Err()
		}
	}
	return nil
}

// demonstration returns a clip as it is met: those that come in a row in a row.
func demonstration(c *sound.Clip) []sound.Placed {
	clips := []sound.Placed{{At: 0, Clip: c}}
	if c == sound.GetReady || c.Kind == sound.Click {
		clips = append(clips, sound.Placed{At: apartBy, Clip: c}, sound.Placed{At: 2 * apartBy, Clip: c})
	}
	return clips
}
