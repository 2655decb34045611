package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"coldfloor/internal/calendar"
	"coldfloor/internal/fault"
	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
)

// calendarFlags is how calendar was called.
type calendarFlags struct {
	file, alarm string
	language    string
	revision    int
	force       bool
}

// newCalendar returns the command that writes a plan of weeks as a calendar.
func newCalendar() *cobra.Command {
	var f calendarFlags
	c := &cobra.Command{
		Use:   "calendar WEEKS -o FILE.ics",
		Short: "Write a plan of weeks as a calendar",
		Long: `Write a plan of weeks as a calendar (RFC 5545) that phones and computers
import: an event for each session and each match. A session with a time of day
lasts as long as its plan; one without is an all-day event.

After a change, write it with a higher --revision and send it again: sessions
that moved move, and those left out since are cancelled.`,
		Args: argsError(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error { return f.run(c, args[0]) },
	}
	c.Flags().StringVarP(&f.file, "output", "o", "", "the `FILE` to write: .ics")
	c.Flags().IntVar(&f.revision, "revision", 0, "edition `N` of the calendar, to be raised with each change")
	c.Flags().StringVar(&f.alarm, "alarm", "", "remind this `TIME` before each session or match at a time of day, such as 30min")
	c.Flags().BoolVar(&f.force, "force", false, "replace the file even if coldfloor did not write it")
	languageFlag(c, &f.language)
	return c
}

// run writes the calendar of the plan that is named.
func (f *calendarFlags) run(c *cobra.Command, name string) error {
	o, err := f.options()
	if err != nil {
		return err
	}
	p, err := openWeeks(c, name)
	if err != nil {
		return err
	}
	mine, err := settings.Load()
	if err != nil {
		return err
	}
	o.Changed, o.Language = p.Changed(), languageOf(f.language, mine)
	if err := calendar.WriteFile(f.file, plan.OfWeeks(p), o, f.force); err != nil {
		return err
	}
	if o.Alarm > 0 && !anyTimed(p) {
		fault.Print(c.ErrOrStderr(), fault.New(`write {session: NAME, at: "18:30"} under days`, "no alarm is set: no session of the plan has a time of day"))
	}
	return nil
}

// options reads the flags.
func (f *calendarFlags) options() (o calendar.Options, err error) {
	switch {
	case f.file == "":
		return o, usageError{"no file to write is given", "add -o and a file, such as -o autumn.ics"}
	case !strings.HasSuffix(strings.ToLower(f.file), ".ics"):
		return o, usageError{fmt.Sprintf("%q does not end in .ics", f.file), "write -o autumn.ics"}
	case f.revision < 0:
		return o, usageError{fmt.Sprintf("--revision %d is below 0", f.revision), "raise it by 1 with each new edition"}
	}
	o.Revision = f.revision
	if f.alarm != "" {
		if o.Alarm, err = units.ParseDuration(f.alarm); err != nil {
			return o, usageError{fmt.Sprintf("--alarm %q %v", f.alarm, err), units.DurationHint}
		}
	}
	return o, nil
}

// anyTimed reports whether a session or a match has a time of day.
func anyTimed(p *weeks.Plan) bool {
	for _, s := range p.Slots {
		if s.At != nil {
			return true
		}
	}
	for _, m := range p.Matches {
		if m.At != nil {
			return true
		}
	}
	return false
}

// openWeeks opens a plan of weeks, and refuses a session.
func openWeeks(c *cobra.Command, name string) (*weeks.Plan, error) {
	o, err := openAny(c, name)
	if err != nil {
		return nil, err
	}
	if o.Plan == nil {
		return nil, fault.New("name a file with weeks: in it, or a built-in plan: "+weeks.Builtins()[0].Name, "%s is a session, not a plan of weeks", name)
	}
	return o.Plan, nil
}
