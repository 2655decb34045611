package plain

import (
	"bufio"
	"coldfloor/internal/run"
	"context"
	"errors"
	"io"
	"strings"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/words"
)

// ErrInterrupted is the cause of a context cancelled because the player
// interrupted the run: it is then stopped and logged. With any other cause the
// run is left as it stands, to be gone on with later.
var ErrInterrupted = errors.New("interrupted")

// look is how often the clocks are read while nothing happens; an Active run takes
// much more than this for a machine that was away.
const look = 250 * time.Millisecond

// Help names what can be typed, each followed by Enter.
const Help = "Enter ends the set; p pauses and goes on, + adds 15 s, b goes back, r repeats, s skips, " +
	"e takes the easier variant, m mutes, q twice stops, ? shows this"

// keys are the actions by what is typed before Enter.
var keys = map[string]engine.Action{
	"": engine.Finish, "+": engine.More, "b": engine.Back, "r": engine.Repeat, "s": engine.Skip, "e": engine.Swap,
}

// Drive runs r, whose clock is c, to its end, with the real waits between.
// The lines that arrive are what the player types; a nil channel is a run with
// no keyboard. The mute function is called for the key of that name; notice
// returns what the player should know of the sound or the log.
func Drive(ctx context.Context, r *run.Active, c run.Clock, p *Printer, lines <-chan string, mute func(), notice func() string) error {
	h := driver{runner: r, printer: p, mute: mute, notice: notice}
	timer := time.NewTimer(0)
	defer timer.Stop()
	if lines != nil {
		p.Notice(Help)
	}
	r.Do(engine.Start)
	for r.View().Phase != engine.Over {
		if err := p.Err(); err != nil {
			return err
		}
		timer.Reset(wait(r, run.SpeedOf(c)))
		select {
		case <-ctx.Done():
			if errors.Is(context.Cause(ctx), ErrInterrupted) {
				r.Do(engine.Stop)
			}
			return p.Err()
		case text, ok := <-lines:
			if !ok {
				lines = nil // the keyboard is gone; the run goes on
				continue
			}
			h.typed(strings.ToLower(strings.TrimSpace(text)))
		case <-timer.C:
			h.tick()
		}
	}
	return p.Err()
}

// wait returns how long to sleep: to the next deadline, or to the next look at
// the clocks where that comes first.
func wait(r *run.Active, speed float64) time.Duration {
	next, ok := r.Next()
	if !ok {
		return look
	}
	return min(look, max(0, time.Duration(float64(next)/speed)))
}

// driver is a run with what the player has typed so far.
type driver struct {
	runner  *run.Active
	printer *Printer
	mute    func()
	notice  func() string
	noticed string // last said
	asked   bool   // whether to stop
}

// tick brings the run up to the present.
func (h *driver) tick() {
	if away := h.runner.Tick(); away != 0 {
		h.printer.Notice(words.Away(away))
	}
	if n := h.notice(); n != h.noticed {
		h.noticed = n
		if n != "" {
			h.printer.Notice(n)
		}
	}
}

// typed acts on a line from the player.
func (h *driver) typed(text string) {
	asked := h.asked
	h.asked = false
	a, known := keys[text]
	switch {
	case text == "q" && asked:
		h.runner.Do(engine.Stop)
	case text == "q":
		h.asked = true
		h.printer.Notice("q once more stops and logs what was done; anything else goes on")
	case text == "p" && h.runner.View().Phase == engine.Halted,
		text == "" && h.runner.View().Phase == engine.Halted:
		h.runner.Do(engine.Resume)
	case text == "p":
		h.runner.Do(engine.Pause)
	case text == "m":
		h.mute()
	case known:
		h.runner.Do(a)
	default:
		h.printer.Notice(Help)
	}
}

// Lines reads r line by line until it ends.
func Lines(r io.Reader) <-chan string {
	lines := make(chan string)
	go func() {
		defer close(lines)
		for s := bufio.NewScanner(r); s.Scan(); {
			lines <- s.Text()
		}
	}()
	return lines
}
