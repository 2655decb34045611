package main

import (
	"cmp"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/compose"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/internal/wholefile"
	"coldfloor/sessions"
)

// newFlags is how new was called.
type newFlags struct {
	level, minutes, room, train string
	settings                    string
	force                       bool

	weeks                        bool
	starts, count, days, matches string
}

// newNew returns the command that drafts a session.
func newNew() *cobra.Command {
	var f newFlags
	c := &cobra.Command{
		Use:   "new FILE",
		Short: "Draft a session, or a plan of weeks, to make your own",
		Long: `Write a sensible session with comments to FILE, for you to edit. On a terminal it
asks for the level, the minutes, the room and what to train; with any of the
flags it asks nothing, and takes what is not given from the settings or a default.

What does not fit the time is left out, starting with the quality named last; it
says so, in the file too.

With --weeks it writes a plan of weeks made of built-in sessions that passes
check; it goes by the first day, the number of weeks, the days, the matches, the
level and the room.`,
		Args: argsError(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error {
			if err := f.fit(c); err != nil {
				return err
			}
			if f.weeks {
				return f.runWeeks(c, args[0])
			}
			return f.run(c, args[0])
		},
	}
	c.Flags().BoolVar(&f.weeks, "weeks", false, "draft a plan of weeks")
	c.Flags().StringVar(&f.starts, "starts", "", "with --weeks: its first `DATE`, such as 2026-12-07")
	c.Flags().StringVar(&f.count, "count", "", "with --weeks: how many weeks, `N` from 1 to 52")
	c.Flags().StringVar(&f.days, "days", "", "with --weeks: the days with a session, such as `mon,wed,fri`")
	c.Flags().StringVar(&f.matches, "matches", "", "with --weeks: days of competition, as `DATE,DATE`")
	c.Flags().StringVar(&f.level, "level", "", "`LEVEL` of the player: beginner, intermediate or advanced")
	c.Flags().StringVar(&f.minutes, "minutes", "", "the minutes available, `N` from 10 to 60")
	c.Flags().StringVar(&f.room, "room", "", "the room: `SIZE` along x across x ceiling, such as 4.5x1.2x2.4m")
	c.Flags().StringVar(&f.train, "train", "", "what to train: all, or some of vertical, horizontal, lateral, strength, as `A,B`, the one that matters most first")
	settingsFlag(c, &f.settings)
	c.Flags().BoolVar(&f.force, "force", false, "replace FILE if it exists")
	return c
}

// fit refuses the flags of a plan of weeks for a session, and those of a session
// for a plan.
func (f newFlags) fit(c *cobra.Command) error {
	foreign, why := []string{"starts", "count", "days", "matches"}, usageError{"--%s is for a plan of weeks", "add --weeks, or leave it out"}
	if f.weeks {
		foreign, why = []string{"minutes", "train"}, usageError{"--%s is for a session, and --weeks drafts a plan of them", "leave out one of the two"}
	}
	for _, name := range foreign {
		if c.Flags().Changed(name) {
			return usageError{fmt.Sprintf(why.message, name), why.hint}
		}
	}
	return nil
}

// run drafts the session and writes it.
func (f newFlags) run(c *cobra.Command, file string) error {
	o := wholefile.Options{Mode: 0o644, Force: f.force, Inputs: inputs(f.settings)}
	if err := wholefile.Check(file, o); err != nil {
		return err
	}
	mine, err := loadSettings(f.settings)
	if err != nil {
		return err
	}
	a, err := f.answers(c, mine)
	if err != nil {
		return err
	}
	a.MostContacts = int(mine.Limits["contacts_"+string(a.Level)].High)
	draft, err := compose.Compose(a)
	if err != nil {
		return usageError{message: err.Error()}
	}
	s, err := sessions.Parse(file, draft.Source)
	if err != nil {
		return err
	}
	if err := wholefile.Write(file, draft.Source, o); err != nil {
		return err
	}
	fmt.Fprintf(c.OutOrStdout(), "wrote %s: %s, %s long\n", safetext.Clean(file), s.Title, units.Clock(plan.Of(s).Total))
	for _, note := range draft.Notes {
		fmt.Fprintf(c.OutOrStdout(), "note: %s\n", note)
	}
	return nil
}

// answers returns what the draft goes by: from the flags if there are any, or
// else asked for.
func (f newFlags) answers(c *cobra.Command, mine settings.Player) (compose.Answers, error) {
	a := compose.Answers{Level: cmp.Or(mine.Level, sessions.Beginner), Length: 30 * time.Minute, Room: mine.Room,
		Height: mine.Height, Train: compose.Qualities()}
	if a.Room == (settings.Room{}) {
		a.Room = settings.Room{Along: 3 * units.Metre, Across: 2 * units.Metre, Ceiling: 2400 * units.Millimetre}
	}
	asked, err := takeFlags(c, []taken{
		{"level", func() (err error) { a.Level, err = compose.ParseLevel(f.level); return err }},
		{"minutes", func() (err error) { a.Length, err = compose.ParseMinutes(f.minutes); return err }},
		{"room", func() (err error) { a.Room, err = compose.ParseRoom(f.room); return err }},
		{"train", func() (err error) { a.Train, err = compose.ParseTrain(f.train); return err }},
	})
	if err != nil {
		return a, err
	}
	if !asked {
		return a, nil
	}
	if !isTerminal(c.InOrStdin()) {
		return a, usageError{"there is no terminal to ask the questions on", "answer with flags, such as --level beginner --minutes 30 --room 4.5x1.2x2.4m --train all"}
	}
	return compose.Ask(c.InOrStdin(), c.ErrOrStderr(), a)
}

// taken is one flag that answers a question.
type taken struct {
	name string
	take func() error
}

// takeFlags takes the flags that are given, and reports whether the questions
// are to be asked because there are none.
func takeFlags(c *cobra.Command, flags []taken) (ask bool, err error) {
	ask = true
	for _, flag := range flags {
		if !c.Flags().Changed(flag.name) {
			continue
		}
		ask = false
		if err := flag.take(); err != nil {
			value := c.Flags().Lookup(flag.name).Value.String()
			return false, usageError{fmt.Sprintf("--%s %q %v", flag.name, value, err), "coldfloor new --help says what may be given"}
		}
	}
	return ask, nil
}
