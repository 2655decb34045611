package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"coldfloor/internal/cautions"
	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/logbook"
	"coldfloor/internal/rating"
	"coldfloor/internal/text"
)

// ratingFlags are the flags that tell what a player says of a session.
type ratingFlags struct {
	rounds, rpe, pain, level, note string
	noPain, all                    bool
}

// said is the names of the flags that say something.
var said = []string{"rounds", "all", "rpe", "pain", "pain-level", "no-pain", "note"}

func (f *ratingFlags) declare(flags *pflag.FlagSet) {
	flags.StringVar(&f.rounds, "rounds", "", "completed `ROUNDS`, a number a block, such as 3,3,2")
	flags.StringVar(&f.rpe, "rpe", "", "`EFFORT` of the session as a whole, 0 to 10")
	flags.BoolVar(&f.all, "all", false, "every round was completed")
	flags.StringVar(&f.pain, "pain", "", "`WHERE` it hurt, or none; earlier reports are kept")
	flags.StringVar(&f.level, "pain-level", "", "the `LEVEL` of the pain, 0 to 10")
	flags.BoolVar(&f.noPain, "no-pain", false, "take back earlier reports of pain")
	flags.StringVar(&f.note, "note", "", "a `NOTE` in your own words")
}

// read returns what the flags that were given say of a session of blocks.
func (f *ratingFlags) read(flags *pflag.FlagSet, blocks []journal.PlannedBlock) (r journal.Rating, err error) {
	switch {
	case f.all && flags.Changed("rounds"):
		return r, usageError{"--all and --rounds do not go together", "leave out one"}
	case f.all:
		if r.Rounds, err = rating.AllRounds(blocks); err != nil {
			return r, wrongValue(err)
		}
	case flags.Changed("rounds"):
		if r.Rounds, err = rating.ParseRounds(f.rounds, blocks); err != nil {
			return r, wrongValue(err)
		}
	}
	if flags.Changed("rpe") {
		v, err := rating.ParseRPE(f.rpe)
		if err != nil {
			return r, wrongValue(err)
		}
		r.RPE = &v
	}
	if flags.Changed("note") {
		r.Note = &f.note
	}
	return r, f.readPain(flags, &r)
}

// readPain reads what the flags say of pain into r.
func (f *ratingFlags) readPain(flags *pflag.FlagSet, r *journal.Rating) error {
	r.NoPain = f.noPain
	if flags.Changed("pain") {
		if err := rating.SetPain(r, f.pain); err != nil {
			return wrongValue(err)
		}
	}
	if flags.Changed("pain-level") {
		level, err := rating.ParsePainLevel(f.level)
		if err != nil {
			return wrongValue(err)
		}
		r.PainLevel = &level
		if yes := level > 0; r.Pain == nil {
			r.Pain = &yes
		}
	}
	return nil
}

// anyChanged reports whether any of the flags was given.
func anyChanged(flags *pflag.FlagSet, names ...string) bool {
	for _, n := range names {
		if flags.Changed(n) {
			return true
		}
	}
	return false
}

// newLogRate returns the command that adds or corrects a run's rating.
func newLogRate(o *logOptions) *cobra.Command {
	var f ratingFlags
	c := &cobra.Command{
		Use:   "rate RUN|last",
		Short: "Say how a session was: rounds, effort, pain, a note",
		Long: `Say how a session was, or say it again. The effort is that of the session as a
whole, best answered ` + rating.AskAfter + `:
` + rating.ScaleLines(&text.English, 78) + `
(Foster et al., J Strength Cond Res 2001;15:109-115). With no flag it asks.
What is left out stays as it was. Pain is never overwritten: each report is
kept, with its time, its place and its own note, and --no-pain takes back
the earlier ones. coldfloor log show lists them all.`,
		Args: argsError(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error {
			j, r, err := o.pick(c, args[0])
			if err != nil {
				return err
			}
			if r.Rehearsal() {
				return fault.New("coldfloor log lists the sessions", "a rehearsal is not rated: it was run at %g times its speed and trained nobody", r.Started.Speed)
			}
			said, err := f.readOrAsk(c, r)
			if err != nil {
				return err
			}
			return o.amend(c, j, r, journal.Line{Event: journal.EventRating, Rating: &said})
		},
	}
	f.declare(c.Flags())
	return c
}

// readOrAsk returns what the flags say, or what the player answers if none
// is given.
func (f *ratingFlags) readOrAsk(c *cobra.Command, r *journal.Run) (journal.Rating, error) {
	if anyChanged(c.Flags(), said...) {
		return f.read(c.Flags(), r.Blocks())
	}
	if !isTerminal(c.InOrStdin()) {
		return journal.Rating{}, usageError{"nothing to log is given", "give --rpe, --rounds, --all, --pain, --pain-level, --no-pain or --note, or run it on a terminal to be asked"}
	}
	return rating.Ask(c.InOrStdin(), c.ErrOrStderr(), r, &text.English)
}

// amend appends lines about r, and shows how it stands then.
func (o *logOptions) amend(c *cobra.Command, j *journal.Journal, r *journal.Run, lines ...journal.Line) error {
	if err := j.Amend(r.ID, lines...); err != nil {
		return fmt.Errorf("nothing was changed: %w", err)
	}
	j, r, err := o.pick(c, r.ID)
	if err != nil {
		return err
	}
	for _, l := range lines {
		if l.Rating != nil {
			cautionOfPain(c.ErrOrStderr(), l.Rating)
		}
	}
	return o.confirm(c.OutOrStdout(), j, r)
}

// confirm writes a run as the list has it.
func (o *logOptions) confirm(w io.Writer, j *journal.Journal, r *journal.Run) error {
	if o.asJSON {
		return writeJSON(w, logbook.InFull(r, j.Live))
	}
	_, err := io.WriteString(w, logbook.List([]*journal.Run{r}, j.Live))
	return err
}

// cautionOfPain says what to do about pain, if some was noted.
func cautionOfPain(w io.Writer, said *journal.Rating) {
	if said.Pain != nil && *said.Pain {
		fmt.Fprintln(w, cautions.Lines(text.English.PainNoted()))
	}
}
