package main

import (
	"os"

	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
)

// journalFlag declares --journal on c and on the commands under it.
func journalFlag(c *cobra.Command, path *string) {
	c.PersistentFlags().StringVar(path, "journal", journal.DefaultPath(), "the journal `FILE`")
}

// isTerminal reports whether stream, a command's input or output, is a
// terminal.
func isTerminal(stream any) bool {
	f, ok := stream.(*os.File)
	return ok && term.IsTerminal(f.Fd())
}

// wrongValue makes wrong usage of an error about a flag's value.
func wrongValue(err error) error { return usageError{err.Error(), fault.Hint(err)} }
