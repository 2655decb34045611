package sheet

import (
	"fmt"

	"coldfloor/internal/rating"
	"coldfloor/sessions"
)

// effortAsked asks for session-RPE with the words, and at the time, of Foster
// et al., J Strength Cond Res 2001;15:109–115.
func effortAsked() Effort {
	e := Effort{
		Question: "How hard was the session as a whole? Mark one number, " + rating.AskAfter + ".",
		Source:   "Session-RPE: Foster et al., J Strength Cond Res 2001;15:109–115",
		Blanks:   []string{"Name", "Date", "Minutes done"},
		Pain:     "Pain: where, 0 to 10",
	}
	for n, words := range rating.Scale {
		e.Scale = append(e.Scale, Grade{fmt.Sprint(n), words})
	}
	return e
}

// legendOf explains the signs that the sheet of a session uses.
func legendOf(s *sessions.Session) []string {
	var sides, tempo, fast, contacts bool
	for i := range s.Blocks {
		for j := range s.Blocks[i].Exercises {
			e := &s.Blocks[i].Exercises[j]
			sides = sides || e.OneSided() && e.Sides != sessions.AlternateReps
			tempo = tempo || e.Tempo != (sessions.Tempo{})
			fast = fast || e.Tempo.Fast || e.Easier.Tempo.Fast || e.Harder.Tempo.Fast
			contacts = contacts || e.Contacts > 0 && e.Reps+e.RepsPerSide > 0
		}
	}
	legend := []string{"Tick a box when its set is done."}
	if sides {
		legend = append(legend, "L and R: left and right side, in the order to work them.")
	}
	if tempo {
		legend = append(legend, "Tempo: seconds lowering-pause-rising, and a last pause where a fourth is given.")
	}
	if fast {
		legend = append(legend, fmt.Sprintf("X in a tempo: as fast as possible, taken as %s.", figure(sessions.FastRising)))
	}
	if contacts {
		legend = append(legend, "Contact: one foot, or both together, touching the floor.")
	}
	if s.LeadIn > 0 {
		legend = append(legend, fmt.Sprintf("The total counts %s to get ready.", figure(s.LeadIn)))
	}
	return legend
}
