package sound

import (
	"context"
	"time"
)

// between is the silence between two cues of a demonstration, and apartBy the
// time from one soft click or pip to the next of its kind.
const (
	between = 900 * time.Millisecond
	apartBy = 700 * time.Millisecond
)

// Ready waits until the device plays, or is given up, and reports whether it
// plays.
func (l *Live) Ready(ctx context.Context) bool {
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

// Demonstrate tells of each cue as it begins to play it, and returns when the
// last has been heard or ctx is done.
func (l *Live) Demonstrate(ctx context.Context, tell func(Cue)) error {
	for _, c := range Cues() {
		tell(c)
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

// demonstration returns a cue as it is met: those that come in a row in a row.
func demonstration(c Cue) []Placed {
	clips := []Placed{{0, c.Clip}}
	if c.Clip == GetReady || !c.calls() {
		clips = append(clips, Placed{apartBy, c.Clip}, Placed{2 * apartBy, c.Clip})
	}
	return clips
}
