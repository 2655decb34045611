package main

import (
	"github.com/spf13/cobra"

	"coldfloor/internal/journal"
)

// choose is the command with no word after it: on a terminal a session is
// chosen from a list and run, elsewhere the help is printed.
func choose(c *cobra.Command, _ []string) error {
	o := runOptions{speed: 1, journal: journal.DefaultPath()}
	if !isTerminal(c.OutOrStdout()) || !isTerminal(c.InOrStdin()) {
		return c.Help()
	}
	return o.run(c, nil)
}
