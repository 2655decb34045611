package plain

import (
	"fmt"
	"io"
	"strings"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
)

// Printer writes what happens as lines. It is an engine.Listener; make it with
// NewPrinter.
type Printer struct {
	plan   *plan.Plan
	lang   *text.Language
	out    io.Writer
	keys   bool // somebody can press keys
	stamps bool

	last   time.Duration // session time of the last line
	began  time.Duration // session time of the step's start
	told   map[int]bool  // exercises whose how was said
	ten    bool          // the rest's last ten seconds were said
	worked bool          // something was done
	free   time.Duration // session time from which the last line has been heard
	called time.Duration // since the step's start, up to where calls were seen to
	seed   uint64        // of the calls
	err    error         // the first failure to write
}

// NewPrinter returns a Printer for a run of p, in a language. With keys it says
// which key does what; with stamps it says when things happen.
func NewPrinter(p *plan.Plan, l *text.Language, out io.Writer, keys, stamps bool) *Printer {
	return &Printer{plan: p, lang: l, out: out, keys: keys, stamps: stamps, told: map[int]bool{}}
}

// Heard writes one line for each moment at which something happened that a
// player wants to know of.
func (p *Printer) Heard(events []engine.Event, after engine.View) {
	for len(events) > 0 {
		n := 1
		for n < len(events) && events[n].Now == events[0].Now {
			n++
		}
		p.moment(events[:n], after)
		events = events[n:]
	}
}

// moment writes the line for what happened at one moment.
func (p *Printer) moment(events []engine.Event, after engine.View) {
	line, set := "", ""
	for _, e := range events {
		p.last = e.Clock
		switch e.Kind {
		case engine.StepBegan:
			p.began, p.ten, p.called = e.Clock-e.Taken, false, e.Taken
			line = p.step(e, after)
		case engine.SetEnded:
			p.worked = p.worked || e.Set.Outcome != engine.Skipped
			set = p.setLeft(e)
		case engine.Resumed:
			if e.Clock > p.began {
				line = p.goesOn(e, after)
			} else if line == "" {
				line = p.step(e, after)
			}
		default:
			if text := p.other(e, after); text != "" {
				line = text
			}
		}
	}
	if line != "" && set != "" {
		line = strings.TrimSuffix(line, ".") + "; " + set
	}
	if line != "" {
		p.print(line)
	}
}

// other returns what is said of an event that begins no step; nothing for one
// that says nothing new.
func (p *Printer) other(e engine.Event, after engine.View) string {
	switch e.Kind {
	case engine.Waiting:
		if p.keys {
			return p.lang.Plain.WaitEnter
		}
	case engine.Paused:
		return p.pause(e.Cause)
	case engine.CountIn:
		return fitted(e.Length, p.lang.Plain.CountIn+" "+seconds(e.Length), p.task(p.plan.Meant(e.Step), after)...)
	case engine.Extended:
		return p.lang.Plain.More + ", " + seconds(e.Length)
	case engine.Swapped:
		return p.lang.Plain.Variant + " " + p.name(p.plan.Meant(e.Step), after)
	case engine.Finished:
		return p.finish(e.Cause)
	}
	return ""
}

// pause says that the clock has stopped, and what starts it again.
func (p *Printer) pause(why engine.Cause) string {
	line := p.lang.Plain.Pause
	if why == engine.ByGap {
		line = p.lang.Plain.PauseAway
	}
	if p.keys {
		line += "; " + p.lang.Plain.ToResume
	}
	return line
}

// finish says how the session ended.
func (p *Printer) finish(why engine.Cause) string {
	switch {
	case why == engine.ByStop:
		return p.lang.Plain.Stopped
	case !p.worked:
		return p.lang.Plain.NothingDone
	}
	return p.lang.Plain.Finished
}

// Notice writes a line that belongs to no event.
func (p *Printer) Notice(text string) { p.print(p.lang.Plain.Notice + " " + safetext.Clean(text)) }

// say writes a line that was made of safe text, at session time t.
func (p *Printer) say(t time.Duration, text string) {
	p.last = t
	p.print(text)
}

// print writes one line.
func (p *Printer) print(line string) {
	if p.err != nil {
		return
	}
	p.free = p.last + ReadingTime(line)
	if p.stamps {
		line += " (" + units.ClockMillis(p.last) + ")"
	}
	_, p.err = fmt.Fprintln(p.out, line)
}

// Err returns the first failure to write, such as a closed pipe.
func (p *Printer) Err() error { return p.err }
