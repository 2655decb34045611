package tui

import (
	"fmt"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/units"
)

// What the running screen says, in one place. What is drawn large is turned
// into capitals there.
const (
	textKeyWhenDone = "KEY WHEN DONE" // after the word of the phase
	textAbout       = "about"         // before a count that is worked out from the pace
	textNext        = "next"
	textResume      = "p to resume"
	textPaused      = "paused; p to resume"
	textGoOn        = "any key goes on"
	textThenDone    = "then finished"
	textHelpBack    = "? goes back to the session"

	textKeepResult = "enter keeps it, esc leaves it out"
	textOneMore    = "once more"
	textResults    = "What came out"
	textLeftOut    = "left out"

	textMuted    = "muted"
	textBellOnly = "bell only"
	textSoundOff = "sound off"
	textSoundOn  = "sound on"
	textMore     = "15 s more"
	textNoMore   = "this set ends by a key, not by the clock"
	textEasier   = "easier variant"
	textAsGiven  = "as prescribed"
	textNoEasier = "no easier variant is given for this"
)

// textStop asks whether to stop.
var textStop = [...]string{"Stop?", "q stops and logs", "any other key goes on"}

// textPhase names the phases of a rep.
var textPhase = map[plan.RepPhase]string{plan.Lowering: "down", plan.HoldLow: "hold", plan.Rising: "up", plan.HoldHigh: "hold"}

// textOf says of how many reps the one in hand is.
func textOf(reps int) string { return fmt.Sprintf("of %d", reps) }

// textTarget sets the time worked against the time that the pace allows.
func textTarget(worked, target time.Duration) string {
	return units.Clock(worked) + " of " + units.Clock(target)
}

// textToGo says how much is left of something.
func textToGo(left time.Duration) string { return units.Clock(left) + " to go" }

// textMoreResults says how many results are still to be asked for.
func textMoreResults(n int) string { return fmt.Sprintf("%d more to come", n) }

// textThen says what follows.
func textThen(what string) string { return "then " + what }

// textThenRest says that a rest follows.
func textThenRest(length time.Duration) string { return "then rest " + units.Clock(length) }

// textOffer says which easier variant there is for the work to come.
func textOffer(name string) string { return "e easier: " + name }

// textVolume says how loud it is, in percent.
func textVolume(percent int) string { return fmt.Sprintf("volume %d %%", percent) }

// What the form after a session says.
const (
	textEffort      = "Effort, 0 to 10"
	textPain        = "Pain"
	textWhere       = "where"
	textNote        = "Note"
	textSave        = "Save"
	textYes         = "yes"
	textNo          = "no"
	textNotAnswered = "not answered"

	textNoteHint   = "anything worth keeping"
	textRoundsHint = "completed rounds, as counted; correct them if they are wrong"
	textPainHint   = "any pain, during or now?"
	textOptional   = "everything is optional"
)

// textEffortHint asks for the effort, and says after how long it is answered
// best.
func textEffortHint(after string) string {
	return "how hard in all? best answered " + after + ", by coldfloor log rate"
}

// textRounds says how many rounds of a block were done.
func textRounds(done, of int) string { return fmt.Sprintf("%d of %d rounds", done, of) }

// textMoreAbove and textMoreBelow say how many lines of a list are out of sight.
func textMoreAbove(n int) string { return fmt.Sprintf("%d more above", n) }
func textMoreBelow(n int) string { return fmt.Sprintf("%d more below", n) }
