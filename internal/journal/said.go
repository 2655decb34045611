package journal

import (
	"iter"
	"slices"
	"strings"
	"time"
)

// Statement is what a player said at one time of pain, or in their own words.
// It is never changed by a later one.
type Statement struct {
	At    time.Time `json:"at"`
	Pain  *bool     `json:"pain,omitempty"`  // nil: it is a note alone
	Where string    `json:"where,omitempty"` // it hurt; may be empty
	Level *int      `json:"level,omitempty"` // how strong, 0 to 10
	Note  string    `json:"note,omitempty"`
	Slip  bool      `json:"slip,omitempty"` // a later statement says that this one was a slip
}

// Painful reports whether it is a statement of pain that stands.
func (s *Statement) Painful() bool { return s.Pain != nil && *s.Pain && !s.Slip }

// Painful reports whether the player stated pain, and did not call it a slip.
func (r *Run) Painful() bool { return r.Rating.Pain != nil && *r.Rating.Pain }

// NewPainAfter is how many days after the last word of pain in a place pain
// there is new again. Our own choice.
const NewPainAfter = 56

// NewPain reports whether pain said of a place at a time is new there: nothing
// was said of that place in the NewPainAfter days before, by the calendar where
// the player was. Earlier tells of each earlier word of pain.
func NewPain(where string, at time.Time, earlier iter.Seq2[string, time.Time]) bool {
	if strings.TrimSpace(where) == "" {
		return false
	}
	for place, then := range earlier {
		if SamePlace(place, where) && dateOf(at).Sub(dateOf(then)) <= NewPainAfter*24*time.Hour {
			return false
		}
	}
	return true
}

// SamePlace reports whether two statements name one place, and do name one: of a
// place that nobody named it cannot be said that pain there is new, or not. Case
// and the width of the spaces do not count.
func SamePlace(a, b string) bool {
	a, b = strings.Join(strings.Fields(a), " "), strings.Join(strings.Fields(b), " ")
	return a != "" && strings.EqualFold(a, b)
}

// Empty reports whether nothing was said.
func (r *Rating) Empty() bool {
	return r.Rounds == nil && r.RPE == nil && r.Pain == nil && r.Where == nil && r.PainLevel == nil && !r.NoPain && r.Note == nil
}

// statement returns what the rating states of pain, or nil if nothing.
func (r *Rating) statement() *Statement {
	where, note := text(r.Where), text(r.Note)
	pain := r.Pain
	if yes := where != "" || r.PainLevel != nil && *r.PainLevel > 0; pain == nil && yes {
		pain = &yes
	}
	if no := false; pain == nil && r.PainLevel != nil {
		pain = &no
	}
	if pain == nil && note == "" {
		return nil
	}
	return &Statement{Pain: pain, Where: where, Level: r.PainLevel, Note: note}
}

func text(p *string) string {
	if p == nil {
		return ""
	}
	return *p
}

// say takes a rating of that time: the last word on rounds and effort, and a
// statement beside the earlier ones.
func (r *Run) say(v *Rating, at time.Time) {
	if v.Rounds != nil {
		r.Rating.Rounds = v.Rounds
	}
	if v.RPE != nil {
		r.Rating.RPE = v.RPE
	}
	if v.NoPain {
		for i := range r.Said {
			if s := &r.Said[i]; s.Pain != nil && *s.Pain {
				s.Slip = true
			}
		}
	}
	s := v.statement()
	if s != nil {
		s.At = at
		r.Said = append(r.Said, *s)
	}
	if v.NoPain || s != nil && s.Pain != nil {
		painful := false
		for i := range r.Said {
			painful = painful || r.Said[i].Painful()
		}
		r.Rating.Pain = &painful
	}
}

// Pains returns the statements of pain that stand, in the order said.
func (r *Run) Pains() []Statement {
	return slices.DeleteFunc(slices.Clone(r.Said), func(s Statement) bool { return !s.Painful() })
}

// PainWhere returns the places of the statements of pain that stand, with a
// semicolon between, for a table that has one cell for them; nil if none names
// one.
func (r *Run) PainWhere() *string {
	return joined(r.Said, func(s *Statement) string {
		if !s.Painful() {
			return ""
		}
		return s.Where
	})
}

// Notes returns every note, with a semicolon between, for a table that has one
// cell for them; nil if there is none. If several things were said, one that
// goes with pain begins with the place.
func (r *Run) Notes() *string {
	return joined(r.Said, func(s *Statement) string {
		if s.Note == "" || s.Where == "" || len(r.Said) == 1 {
			return s.Note
		}
		return s.Where + ": " + s.Note
	})
}

func joined(said []Statement, part func(*Statement) string) *string {
	var parts []string
	for i := range said {
		if p := part(&said[i]); p != "" {
			parts = append(parts, p)
		}
	}
	if parts == nil {
		return nil
	}
	all := strings.Join(parts, "; ")
	return &all
}
