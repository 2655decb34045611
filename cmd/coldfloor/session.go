package main

import (
	"github.com/spf13/cobra"

	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/sessions"
)

// planOf opens the session that the user named, a built-in name or a file or
// "-" for standard input, and lays it out.
func planOf(c *cobra.Command, name string) (*plan.Plan, error) {
	s, err := sessions.OpenOr(name, c.InOrStdin())
	if err != nil {
		return nil, err
	}
	return plan.Of(s), nil
}

// inputs returns the files that a command reads and so never writes over: the
// named ones, which may be names of no file, and the player's settings.
func inputs(names ...string) []string { return append(names, settings.File()) }
