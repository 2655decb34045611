// Package cautions keeps who has read what is said for safety's sake, and sets
// it for the printed help with its sources. The words are those of package text,
// so that screen, plain run, help and printed sheet say the same.
package cautions

import (
	"strings"

	"coldfloor/internal/safetext"
	"coldfloor/internal/text"
)

const (
	// StopSource is where the signs to stop at come from.
	StopSource = "The signs to stop at are those of hospitals' pages on exercise safety."

	// Under18Source is whose advice it is that is given to players under 18.
	Under18Source = "For players under 18: training appropriately prescribed and supervised, Faigenbaum et al., " +
		"J Strength Cond Res 2009;23:S60–S79; Lloyd et al., Br J Sports Med 2014;48:498–505."
)

// Help returns the cautions as the printed help has them.
func Help() string {
	paragraphs := append(text.English.Cautions(), StopSource+" "+Under18Source)
	for i, p := range paragraphs {
		paragraphs[i] = Lines(p)
	}
	return strings.Join(paragraphs, "\n")
}

// Lines returns a paragraph in lines of at most 76 columns.
func Lines(paragraph string) string {
	return strings.Join(safetext.Wrap(paragraph, 76, 20), "\n")
}
