// Package cautions holds what a player is told for safety's sake, so that
// screen, plain run, help and printed sheet say the same. None of it is
// medical advice.
package cautions

import (
	"strings"

	"coldfloor/internal/safetext"
)

const (
	// Prepare is what to do before a session.
	Prepare = "Warm up first, and clear the floor and the space above your head."

	// Stop names the signs to stop at (StopSource).
	Stop = "Stop and get help at pain in the chest, neck, jaw or arm; dizziness or fainting; " +
		"breathlessness that keeps you from talking; a cold sweat; an irregular heartbeat; " +
		"new pain in a joint; disturbed vision."

	// NotAdvice says what the program is not.
	NotAdvice = "This is not medical advice: with an illness, an injury or a doubt, ask a licensed practitioner first."

	// Under18 is for players who are not of age (Under18Source).
	Under18 = "Players under 18 train with the agreement of a qualified adult."

	// StopSource is where the signs of Stop come from.
	StopSource = "The signs to stop at are those of hospitals' pages on exercise safety."

	// Under18Source is whose advice Under18 is.
	Under18Source = "For players under 18: training appropriately prescribed and supervised, Faigenbaum et al., " +
		"J Strength Cond Res 2009;23:S60–S79; Lloyd et al., Br J Sports Med 2014;48:498–505."

	// PainNoted is shown when a player has noted pain.
	PainNoted = "Pain is noted. Do not train through it: stop, and see a licensed practitioner about pain that is new, is sharp or does not go away. " + Stop
)

// FirstRun returns what is shown before somebody's first session, a paragraph
// each.
func FirstRun() []string { return []string{Prepare, Stop, NotAdvice, Under18} }

// Help returns the cautions as the printed help has them.
func Help() string {
	paragraphs := append(FirstRun(), StopSource+" "+Under18Source)
	for i, p := range paragraphs {
		paragraphs[i] = Lines(p)
	}
	return strings.Join(paragraphs, "\n")
}

// Lines returns a paragraph in lines of at most 76 columns.
func Lines(paragraph string) string {
	return strings.Join(safetext.Wrap(paragraph, 76, 20), "\n")
}
