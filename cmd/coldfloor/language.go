package main

import (
	"fmt"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"coldfloor/internal/settings"
	"coldfloor/internal/text"
)

// languageFlag gives the command the flag --language.
func languageFlag(c *cobra.Command, code *string) {
	c.Flags().StringVar(code, "language", "", "the `LANGUAGE` that the player reads and hears: "+strings.Join(text.Codes(), " or ")+"; else the settings' or the system's")
}

// languageOf returns the language that a player reads and hears: that of the
// flag, or of the settings, or else the system's.
func languageOf(flag string, mine settings.Player) (*text.Language, error) {
	if flag != "" && !slices.Contains(text.Codes(), flag) {
		return nil, usageError{fmt.Sprintf("there is no language %q", flag), "write --language " + strings.Join(text.Codes(), " or --language ")}
	}
	if flag == "" {
		flag = mine.Language
	}
	return text.Of(flag, os.Getenv), nil
}
