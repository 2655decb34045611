package logbook

import (
	"fmt"
	"strings"

	"coldfloor/internal/journal"
	"coldfloor/internal/texttable"
	"coldfloor/internal/units"
)

// amendments sets every line that was written about the run, so that an old
// value can be seen beside the one that took its place.
func amendments(r *journal.Run, shown face) texttable.Table {
	var t texttable.Table
	for i := range r.Amendments {
		l := &r.Amendments[i]
		t.Rows = append(t.Rows, []string{shown.at(l.At, dateTime), amendment(l, shown)})
	}
	return t
}

// amendment says what one line says.
func amendment(l *journal.Line, shown face) string {
	switch l.Event {
	case journal.EventRating:
		return rated(l.Rating)
	case journal.EventCorrect:
		return corrected(l.Correct, shown)
	case journal.EventWithdraw:
		return "deleted"
	case journal.EventRestore:
		return "restored"
	}
	return string(l.Event)
}

func rated(v *journal.Rating) string {
	var parts []string
	if v.Rounds != nil {
		parts = append(parts, "rounds "+strings.Trim(strings.ReplaceAll(fmt.Sprint(v.Rounds), " ", ","), "[]"))
	}
	if v.RPE != nil {
		parts = append(parts, fmt.Sprintf("effort %v", *v.RPE))
	}
	switch {
	case v.Pain == nil:
	case !*v.Pain:
		parts = append(parts, "no pain")
	case v.Where != nil && *v.Where != "":
		parts = append(parts, "pain, "+*v.Where)
	default:
		parts = append(parts, "pain")
	}
	if v.PainLevel != nil {
		parts = append(parts, fmt.Sprintf("%d of 10", *v.PainLevel))
	}
	if v.NoPain {
		parts = append(parts, "earlier pain taken back")
	}
	if v.Note != nil {
		parts = append(parts, fmt.Sprintf("note %q", *v.Note))
	}
	return strings.Join(parts, "; ")
}

func corrected(c *journal.Correct, shown face) string {
	var parts []string
	if c.At != nil {
		parts = append(parts, "began "+shown.at(*c.At, dateTime))
	}
	if c.LengthS != nil {
		parts = append(parts, "length "+units.Clock(units.Seconds(*c.LengthS)))
	}
	return strings.Join(parts, "; ")
}
