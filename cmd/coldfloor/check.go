package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/briefing"
	"coldfloor/internal/check"
	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/logbook"
	"coldfloor/internal/nearest"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
)

// checkFlags is how check was called.
type checkFlags struct {
	asJSON, asSARIF       bool
	within, room, explain string
	journal, settings     string
	days                  dayFlags
}

// newCheck returns the command that holds sessions against published ranges
// and the room.
func newCheck() *cobra.Command {
	var f checkFlags
	c := &cobra.Command{
		Use:   "check SESSION|WEEKS…",
		Short: "Check a session or a plan of weeks against published ranges, the player and the room",
		Long: `Check sessions against published and customary ranges, the player's settings
and the room. SESSION is a built-in name or a file. Each finding is one line,
"FILE:LINE:COLUMN: error|warning|note: sentence [rule]". The exit code is 0 if
there is no error and no warning, and 1 otherwise.

In a plan of weeks every session is checked as it is in its week, and the weeks
against each other: what grows, when it is lighter, the days between jumps, the
matches. --within is then the time there is in a week. With --week or --on only
the sessions of those days are checked.

None of it is medical advice, and nothing here predicts an injury.`,
		Args: func(c *cobra.Command, args []string) error {
			if c.Flags().Changed("explain") {
				if len(args) > 0 {
					return usageError{"--explain explains a rule, and checks nothing", "leave out " + args[0]}
				}
				return nil
			}
			return argsError(cobra.MinimumNArgs(1))(c, args)
		},
		RunE: func(c *cobra.Command, args []string) error { return f.run(c, args) },
	}
	c.Flags().BoolVar(&f.asJSON, "json", false, "write a JSON array of findings")
	c.Flags().BoolVar(&f.asSARIF, "sarif", false, "write a SARIF 2.1.0 log, for editors and code hosts")
	c.Flags().StringVar(&f.within, "within", "", "the `TIME` available, such as 30min")
	c.Flags().StringVar(&f.room, "room", "", "the room, in place of the settings' own: `SIZE` along x across x ceiling, such as 4.5x1.2x2.4m")
	c.Flags().StringVar(&f.explain, "explain", "", "explain `RULE`: its reasons, its sources and how to change its limits")
	f.days.add(c)
	journalFlag(c.Flags(), &f.journal)
	settingsFlag(c, &f.settings)
	atMostOne(c, "json", "sarif")
	return c
}

// run checks what is named, or explains a rule.
func (f checkFlags) run(c *cobra.Command, args []string) error {
	s, err := loadSettings(f.settings)
	if err != nil {
		return err
	}
	if c.Flags().Changed("explain") {
		return explain(c.OutOrStdout(), f.explain, s)
	}
	o, err := f.options(c, s)
	if err != nil {
		return err
	}
	return checkAll(c, args, o, f)
}

// options turns the flags into what sessions are held against.
func (f checkFlags) options(c *cobra.Command, s settings.Player) (check.Options, error) {
	o := check.Options{Player: s, Now: time.Now()}
	var err error
	if c.Flags().Changed("within") {
		o.Within, err = units.ParseDuration(f.within)
		if err == nil && o.Within == 0 {
			err = errors.New("is no time at all")
		}
		if err != nil {
			return o, usageError{fmt.Sprintf("--within %q %v", f.within, err), units.DurationHint}
		}
	}
	if c.Flags().Changed("room") {
		if o.Room, err = settings.ParseRoom(f.room); err != nil {
			return o, usageError{fmt.Sprintf("--room %q %v", f.room, err), settings.RoomHint}
		}
	}
	o.Jumps, err = jumped(c, f.journal, o.Now)
	return o, err
}

// jumped returns the journal's sessions with jumps, and reports what is damaged
// in it, and of what is dated ahead.
func jumped(c *cobra.Command, path string, now time.Time) ([]check.Jumped, error) {
	o, err := journal.ReadOverview(path)
	if err != nil {
		return nil, err
	}
	for _, p := range o.Problems {
		fault.Print(c.ErrOrStderr(), fault.At(path, p))
	}
	recent := o.Since(now.Add(-briefing.Year))
	if err := logbook.TellAhead(recent, now); err != nil {
		fault.Print(c.ErrOrStderr(), fault.At(path, err))
	}
	return briefing.Jumped(recent, now), nil
}

// checkAll checks every session that can be read, whatever the others are.
func checkAll(c *cobra.Command, names []string, o check.Options, f checkFlags) error {
	var files []check.FileFindings
	failed := false
	for _, name := range names {
		found, err := f.findings(c, name, o)
		var problems yamlread.Problems
		switch {
		case errors.As(err, &problems):
			files = append(files, check.FileFindings{File: name, Findings: check.OfProblems(problems)})
		case err != nil:
			report(err, c.ErrOrStderr())
			failed = true
		default:
			files = append(files, found...)
		}
	}
	write := check.WriteText
	switch {
	case f.asJSON:
		write = check.WriteJSON
	case f.asSARIF:
		write = check.WriteSARIF
	}
	if err := write(c.OutOrStdout(), files); err != nil {
		return err
	}
	if failed || !check.AllSound(files) {
		return errFound
	}
	return nil
}

// findings checks what is named: a session, a plan of weeks, or the sessions of
// some of its days.
func (f checkFlags) findings(c *cobra.Command, name string, o check.Options) ([]check.FileFindings, error) {
	opened, err := openAny(c, name)
	if err != nil {
		return nil, err
	}
	if opened.Plan != nil && !f.days.given() {
		return check.RunWeeks(opened.Plan, o), nil
	}
	plans, err := f.days.plansOf(opened)
	if err != nil {
		return nil, err
	}
	if opened.Plan != nil {
		o.Player.Level = cmp.Or(opened.Plan.Level, o.Player.Level)
	}
	var files []check.FileFindings
	for _, p := range plans {
		files = append(files, check.FileFindings{File: p.Session.Name, Findings: check.Run(p, o)})
	}
	return files, nil
}

// explain writes why a rule is there.
func explain(w io.Writer, name string, s settings.Player) error {
	if r, ok := check.Find(name); ok {
		return r.Explain(w, s)
	}
	e := usageError{message: fmt.Sprintf("no rule %q", name), hint: "the rules are " + strings.Join(check.Names(), ", ")}
	if name == "" {
		e.message = "--explain needs the name of a rule"
	} else if near := nearest.Word(name, check.Names()); near != "" {
		e.hint = "did you mean " + near + "? " + e.hint
	}
	return e
}
