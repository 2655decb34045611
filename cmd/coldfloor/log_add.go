package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"coldfloor/internal/journal"
	"coldfloor/internal/logbook"
	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/safetext"
	"coldfloor/internal/settings"
	"coldfloor/internal/today"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// newLogAdd returns the command that adds a session done on paper.
func newLogAdd(o *logOptions) *cobra.Command {
	var said ratingFlags
	var when whenFlags
	var day dayFlags
	c := &cobra.Command{
		Use:   "add SESSION|WEEKS|TITLE",
		Short: "Add a session that was done on paper",
		Long: `Add a session that was done without the program. SESSION is a built-in name or
a file, whose rounds and planned length are then known; anything else is taken
as the session's title, and needs --length. Say with --all or --rounds how much
of it was done; without either, that stays unknown.

In a plan of weeks it is today's session, or that of the day that --on names.`,
		Args: argsError(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error {
			s, err := onPaper(c, args[0], &said, &when, &day, o.journal)
			if err != nil {
				return err
			}
			j, err := journal.Open(o.journal)
			if err != nil {
				return err
			}
			id, err := j.AddOnPaper(s)
			if err != nil {
				return err
			}
			j, r, err := o.pick(c, id)
			if err != nil {
				return err
			}
			cautionOfPain(c.ErrOrStderr(), &s.Rating)
			return o.confirm(c.OutOrStdout(), j, r)
		},
	}
	said.declare(c.Flags())
	when.declare(c.Flags())
	day.add(c)
	return c
}

// onPaper returns the session that the words and flags describe; of a plan of
// weeks that of a day.
func onPaper(c *cobra.Command, name string, said *ratingFlags, when *whenFlags, day *dayFlags, log string) (s journal.OnPaper, err error) {
	mine, err := settings.Load()
	if err != nil {
		return s, err
	}
	s.Title, s.Player = name, mine.Name
	if isSession(name) {
		p, err := ofPaper(c, name, &s, day, log)
		if err != nil {
			return s, err
		}
		s.Title, s.Text, s.Total, s.Length, s.Blocks = p.Session.Title, string(p.Session.Source), p.Total, p.Total, run.Prescribed(p)
	}
	if s.Rating, err = said.read(c.Flags(), s.Blocks); err == nil {
		err = when.place(c.Flags(), &s)
	}
	if near := weeks.Near(name); err != nil && s.Blocks == nil && near != "" {
		err = usageError{fmt.Sprintf("%s, because %s is not a session", err, safetext.Quote(name)), "did you mean " + near + "?"}
	}
	return s, err
}

// ofPaper lays out the session that is named, or that of a day of the plan of
// weeks that is, and notes the day.
func ofPaper(c *cobra.Command, name string, s *journal.OnPaper, day *dayFlags, log string) (*plan.Plan, error) {
	o, err := openAny(c, name)
	if err != nil {
		return nil, err
	}
	switch {
	case o.Session != nil && day.given():
		return nil, day.notFor(o.Session)
	case o.Session != nil:
		return plan.Of(o.Session), nil
	}
	d, err := day.ofLog(c, o.Plan, log)
	if err != nil {
		return nil, err
	}
	s.Weeks = today.Started(o.Plan, d.Planned)
	return today.Session(o.Plan, d.Planned)
}

// place puts s where the flags say it was in time. Without a date it has just
// ended.
func (f *whenFlags) place(flags *pflag.FlagSet, s *journal.OnPaper) (err error) {
	now := time.Now()
	switch {
	case flags.Changed("length"):
		if s.Length, err = logbook.ParseTaken(f.length); err != nil {
			return wrongValue(err)
		}
	case s.Blocks == nil:
		return usageError{"the length of the session is missing", "give --length, such as --length 40min"}
	}
	s.Start = now.Add(-s.Length)
	if flags.Changed("date") {
		if s.Start, err = logbook.ParseDate(f.date, now, time.Time{}); err != nil {
			return wrongValue(err)
		}
	}
	return nil
}

// isSession reports whether name is a session and not a title: a built-in
// one's name, a file, or what can only be meant for one.
func isSession(name string) bool {
	if _, ok := sessions.FindBuiltin(name); ok {
		return true
	}
	if _, ok := weeks.FindBuiltin(name); ok {
		return true
	}
	if _, err := os.Stat(name); err == nil {
		return true
	}
	return slices.Contains([]string{".yaml", ".yml"}, filepath.Ext(name))
}
