package main

import (
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"coldfloor/internal/journal"
	"coldfloor/internal/logbook"
)

// whenFlags are the flags that tell when a session was and how long it took.
type whenFlags struct{ date, length string }

func (f *whenFlags) declare(flags *pflag.FlagSet) {
	flags.StringVar(&f.date, "date", "", "`WHEN` it began, such as \"2026-07-14 18:30\"; a day alone means noon")
	flags.StringVar(&f.length, "length", "", "its `LENGTH`, such as 40min")
}

// newLogEdit returns the command that puts a run right.
func newLogEdit(o *logOptions) *cobra.Command {
	var said ratingFlags
	var when whenFlags
	c := &cobra.Command{
		Use:   "edit RUN|last",
		Short: "Correct a run: rounds, effort, pain, note, date, length",
		Long: `Correct what the journal says of a run. The correction is a line of its own:
the old value is kept, and coldfloor log show lists it.`,
		Args: argsError(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error {
			j, r, err := o.pick(c, args[0])
			if err != nil {
				return err
			}
			lines, err := corrections(c.Flags(), &said, &when, r)
			if err != nil {
				return err
			}
			return o.amend(c, j, r, lines...)
		},
	}
	said.declare(c.Flags())
	when.declare(c.Flags())
	return c
}

// corrections returns the lines that the flags ask for.
func corrections(flags *pflag.FlagSet, rated *ratingFlags, when *whenFlags, r *journal.Run) ([]journal.Line, error) {
	var lines []journal.Line
	if anyChanged(flags, said...) {
		v, err := rated.read(flags, r.Blocks())
		if err != nil {
			return nil, err
		}
		lines = append(lines, journal.Line{Event: journal.EventRating, Rating: &v})
	}
	if anyChanged(flags, "date", "length") {
		v, err := when.read(flags, r)
		if err != nil {
			return nil, err
		}
		lines = append(lines, journal.Line{Event: journal.EventCorrect, Correct: &v})
	}
	if len(lines) == 0 {
		return nil, usageError{"nothing to correct is given", "give one or more of --rounds, --all, --rpe, --pain, --pain-level, --no-pain, --note, --date and --length"}
	}
	return lines, nil
}

// read returns the corrections of r that the flags ask for.
func (f *whenFlags) read(flags *pflag.FlagSet, r *journal.Run) (v journal.Correct, err error) {
	if flags.Changed("date") {
		at, err := logbook.ParseDate(f.date, time.Now(), r.Start)
		if err != nil {
			return v, wrongValue(err)
		}
		v.At = &at
	}
	if flags.Changed("length") {
		length, err := logbook.ParseTaken(f.length)
		if err != nil {
			return v, wrongValue(err)
		}
		s := length.Seconds()
		v.LengthS = &s
	}
	return v, nil
}

// newLogDelete returns the command that makes a run count no more.
func newLogDelete(o *logOptions) *cobra.Command {
	var undo bool
	c := &cobra.Command{
		Use:   "delete RUN|last",
		Short: "Make a run no longer count, or count again with --undo",
		Long: `Make a run no longer count. Nothing is taken out of the journal: the run is left
out of lists and figures, coldfloor log --all still lists it, and --undo makes
it count again. With --undo, last is the run that was deleted last.`,
		Args: argsError(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error {
			event, pick := journal.EventWithdraw, logbook.Pick
			if undo {
				event, pick = journal.EventRestore, logbook.PickDeleted
			}
			j, r, err := o.pickBy(c, args[0], pick)
			if err != nil {
				return err
			}
			return o.amend(c, j, r, journal.Line{Event: event})
		},
	}
	c.Flags().BoolVar(&undo, "undo", false, "make it count again")
	return c
}
