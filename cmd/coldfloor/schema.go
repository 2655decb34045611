package main

import (
	"github.com/spf13/cobra"

	"coldfloor/sessions/schema"
)

// newSchema returns the command that prints the schema of the session file.
func newSchema() *cobra.Command {
	return &cobra.Command{
		Use:   "schema [session|weeks]",
		Short: "Print the JSON Schema of the session file, or of a plan of weeks, for editors",
		Long: `Print the JSON Schema (draft 2020-12) of the session file, or with "weeks" that
of a plan of weeks, so that your editor completes and validates. Keep them
beside your files, as ` + schema.FileName + ` and ` + schema.WeeksFileName + `, and begin
each file with the line
  # yaml-language-server: $schema=` + schema.FileName,
		ValidArgs: []string{"session", "weeks"},
		Args:      argsError(cobra.MatchAll(cobra.MaximumNArgs(1), cobra.OnlyValidArgs)),
		RunE: func(c *cobra.Command, args []string) error {
			text := schema.JSON()
			if len(args) == 1 && args[0] == "weeks" {
				text = schema.WeeksJSON()
			}
			_, err := c.OutOrStdout().Write(text)
			return err
		},
	}
}
