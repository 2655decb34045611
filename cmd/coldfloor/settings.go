package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/fault"
	"coldfloor/internal/safetext"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/internal/texttable"
	"coldfloor/internal/wholefile"
)

// newSettings returns the command that shows the settings as they are used.
func newSettings() *cobra.Command {
	var asJSON, initial bool
	c := &cobra.Command{
		Use:   "settings",
		Short: "Show the settings of the player and the room, and where each comes from",
		Long: `Show the settings of the player and the room, and where each comes from: the
settings file, what the program remembers, an estimate with its source, or the
default. The file is YAML and every key is optional; --init writes one in which
every key is explained and commented out. After that, only you write to it. On
this machine it is
` + "  " + settings.File(),
		Args: argsError(cobra.NoArgs),
		RunE: func(c *cobra.Command, _ []string) error {
			if initial {
				return initSettings(c.OutOrStdout())
			}
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
	c.Flags().BoolVar(&initial, "init", false, "write a settings file to start from, if there is none")
	atMostOne(c, "json", "init")
	return c
}

// initSettings writes a settings file in which every key is commented out,
// never over one that is there.
func initSettings(w io.Writer) error {
	file := settings.File()
	if err := wholefile.Check(file, wholefile.Options{}); errors.Is(err, wholefile.ErrThere) {
		return fault.New("edit it; coldfloor settings shows what is used of it", "%s is there already", safetext.Quote(file))
	}
	if err := wholefile.Folder(filepath.Dir(file), 0o700); err != nil {
		return err
	}
	if err := wholefile.Write(file, settings.Sample(), wholefile.Options{Mode: 0o600}); err != nil {
		return err
	}
	fmt.Fprintf(w, "wrote %s: every key is explained in it, and commented out\n", safetext.Clean(file))
	return nil
}

// showSettings writes the settings as a table.
func showSettings(w io.Writer, s settings.Player, now time.Time) error {
	state := ""
	if s.File == "" {
		state = " (not there: nothing is set; --init writes one)"
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
		fmt.Fprintf(w, "\n%s\n", text.English.Care.Under18)
	}
	return nil
}
