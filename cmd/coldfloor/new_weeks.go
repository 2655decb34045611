package main

import (
	"cmp"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/compose"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/internal/wholefile"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// runWeeks drafts a plan of weeks and writes it.
func (f newFlags) runWeeks(c *cobra.Command, file string) error {
	o := wholefile.Options{Mode: 0o644, Force: f.force, Inputs: inputs(f.settings)}
	if err := wholefile.Check(file, o); err != nil {
		return err
	}
	a, err := f.weeksAnswers(c)
	if err != nil {
		return err
	}
	src, err := compose.Weeks(a)
	if err != nil {
		return err
	}
	p, err := weeks.Parse(file, src, weeks.From("."))
	if err != nil {
		return err
	}
	if err := wholefile.Write(file, src, o); err != nil {
		return err
	}
	fmt.Fprintf(c.OutOrStdout(), "wrote %s: %s, %s; coldfloor preview %s shows it\n", file, p.Title, units.Count(len(p.Days()), "session"), file)
	return nil
}

// weeksAnswers returns what the plan is drafted by: from the flags if there
// are any, or else asked for.
func (f newFlags) weeksAnswers(c *cobra.Command) (compose.WeeksAnswers, error) {
	mine, err := loadSettings(f.settings)
	if err != nil {
		return compose.WeeksAnswers{}, err
	}
	a := compose.WeeksAnswers{Player: mine, Starts: nextMonday(time.Now()), Count: 6, Days: []time.Weekday{time.Monday, time.Wednesday, time.Friday}}
	a.Player.Level = cmp.Or(mine.Level, sessions.Beginner)
	ask, err := takeFlags(c, []taken{
		{"level", func() (err error) { a.Player.Level, err = compose.ParseLevel(f.level); return err }},
		{"room", func() (err error) { a.Player.Room, err = compose.ParseRoom(f.room); return err }},
		{"starts", func() (err error) { a.Starts, err = units.ParseDate(f.starts); return err }},
		{"count", func() (err error) { a.Count, err = compose.ParseCount(f.count); return err }},
		{"days", func() (err error) { a.Days, err = compose.ParseDays(f.days); return err }},
		{"matches", func() (err error) { a.Matches, err = compose.ParseMatches(f.matches); return err }},
	})
	if err != nil || !ask {
		return a, err
	}
	if !isTerminal(c.InOrStdin()) {
		return a, usageError{"there is no terminal to ask the questions on", "answer with flags, such as --weeks --starts 2026-12-07 --count 6 --days mon,wed,fri --matches 2027-01-17"}
	}
	if a.Player.Room == (settings.Room{}) {
		a.Player.Room = settings.Room{Along: 4500, Across: 1200, Ceiling: 2400} // a hallway, for which the built-in sessions are
	}
	return compose.AskWeeks(c.InOrStdin(), c.ErrOrStderr(), a)
}

// nextMonday returns the first Monday after now.
func nextMonday(now time.Time) units.Date {
	d := units.DateOf(now) + 1
	for d.Weekday() != time.Monday {
		d++
	}
	return d
}
