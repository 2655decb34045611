package main

import (
	"cmp"
	"os"

	"github.com/spf13/cobra"

	"coldfloor/internal/settings"
	"coldfloor/internal/text"
)

// languageFlag gives the command the flag --language.
func languageFlag(c *cobra.Command, code *string) {
	choiceFlag(c, code, "language", "the `LANGUAGE` that the player reads and hears: "+orOf(text.Codes())+" (default: as in the settings, or else the system's)", text.Codes()...)
}

// languageOf returns the language that a player reads and hears: that of the
// flag, or of the settings, or else the system's.
func languageOf(flag string, mine settings.Player) *text.Language {
	return text.Of(cmp.Or(flag, mine.Language), os.Getenv)
}
