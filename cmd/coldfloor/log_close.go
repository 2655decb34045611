package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"coldfloor/internal/logbook"
)

// newLogClose returns the command that logs an unfinished run as it stands.
func newLogClose(o *logOptions) *cobra.Command {
	return &cobra.Command{
		Use:   "close RUN|last",
		Short: "Log a run that did not end, as far as it got",
		Long: `Log a run that did not end, because of a crash or the like, as far as it got. To
go on with it instead, start coldfloor on a terminal: it offers to.`,
		Args: argsError(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error {
			j, r, err := o.pickBy(c, args[0], logbook.PickOpen)
			if err != nil {
				return err
			}
			if err := j.CloseAsIs(r.ID); err != nil {
				return fmt.Errorf("nothing was changed: %w", err)
			}
			if j, r, err = o.pick(c, r.ID); err != nil {
				return err
			}
			return o.confirm(c.OutOrStdout(), j, r)
		},
	}
}
