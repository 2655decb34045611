package sessions

import (
	"fmt"
	"time"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
)

// Variant is an easier or a harder form of an exercise. What it leaves out is
// as in the exercise. The zero Variant is "none".
type Variant struct {
	Name     string        `yaml:"name"`
	Contacts *int          `yaml:"contacts,omitempty"` // foot contacts of one rep, 0 to MaxContacts; nil: left out
	Rep      time.Duration `yaml:"rep,omitempty"`      // length of one rep, the tempo's sum if a tempo is given; 0: left out
	Tempo    Tempo         `yaml:"tempo,omitempty"`
	Cues     []string      `yaml:"cues,omitempty"`
	How      string        `yaml:"how,omitempty"`

	Bare bool `yaml:"-"` // written as a text alone: how often its feet land is not known
}

// Given reports whether there is such a variant.
func (v *Variant) Given() bool { return v.Name != "" }

// In returns the exercise as it is done: in its easier variant if easier is
// set and there is one, otherwise e itself. Contacts that the variant leaves
// out are those of the exercise.
func (e *Exercise) In(easier bool) *Exercise {
	v := &e.Easier
	if !easier || !v.Given() {
		return e
	}
	done := *e
	done.Name = v.Name
	if v.Contacts != nil {
		done.Contacts = *v.Contacts
	}
	if v.Rep > 0 {
		done.Rep, done.Tempo = v.Rep, v.Tempo
	}
	if v.Cues != nil {
		done.Cues = v.Cues
	}
	switch {
	case v.How != "":
		done.How = v.How
	case v.Bare:
		done.How = "" // it tells how the exercise itself is done
	}
	return &done
}

// The keys of a variant that is a mapping.
var variantKeys = []string{"name", "contacts", "rep", "tempo", "cues", "how"}

// readVariant reads a variant of e: a text, which is its name, or a mapping.
func readVariant(m *yamlread.Mapping, key string, e *Exercise) Variant {
	if !m.Has(key) {
		return Variant{}
	}
	if !m.IsMapping(key) {
		name := m.Text(key, MaxText)
		return Variant{Name: name, Bare: name != ""}
	}
	sub := m.Mapping(key, variantKeys...)
	sub.Need("name")
	v := Variant{
		Name: sub.Text("name", MaxLabel),
		Cues: sub.Texts("cues", MaxWords, MaxLabel),
		How:  sub.Text("how", MaxText),
	}
	if sub.Has("contacts") {
		n := sub.Int("contacts", 0, MaxContacts, 0)
		v.Contacts = &n
	}
	v.Rep, v.Tempo = readPace(sub, 0)
	if reps := time.Duration(e.Reps + e.RepsPerSide); reps > 0 && v.Rep > MaxLength/reps {
		sub.Problem("rep", fmt.Sprintf("a set of this variant lasts longer than %s", units.FormatDuration(MaxLength)), "a bare number is seconds")
	}
	return v
}
