package logbook

import (
	"fmt"

	"coldfloor/internal/journal"
)

// statements adds what the player said of pain, and every note, in the order
// said: a line each, for none takes the place of another.
func statements(r *journal.Run, shown face, add func(name, value string)) {
	if pains := r.Pains(); len(pains) == 0 {
		add("pain", pain(r))
	}
	painful := 0
	for i := range r.Said {
		if s := &r.Said[i]; s.Pain != nil && *s.Pain {
			painful++
		}
	}
	for i := range r.Said {
		s := &r.Said[i]
		when := ""
		if painful > 1 {
			when = ", said " + shown.at(s.At, dateTime)
		}
		switch {
		case s.Painful():
			add("pain", "PAIN"+stated(s)+when)
		case s.Slip:
			add("a slip", "pain"+stated(s)+when)
		case s.Note != "":
			add("note", s.Note)
		}
	}
}

// stated says what goes with pain: where, how strong, and the note.
func stated(s *journal.Statement) string {
	text := ""
	if s.Where != "" {
		text = ", " + s.Where
	}
	if s.Level != nil {
		text += fmt.Sprintf(", %d of 10", *s.Level)
	}
	if s.Note != "" {
		text += fmt.Sprintf(", %q", s.Note)
	}
	return text
}
