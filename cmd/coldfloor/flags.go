package main

import (
	"cmp"
	"math/rand/v2"
	"os"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"coldfloor/internal/check"
	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/settings"
	"coldfloor/tui/ground"
)

// journalFlag declares --journal among a command's flags.
func journalFlag(f *pflag.FlagSet, path *string) {
	f.StringVar(path, "journal", journal.DefaultPath(), "the journal `FILE`")
}

// isTerminal reports whether stream, a command's input or output, is a
// terminal.
func isTerminal(stream any) bool {
	if o, ok := stream.(*output); ok {
		stream = o.Writer
	}
	f, ok := stream.(*os.File)
	return ok && term.IsTerminal(f.Fd())
}

// wrongValue makes wrong usage of an error about a flag's value.
func wrongValue(err error) error { return usageError{err.Error(), fault.Hint(err)} }

// settingsFlag declares --settings on c.
func settingsFlag(c *cobra.Command, path *string) {
	c.Flags().StringVar(path, "settings", "", "the settings `FILE` of another player, in place of your own")
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

// backgroundFlag declares --background on c.
func backgroundFlag(c *cobra.Command, ground *string) {
	choiceFlag(c, ground, "background", "the terminal's background, `light|dark|auto`; auto asks the terminal", string(settings.Light), string(settings.Dark), string(settings.Auto))
}

// lookOf returns how the terminal is drawn on: on the ground that was asked for,
// or else on the one in the settings.
func lookOf(asked string, p settings.Player) *lipgloss.Renderer {
	return ground.Look(cmp.Or(asked, string(p.Background)), os.Getenv)
}

// seedFlag declares --seed on c.
func seedFlag(c *cobra.Command, seed *uint64) {
	c.Flags().Uint64Var(seed, "seed", 0, "call directions in the order of seed `N`, as kept in the log; 0 draws a new one")
}

// mostDrawn bounds the seeds that are drawn to six digits, which are typed easily.
const mostDrawn = 999_999

// seedOf returns the seed that was asked for, or one drawn if that is 0.
func seedOf(asked uint64) uint64 {
	if asked != 0 {
		return asked
	}
	return 1 + rand.Uint64N(mostDrawn)
}

// sameFlag declares --same on c, a command that reads many journals.
func sameFlag(c *cobra.Command, names *[]string) {
	c.Flags().StringArrayVar(names, "same", nil, "count all journals of this `NAME` as one player's; may be repeated")
}
