package main

import (
	"os"

	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"

	"coldfloor/internal/check"
	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/settings"
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

// settingsFlag declares --settings on c.
func settingsFlag(c *cobra.Command, path *string) {
	c.Flags().StringVar(path, "settings", "", "the settings `FILE` of another player, in place of one's own")
}

// loadSettings reads the settings in file, or the player's own if file is
// empty, and refuses rules under off that there are not.
func loadSettings(file string) (settings.Player, error) {
	load := settings.Load
	if file != "" {
		load = func() (settings.Player, error) { return settings.LoadFile(file) }
	}
	p, err := load()
	if err == nil {
		err = check.Off(p)
	}
	return p, err
}

// sameFlag declares --same on c, a command that reads many journals.
func sameFlag(c *cobra.Command, names *[]string) {
	c.Flags().StringArrayVar(names, "same", nil, "count all journals of this `NAME` as one player's; may be repeated")
}
