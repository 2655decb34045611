package main

import (
	"fmt"
	"io"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/cautions"
	"coldfloor/internal/safetext"
	"coldfloor/internal/settings"
	"coldfloor/internal/texttable"
)

// newSettings returns the command that shows the settings as they are used.
func newSettings() *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "settings",
		Short: "Show the settings of the person and the room, and where each came from",
		Long: `Show the settings of the person and the room as they are used, and where each
came from: the settings file, the program's own memory, an estimate with its
source, or the default. The file is YAML, every key is optional, and nothing
but an editor writes it. On this machine it is
` + "  " + settings.File(),
		Args: argsError(cobra.NoArgs),
		RunE: func(c *cobra.Command, _ []string) error {
			s, err := loadSettings("")
			if err != nil {
				return err
			}
			now := time.Now()
			if asJSON {
				return writeJSON(c.OutOrStdout(), map[string]any{"file": settings.File(), "found": s.File != "", "settings": s.Rows(now)})
			}
			return showSettings(c.OutOrStdout(), s, now)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "write JSON")
	return c
}

// showSettings writes the settings as a table.
func showSettings(w io.Writer, s settings.Player, now time.Time) error {
	state := ""
	if s.File == "" {
		state = " (not there: all is by default)"
	}
	fmt.Fprintf(w, "file: %s%s\n\n", safetext.Clean(settings.File()), state)
	t := texttable.Table{Header: []string{"setting", "value", "from"}}
	for _, r := range s.Rows(now) {
		from := string(r.Origin)
		if r.Origin == settings.FromFile {
			from = fmt.Sprintf("line %d", r.Line)
		}
		if r.Source != "" {
			from += ": " + r.Source
		}
		value := r.Value
		if value == "" {
			value = "–"
		}
		t.Rows = append(t.Rows, []string{r.Key, value, from})
	}
	if _, err := io.WriteString(w, t.String()); err != nil {
		return err
	}
	if s.Minor(now) {
		fmt.Fprintf(w, "\n%s\n", cautions.Under18)
	}
	return nil
}
