package sheet

import (
	"fmt"

	"coldfloor/internal/text"
	"coldfloor/sessions"
)

// effortAsked asks for session-RPE with the words, and at the time, of Foster
// et al., J Strength Cond Res 2001;15:109–115.
func effortAsked(l *text.Language) Effort {
	w := &l.Sheet
	e := Effort{
		Question: w.Question,
		Source:   w.Source,
		Blanks:   []string{w.Name, w.Date, w.Minutes},
		Pain:     w.Pain,
	}
	for n, words := range l.Form.RPE {
		e.Scale = append(e.Scale, Grade{fmt.Sprint(n), words})
	}
	return e
}

// legendOf explains the signs that the sheet of a session uses.
func legendOf(s *sessions.Session, w *text.Sheet) []string {
	var sides, tempo, contacts bool
	for i := range s.Blocks {
		for j := range s.Blocks[i].Exercises {
			e := &s.Blocks[i].Exercises[j]
			sides = sides || e.OneSided() && e.Sides != sessions.AlternateReps
			tempo = tempo || e.Tempo != (sessions.Tempo{})
			contacts = contacts || e.Contacts > 0 && e.Reps+e.RepsPerSide > 0
		}
	}
	legend := []string{w.Tick}
	if sides {
		legend = append(legend, w.LeftRight)
	}
	if tempo {
		legend = append(legend, w.TempoLegend)
	}
	if len(s.FastRisings()) > 0 {
		legend = append(legend, w.TakenAs(figure(sessions.FastRising).String()))
	}
	if contacts {
		legend = append(legend, w.ContactLegend)
	}
	if s.LeadIn > 0 {
		legend = append(legend, w.CountsLeadIn(figure(s.LeadIn).String()))
	}
	return legend
}
