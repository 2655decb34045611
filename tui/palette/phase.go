// Package palette holds how each phase of a session looks: its shape and its
// colour, in one table. No two phases share a shape, so that nothing hangs on
// colour. Their words are the language's.
package palette

import (
	"github.com/charmbracelet/lipgloss"

	"coldfloor/internal/plan"
)

// Phase is what the player is to do now.
type Phase int

// The phases.
const (
	GetReady     Phase = iota // a countdown into work
	Work                      // work that the clock ends
	OwnPace                   // work that the player ends
	SideChange                // from one side to the other
	NextExercise              // from one exercise of a round to the next
	Rest
	RestEnds // the last seconds of a rest, to get into position in
	Paused
	Done
)

// Look is how a phase looks.
type Look struct {
	Shape rune // one cell wide; package glyph draws it large
	ASCII rune // the shape where there is nothing but ASCII
	// Colour is at least 4.5 times as light, or as dark, as the background,
	// and as the text that is laid on it (WCAG 2.2, success criterion 1.4.3).
	Colour lipgloss.CompleteAdaptiveColor
}

// looks is the table. The Linux console's own font has every shape too. Work and
// rest have the pair of colours that is easiest to tell apart with any kind of
// colour vision.
var looks = [...]Look{
	GetReady:     {'▲', '^', yellow},
	Work:         {'■', '#', orange},
	OwnPace:      {'♦', '*', orange},
	SideChange:   {'↔', '=', purple},
	NextExercise: {'►', '>', green},
	Rest:         {'•', 'o', blue},
	RestEnds:     {'↑', '!', blue},
	Paused:       {'║', '"', grey},
	Done:         {'√', '+', grey},
}

// Look returns how the phase looks.
func (p Phase) Look() Look { return looks[p] }

// Shapes returns the shapes of all phases.
func Shapes() string {
	var all []rune
	for _, l := range looks {
		all = append(all, l.Shape)
	}
	return string(all)
}

// Resting reports whether the phase is a rest, long enough to be told what
// comes next before it is time for it.
func (p Phase) Resting() bool { return p == Rest || p == RestEnds }

// OfKind returns the phase of a kind of step.
func OfKind(k plan.Kind) Phase {
	switch k {
	case plan.Work:
		return Work
	case plan.Switch:
		return SideChange
	case plan.Change:
		return NextExercise
	case plan.Rest:
		return Rest
	}
	return GetReady
}
