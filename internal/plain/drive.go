package plain

import (
	"bufio"
	"context"
	"errors"
	"io"
	"strings"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/units"
)

// ErrInterrupted is the cause of a context cancelled because the player
// interrupted the run: it is then stopped and logged. With any other cause the
// run is left as it stands, to be resumed later.
var ErrInterrupted = errors.New("interrupted")

// look is how often the clocks are read while nothing happens; a run takes much
// more than this for a machine that was away.
const look = 250 * time.Millisecond

// keys are the actions by what is typed before Enter.
var keys = map[string]engine.Action{
	"": engine.Finish, "+": engine.More, "b": engine.Back, "r": engine.Repeat, "s": engine.Skip,
}

// driver is a run under way, with what the player has typed so far.
type driver struct {
	run     *run.Active
	printer *Printer
	noticed string   // last said
	asked   bool     // whether to stop
	wanted  plan.Try // whose result was last asked for
}

// drive runs the run to its end, with the real waits between. The lines that
// arrive are what the player types; a nil channel is a run with no keyboard.
func (h *driver) drive(ctx context.Context, lines <-chan string) error {
	timer := time.NewTimer(0)
	defer timer.Stop()
	h.printer.seed = h.run.Options.Seed
	h.run.Do(engine.Start)
	for h.run.View().Phase != engine.Over {
		if err := h.printer.Err(); err != nil {
			return err
		}
		h.asks()
		timer.Reset(h.wait())
		select {
		case <-ctx.Done():
			if errors.Is(context.Cause(ctx), ErrInterrupted) {
				h.run.Do(engine.Stop)
			}
			return h.printer.Err()
		case text, ok := <-lines:
			if !ok {
				lines = nil
				h.keysGone()
				continue
			}
			h.typed(strings.ToLower(strings.TrimSpace(text)))
		case <-timer.C:
			h.tick()
		}
	}
	return h.printer.Err()
}

// wait returns how long to sleep: to the next deadline, or to the next look at
// the clocks if that comes first.
func (h *driver) wait() time.Duration {
	until := look
	sooner := func(clock time.Duration) {
		until = min(until, max(0, time.Duration(float64(clock)/run.SpeedOf(h.run.Clock))))
	}
	if next, ok := h.run.Next(); ok {
		sooner(next)
	}
	if in, ok := h.printer.tenLeft(h.run.View()); ok {
		sooner(in)
	}
	if in, ok := h.printer.call(h.run.View(), h.run.SpeaksCalls()); ok {
		sooner(in)
	}
	return until
}

// keysGone continues without the keyboard.
func (h *driver) keysGone() {
	h.printer.Notice(h.printer.lang.Plain.KeyboardGone)
	h.printer.keys = false
	h.run.LoseKeys()
}

// tick brings the run up to the present.
func (h *driver) tick() {
	if away := h.run.Tick(); away != 0 {
		h.printer.Notice(h.printer.lang.Away(away, h.run.Alone()))
	}
	n := h.run.Trouble()
	if n == "" {
		n = h.run.SoundNotice()
	}
	if n != h.noticed {
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
	halted := h.run.View().Phase == engine.Halted
	a, known := keys[text]
	switch {
	case h.result(text):
	case text == "q" && asked:
		h.run.Do(engine.Stop)
	case text == "q":
		h.asked = true
		stop := h.printer.lang.Plain.StopTwice
		if !h.run.Logged() {
			stop = h.printer.lang.Plain.StopTwiceUnlogged
		}
		h.printer.Notice(stop)
	case halted && (text == "p" || text == ""):
		h.run.Do(engine.Resume)
	case text == "p":
		h.run.Do(engine.Pause)
	case text == "t":
		h.run.Tick()
		h.printer.say(h.run.View().Clock, h.printer.standing(h.run.View()))
	case known:
		h.act(a)
	default:
		h.aside(text)
	}
}

// act acts on the run. What changes nothing is answered.
func (h *driver) act(a engine.Action) {
	h.run.Tick()
	if a == engine.More && h.run.View().Phase == engine.Overtime {
		h.printer.Notice(h.printer.lang.Plain.EnterEnds)
		return
	}
	h.run.Do(a)
}

// aside acts on what changes the sound or the variant, or says what can be
// typed.
func (h *driver) aside(text string) {
	switch text {
	case "m":
		if h.run.ToggleMute() {
			h.printer.Notice(h.printer.lang.Screen.SoundOff)
		} else {
			h.printer.Notice(h.printer.lang.Screen.SoundOn)
		}
	case "e":
		before := len(h.run.View().InEasier)
		h.run.Do(engine.Swap)
		if len(h.run.View().InEasier) == before {
			h.printer.Notice(h.printer.lang.Screen.NoEasier)
		}
	default:
		h.printer.Notice(h.printer.lang.Plain.Help)
	}
}

// start says what is to be run.
func (p *Printer) start() string {
	line := p.lang.Title(p.plan.Session.Title) + ", " + units.Clock(p.plan.Total) + ", " + p.lang.Sheet.Sets(p.plan.Totals.Sets)
	if contacts := p.lang.Sheet.Contacts(p.plan.Contacts, jumps.AllCounted(p.plan.Session.Blocks...)); contacts != "" {
		line += ", " + contacts
	}
	return line
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
