package compose

import (
	"strings"
	"time"

	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// exercise is an exercise of a session with the dose for each level.
type exercise struct {
	sessions.Exercise
	from   sessions.Level // the lowest level that it is for; empty: all
	count  dose
	amount [3]int // beginner, intermediate, advanced
}

// dose is what an exercise's dose counts.
type dose int

const (
	reps dose = iota
	perSide
	seconds
	secondsPerSide
)

// The table of exercises reads best as a few lines each, so what only some of
// them have is put on by methods that return the exercise changed.

// ex returns an exercise with the format's defaults; cues are separated by
// commas.
func ex(name, cues, how, easier string, floor sessions.Floor) exercise {
	return exercise{Exercise: sessions.Exercise{Name: name, Cues: strings.Split(cues, ", "), How: how, Easier: sessions.Variant{Name: easier}, Floor: floor,
		Rep: sessions.DefaultRep, Sides: sessions.LeftFirst, Switch: sessions.DefaultSwitch, Finish: sessions.ByPace,
		Overhead: sessions.Overhead{Kind: sessions.OverheadNone}}}
}

// jumps makes it leave the floor, the head rising so many centimetres.
func (x exercise) jumps(cm units.Length) exercise {
	x.Contacts = 1
	x.Overhead = sessions.Overhead{Kind: sessions.OverheadAbove, Above: cm * units.Centimetre}
	return x
}

// easierContacts sets how often the feet land in a rep of the easier variant.
func (x exercise) easierContacts(n int) exercise {
	x.Easier.Contacts = &n
	return x
}

// every sets the length of a rep, in milliseconds.
func (x exercise) every(ms time.Duration) exercise {
	x.Rep = ms * time.Millisecond
	return x
}

// tempo sets the phases of a rep, in seconds.
func (x exercise) tempo(lowering, pause, rising time.Duration) exercise {
	x.Tempo = sessions.Tempo{Lowering: lowering * time.Second, Pause: pause * time.Second, Rising: rising * time.Second}
	x.Rep = x.Tempo.Rep()
	return x
}

// along makes a rep travel along the floor, in millimetres.
func (x exercise) along(mm units.Length) exercise {
	x.Travel = mm
	return x
}

// inTurn works the sides one rep each in turn.
func (x exercise) inTurn() exercise {
	x.Sides = sessions.AlternateReps
	return x
}

// swapped starts with the other side in every second round.
func (x exercise) swapped() exercise {
	x.Sides = sessions.SwapEachRound
	return x
}

// since sets the lowest level that it is for.
func (x exercise) since(l sessions.Level) exercise {
	x.from = l
	return x
}

// dosed sets the dose of the three levels.
func (x exercise) dosed(count dose, beginner, intermediate, advanced int) exercise {
	x.count, x.amount = count, [3]int{beginner, intermediate, advanced}
	return x
}

// at returns the exercise with the dose of a level.
func (x exercise) at(l sessions.Level) sessions.Exercise {
	e, n := x.Exercise, x.amount[rank(l)]
	switch x.count {
	case reps:
		e.Reps = n
	case perSide:
		e.RepsPerSide = n
	case seconds:
		e.Time = time.Duration(n) * time.Second
	case secondsPerSide:
		e.TimePerSide = time.Duration(n) * time.Second
	}
	return e
}

// rank returns the place of a level in rising order.
func rank(l sessions.Level) int {
	switch l {
	case sessions.Intermediate:
		return 1
	case sessions.Advanced:
		return 2
	}
	return 0
}
