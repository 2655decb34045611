// Package plain runs a session without control of the screen: one line an
// event, each with its time on the session's clock, for screen readers, plain
// terminals and pipes.
//
// A line reads "M:SS.mmm kind what", as in
//
//	0:10.000 work Pogo hops, 10 reps, round 1 of 3
//
// The kinds are start, the kinds of a step (lead-in, work, switch, change,
// rest), set, wait, pause, count-in, go-on, more, variant, notice, finish.
package plain

import (
	"fmt"
	"io"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
	"coldfloor/internal/words"
)

// Printer writes events as lines. It is a engine.Listener.
type Printer struct {
	plan *plan.Plan
	out  io.Writer
	hand bool          // somebody can press keys
	last time.Duration // session time of the last line
	err  error         // the first failure to write
}

// NewPrinter returns a Printer for a run of p. With keys it says how a set
// that waits is ended.
func NewPrinter(p *plan.Plan, out io.Writer, keys bool) *Printer {
	return &Printer{plan: p, out: out, hand: keys}
}

// Heard writes one line for each event that a player wants to know of.
func (p *Printer) Heard(events []engine.Event, _ engine.View) {
	for _, e := range events {
		p.last = e.Clock
		if kind, what := p.line(e); kind != "" {
			p.print(kind, what)
		}
	}
}

// Err returns the first failure to write, such as a closed pipe.
func (p *Printer) Err() error { return p.err }

// Notice writes a line that belongs to no event.
func (p *Printer) Notice(text string) { p.print("notice", safetext.Clean(text)) }

// print writes one line.
func (p *Printer) print(kind, what string) {
	if p.err != nil {
		return
	}
	if what != "" {
		what = " " + what
	}
	_, p.err = fmt.Fprintf(p.out, "%s %s%s\n", units.ClockMillis(p.last), kind, what)
}

// line returns what is said of an event; no kind for one that says nothing
// new.
func (p *Printer) line(e engine.Event) (kind, what string) {
	switch e.Kind {
	case engine.Started:
		return "start", p.start()
	case engine.StepBegan:
		return string(p.plan.Steps[e.Step].Kind), p.step(e.Step, e.Easier)
	case engine.SetEnded:
		return "set", p.set(e)
	case engine.Waiting:
		if p.hand {
			return "wait", "press Enter when the set is done"
		}
	case engine.Paused:
		return "pause", pauses[e.Cause]
	case engine.CountIn:
		return "count-in", units.FormatDuration(e.Length)
	case engine.Resumed:
		return "go-on", ""
	case engine.Extended:
		return "more", units.FormatDuration(e.Length)
	case engine.Swapped:
		return "variant", p.variant(e)
	case engine.Finished:
		return "finish", finish(e.Cause)
	}
	return "", ""
}

// pauses says why the clock stands.
var pauses = map[engine.Cause]string{
	engine.ByKey: "by key",
	engine.ByGap: "the machine was away",
}

// start says what is run.
func (p *Printer) start() string {
	return fmt.Sprintf("%s, %s, %d sets, %d contacts", safetext.Clean(p.plan.Session.Title),
		units.Clock(p.plan.Total), p.plan.Totals.Sets, p.plan.Contacts)
}

// step says what to do now.
func (p *Printer) step(i int, easier bool) string {
	s := p.plan.Steps[i]
	switch s.Kind {
	case plan.Work:
		return withNote(p.task(i, easier), words.Cues(p.plan, i, easier))
	case plan.Switch:
		return fmt.Sprintf("%s to the %s", units.FormatDuration(s.Length), words.Side(s.Side))
	}
	text := units.FormatDuration(s.Length)
	next := p.plan.NextWork(i)
	if next < 0 {
		return text
	}
	text += ", next " + p.task(next, easier)
	if how := p.plan.Exercise(next).How; how != "" && !easier {
		return withNote(text, safetext.Clean(how))
	}
	return text
}

// task says what a work step asks for, and in which round.
func (p *Printer) task(i int, easier bool) string {
	text := words.Task(p.plan, i, easier)
	if round := words.Round(p.plan, i); round != "" {
		text += ", " + round
	}
	return text
}

// set says what was done of a set.
func (p *Printer) set(e engine.Event) string {
	set := p.plan.Sets[e.Set.Set]
	text := fmt.Sprintf("%s, %s", words.Outcome(e.Set.Outcome), words.Movement(p.plan, set.First, e.Set.Easier))
	if set.Reps > 0 {
		text += fmt.Sprintf(", %d of %d reps", e.Set.Reps, set.Reps)
	}
	return text + ", " + units.FormatDuration(e.Taken.Round(time.Millisecond))
}

// variant says which variant is on.
func (p *Printer) variant(e engine.Event) string {
	return words.Movement(p.plan, p.plan.Meant(e.Step), e.Easier)
}

// finish says how the session ended.
func finish(why engine.Cause) string {
	if why == engine.ByStop {
		return "stopped"
	}
	return "complete"
}

// withNote adds a note in brackets, where there is one.
func withNote(text, note string) string {
	if note == "" {
		return text
	}
	return text + " (" + note + ")"
}
