package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"coldfloor/internal/journal"
	"coldfloor/internal/logbook"
)

// newLogMeasure returns the command that puts a measured result right.
func newLogMeasure(o *logOptions) *cobra.Command {
	return &cobra.Command{
		Use:   "measure RUN|last [RESULT VALUE]",
		Short: "List what was measured in a run, or correct a result",
		Long: `List what was measured in a run, each result with its number. With a number and
a value, such as 2 231, correct that result; with none as the value, say that it
was left out. The correction is a line of its own: the old value is kept in the
journal.`,
		Args: argsError(func(c *cobra.Command, args []string) error {
			if len(args) != 1 && len(args) != 3 {
				return fmt.Errorf("log measure takes a run alone, or a run, the number of a result, and its value")
			}
			return nil
		}),
		RunE: func(c *cobra.Command, args []string) error {
			j, r, err := o.pick(c, args[0])
			if err != nil {
				return err
			}
			if len(args) == 3 {
				m, err := logbook.ParseResult(r, args[1], args[2])
				if err != nil {
					return wrongValue(err)
				}
				if err := j.Amend(r.ID, journal.Line{Event: journal.EventMeasure, Measure: m}); err != nil {
					return fmt.Errorf("nothing was changed: %w", err)
				}
				if _, r, err = o.pick(c, r.ID); err != nil {
					return err
				}
			}
			if err := o.listMeasures(c.OutOrStdout(), r); err != nil || len(args) == 3 || o.asJSON || len(r.Measures) == 0 {
				return err
			}
			_, err = fmt.Fprintf(c.OutOrStdout(), "\nto put one right: %s %s RESULT VALUE, with none as the value if it was left out\n", c.CommandPath(), args[0])
			return err
		},
	}
}

// listMeasures writes what was measured in a run.
func (o *logOptions) listMeasures(w io.Writer, r *journal.Run) error {
	if o.asJSON {
		return writeJSON(w, logbook.MeasuresOf(r))
	}
	if len(r.Measures) == 0 {
		_, err := fmt.Fprintln(w, "nothing was measured in it")
		return err
	}
	_, err := io.WriteString(w, logbook.Measures(r))
	return err
}
