package main

import (
	"github.com/spf13/cobra"

	"coldfloor/sessions/schema"
)

// newSchema returns the command that prints the schema of the session file.
func newSchema() *cobra.Command {
	return &cobra.Command{
		Use:   "schema",
		Short: "Print the JSON Schema of the session file, for editors",
		Long: `Print the JSON Schema (draft 2020-12) of the session file, so that an editor
completes and validates. Keep it beside the sessions and begin each of them with
the line
  # yaml-language-server: $schema=` + schema.FileName,
		Args: argsError(cobra.NoArgs),
		RunE: func(c *cobra.Command, _ []string) error {
			_, err := c.OutOrStdout().Write(schema.JSON())
			return err
		},
	}
}
