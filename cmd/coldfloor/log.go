package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/logbook"
	"coldfloor/internal/safetext"
)

// logOptions is what the log commands have in common.
type logOptions struct {
	journal string
	named   *pflag.Flag // --journal
	asJSON  bool

	open *journal.Journal // nil before it is read
	told bool             // what is wrong with its lines
}

// latest is how many runs are listed, unless all are asked for.
const latest = 100

// newLog returns the command that lists the runs in the journal, and those
// under it.
func newLog() *cobra.Command {
	var o logOptions
	var all bool
	c := &cobra.Command{
		Use:   "log",
		Short: "List what was done; show, rate and correct it",
		Long: `List the runs in the journal, the earliest first: the rounds done and prescribed
in each block, the length, the effort, the load (effort times minutes) and
whether there was pain. To name a run, give the start of its name, or "last".
Only the latest 100 runs are listed, unless you add --all.`,
		Args: noSuchCommand,
		RunE: func(c *cobra.Command, _ []string) error {
			read, err := o.load(c.ErrOrStderr())
			if err != nil {
				return err
			}
			now := time.Now()
			if err := logbook.TellAhead(read.Since(now), now); err != nil {
				fault.Print(c.ErrOrStderr(), err)
			}
			if all {
				return listRuns(c.OutOrStdout(), o.open, read.Runs(), o.asJSON)
			}
			n := read.Listed()
			if !o.asJSON && n > latest {
				fmt.Fprintf(c.OutOrStdout(), "the latest %d of %d runs; --all lists every one\n\n", latest, n)
				n = latest
			}
			return listRuns(c.OutOrStdout(), o.open, listed(read, n), o.asJSON)
		},
	}
	journalFlag(c.PersistentFlags(), &o.journal)
	o.named = c.PersistentFlags().Lookup("journal")
	c.PersistentFlags().BoolVar(&o.asJSON, "json", false, "write JSON")
	c.Flags().BoolVar(&all, "all", false, "list every run, deleted ones too")
	c.AddCommand(newLogAdd(&o), newLogClose(&o), newLogCopy(&o), newLogDelete(&o), newLogEdit(&o), newLogMeasure(&o), newLogRate(&o), newLogShow(&o))
	return c
}

// listed returns the latest n runs that were not withdrawn, the earliest first.
func listed(read *journal.Overview, n int) []*journal.Run {
	runs := make([]*journal.Run, 0, n)
	for r := range read.Backward() {
		if len(runs) == n {
			break
		}
		if !r.Withdrawn {
			runs = append(runs, r)
		}
	}
	slices.Reverse(runs)
	return runs
}

// newLogShow returns the command that shows one run.
func newLogShow(o *logOptions) *cobra.Command {
	return &cobra.Command{
		Use:   "show RUN|last",
		Short: "Show a run set by set and rest by rest, prescribed and taken",
		Args:  argsError(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error {
			j, r, err := o.pick(c, args[0])
			if err != nil {
				return err
			}
			return o.show(c.OutOrStdout(), j, r)
		},
	}
}

// load reads the journal, and says once which of its lines count for nothing.
func (o *logOptions) load(stderr io.Writer) (*journal.Overview, error) {
	if o.open == nil {
		j, err := journal.At(o.journal)
		if err != nil {
			return nil, err
		}
		if _, err := os.Stat(o.journal); errors.Is(err, fs.ErrNotExist) && o.named.Changed {
			return nil, fault.New("name another with --journal FILE", "there is no journal %s", safetext.Quote(o.journal))
		}
		o.open = j
	}
	all, err := o.open.Overview()
	if err != nil {
		return nil, fmt.Errorf("cannot read the journal: %w", err)
	}
	if len(all.Problems) > 0 && len(all.Runs()) == 0 {
		return nil, fault.New("name another with --journal FILE", "%s is not a journal: no line of it can be read", safetext.Quote(o.journal))
	}
	for i, p := range all.Problems {
		switch {
		case o.told || i > mostTold:
		case i == mostTold:
			fault.Print(stderr, fmt.Errorf("%s: %d more lines count for nothing", o.journal, len(all.Problems)-i))
		default:
			fault.Print(stderr, fault.At(o.journal, p))
		}
	}
	o.told = true
	return all, nil
}

// mostTold is how many of the lines that count for nothing are reported one by one.
const mostTold = 10

// pick returns the run that the user named.
func (o *logOptions) pick(c *cobra.Command, name string) (*journal.Journal, *journal.Run, error) {
	return o.pickBy(c, name, logbook.Pick)
}

// pickBy returns the run that the user named, last being what pick takes for it.
func (o *logOptions) pickBy(c *cobra.Command, name string, pick func(*journal.Overview, string) (*journal.Run, error)) (*journal.Journal, *journal.Run, error) {
	all, err := o.load(c.ErrOrStderr())
	if err != nil {
		return nil, nil, err
	}
	r, err := pick(all, name)
	if err != nil {
		return nil, nil, err
	}
	full, err := all.Full(r)
	if err != nil {
		return nil, nil, fmt.Errorf("cannot read the journal: %w", err)
	}
	return o.open, full[0], nil
}

// listRuns writes runs as a table or as JSON.
func listRuns(w io.Writer, j *journal.Journal, runs []*journal.Run, asJSON bool) error {
	if asJSON {
		docs := make([]logbook.Document, len(runs))
		for i, r := range runs {
			docs[i] = logbook.Of(r, j.Live)
		}
		return writeJSON(w, docs)
	}
	if len(runs) == 0 {
		_, err := fmt.Fprintln(w, "nothing is logged yet")
		return err
	}
	_, err := io.WriteString(w, logbook.List(runs, j.Live))
	return err
}

// show writes one run in full.
func (o *logOptions) show(w io.Writer, j *journal.Journal, r *journal.Run) error {
	if o.asJSON {
		return writeJSON(w, logbook.InFull(r, j.Live))
	}
	_, err := io.WriteString(w, logbook.Show(r, j.Live))
	return err
}
