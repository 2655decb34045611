package main

import (
	"fmt"
	"io"
	"slices"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/logbook"
)

// logOptions is what the log commands have in common.
type logOptions struct {
	journal string
	asJSON  bool
}

// newLog returns the command that lists the runs in the journal, and those
// under it.
func newLog() *cobra.Command {
	var o logOptions
	var all bool
	c := &cobra.Command{
		Use:   "log",
		Short: "List what was done, show it, rate it, put it right",
		Long: `List the runs in the journal, the earliest first: rounds done of those
prescribed a block, the length, the effort and the load (effort times minutes),
and whether there was pain. A run is named by the start of its name, or as last.`,
		Args: noSuchCommand,
		RunE: func(c *cobra.Command, _ []string) error {
			j, runs, err := o.load(c.ErrOrStderr())
			if err != nil {
				return err
			}
			for _, r := range logbook.Ahead(runs, time.Now()) {
				fault.Print(c.ErrOrStderr(), fault.New("coldfloor log edit RUN --date puts it right", "%q is dated %s, which has not come yet: a clock was off",
					r.Title(), r.Start.Format("2006-01-02 15:04")))
			}
			if !all {
				runs = slices.DeleteFunc(runs, func(r *journal.Run) bool { return r.Withdrawn })
			}
			return listRuns(c.OutOrStdout(), j, runs, o.asJSON)
		},
	}
	journalFlag(c, &o.journal)
	c.PersistentFlags().BoolVar(&o.asJSON, "json", false, "write JSON")
	c.Flags().BoolVar(&all, "all", false, "list deleted runs too")
	c.AddCommand(newLogAdd(&o), newLogClose(&o), newLogCopy(&o), newLogDelete(&o), newLogEdit(&o), newLogMeasure(&o), newLogRate(&o), newLogShow(&o))
	return c
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

// load reads the journal and tells of lines that count for nothing.
func (o *logOptions) load(stderr io.Writer) (*journal.Journal, []*journal.Run, error) {
	j, err := journal.At(o.journal)
	if err != nil {
		return nil, nil, err
	}
	runs, problems, err := journal.Load(j.Path())
	if err != nil {
		return nil, nil, fmt.Errorf("cannot read the journal: %w", err)
	}
	for _, p := range problems {
		fault.Print(stderr, fault.At(o.journal, p))
	}
	return j, runs, nil
}

// pick returns the run that the user named.
func (o *logOptions) pick(c *cobra.Command, name string) (*journal.Journal, *journal.Run, error) {
	return o.pickBy(c, name, logbook.Pick)
}

// pickBy returns the run that the user named, last being what pick takes for it.
func (o *logOptions) pickBy(c *cobra.Command, name string, pick func([]*journal.Run, string) (*journal.Run, error)) (*journal.Journal, *journal.Run, error) {
	j, runs, err := o.load(c.ErrOrStderr())
	if err != nil {
		return nil, nil, err
	}
	r, err := pick(runs, name)
	return j, r, err
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
