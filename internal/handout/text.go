package handout

import (
	"fmt"
	"io"

	"coldfloor/internal/fault"
	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
)

// Text says what was handed out, and what the check has against it, player by
// player.
func Text(w io.Writer, given []Given) error {
	for _, g := range given {
		name := safetext.Clean(g.Folder)
		if g.Player != "" {
			name = safetext.Clean(g.Player) + ", " + name
		}
		fmt.Fprintf(w, "%s: %s written, %d unchanged\n", name, units.Count(len(g.Written), "file"), g.Kept)
		for _, x := range g.Found {
			for _, f := range x.Findings {
				fmt.Fprintf(w, "  %s, %s: %s: %s\n", x.Day.Date.Short(), safetext.Clean(x.Title), f.Severity, f.Message)
			}
		}
		if g.Err != nil {
			fmt.Fprintf(w, "  not all of it: %s\n", safetext.Clean(g.Err.Error()))
			if hint := fault.Hint(g.Err); hint != "" {
				fmt.Fprintf(w, "  hint: %s\n", safetext.Clean(hint))
			}
		}
	}
	return nil
}
