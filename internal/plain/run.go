package plain

import (
	"coldfloor/internal/run"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"coldfloor/internal/cautions"
	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
)

// Options says what is run, and where the lines come from and go to.
type Options struct {
	Host    *run.Host
	Plan    *plan.Plan
	Journal string    // file; empty: without a log
	In      io.Reader // what the player types; nil: there is no keyboard
	Out     io.Writer // the lines of the run
	Err     io.Writer // questions and notices around it
}

// Run runs a session as plain lines, from the questions before it to the word
// about the log after it.
func Run(ctx context.Context, o Options) error {
	s := session{Options: o}
	if o.In != nil {
		s.lines = Lines(o.In)
	}
	if err := s.openLog(ctx); err != nil {
		return err
	}
	p := o.Plan
	if s.resume != nil {
		p = s.resume.Plan
	}
	printer := NewPrinter(p, o.Out, o.In != nil)
	active, err := s.begin(printer)
	if err != nil {
		return err
	}
	mute := func() { printer.Notice(map[bool]string{true: "sound off", false: "sound on"}[active.ToggleMute()]) }
	return Drive(ctx, active, active.Clock, printer, s.lines, mute, notices(active))
}

// session is one run with what was settled before it.
type session struct {
	Options
	lines  <-chan string
	resume *run.Resumption // nil: a new run
}

// begin sets the run up: a new one, or the rest of one that did not end.
func (s *session) begin(p *Printer) (*run.Active, error) {
	if s.resume != nil {
		return s.Host.GoOn(s.resume, p)
	}
	return s.Host.Begin(s.Plan, p)
}

// openLog opens the log, and settles with the player what stands in the way.
func (s *session) openLog(ctx context.Context) error {
	if s.Journal == "" {
		return nil
	}
	log, err := run.OpenLog(s.Journal)
	if err != nil {
		return s.withoutLog(ctx, err)
	}
	s.Host.Journal = log.Journal
	if log.First() {
		for _, c := range cautions.FirstRun() {
			fmt.Fprintln(s.Err, c)
		}
	}
	for _, r := range log.Unfinished {
		if err := s.settle(ctx, r); err != nil || s.resume != nil {
			return err
		}
	}
	return nil
}

// withoutLog asks whether to run without a log; with nobody to ask the session
// does not start.
func (s *session) withoutLog(ctx context.Context, err error) error {
	if s.lines == nil {
		return fault.New("--no-log runs without one", "%w", err)
	}
	fault.Print(s.Err, err)
	fmt.Fprint(s.Err, "run without a log? y or n: ")
	if answer, ok := s.ask(ctx); !ok || answer != "y" {
		return errors.New("not started")
	}
	return nil
}

// settle asks what is to become of a run that did not end; with nobody to ask
// it is left for later.
func (s *session) settle(ctx context.Context, r *journal.Run) error {
	fmt.Fprintf(s.Err, "coldfloor: %s of %s did not end\n", safetext.Clean(r.Title()), r.Start.Local().Format("2006-01-02 15:04"))
	if s.lines == nil {
		fmt.Fprintln(s.Err, "hint: coldfloor run on a terminal offers to go on with it, or to log it as it stands")
		return nil
	}
	re, err := run.Resume(r)
	if err != nil {
		fmt.Fprint(s.Err, "l logs it as it stands, Enter leaves it for later: ")
	} else {
		fmt.Fprint(s.Err, "g goes on with it, l logs it as it stands, Enter leaves it for later: ")
	}
	answer, _ := s.ask(ctx)
	switch {
	case answer == "g" && err == nil:
		s.resume = re
	case answer == "l":
		return s.Host.Journal.CloseAsIs(r.ID)
	}
	return nil
}

// ask returns what the player types next, in small letters.
func (s *session) ask(ctx context.Context) (string, bool) {
	select {
	case text, ok := <-s.lines:
		return strings.ToLower(strings.TrimSpace(text)), ok
	case <-ctx.Done():
		return "", false
	}
}

// notices returns what says how the log and the sound are.
func notices(a *run.Active) func() string {
	return func() string {
		if t := a.Trouble(); t != "" {
			return t
		}
		return a.SoundNotice()
	}
}
