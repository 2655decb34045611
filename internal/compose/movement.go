package compose

import (
	"strings"
	"time"

	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// movement is an exercise with the dose for each level.
type movement struct {
	exercise sessions.Exercise
	from     sessions.Level // the lowest level that it is for; empty: all
	count    dose
	amount   [3]int // beginner, intermediate, advanced
}

// dose is what a movement's dose counts.
type dose int

const (
	reps dose = iota
	perSide
	seconds
	secondsPerSide
)

// The table of movements reads best as a few lines each, so what only some of
// them have is put on by methods that return the movement changed.

// ex returns a movement with the format's defaults; cues are separated by
// commas.
func ex(name, cues, how, easier string, floor sessions.Floor) movement {
	return movement{exercise: sessions.Exercise{Name: name, Cues: strings.Split(cues, ", "), How: how, Easier: sessions.Variant{Name: easier}, Floor: floor,
		Rep: sessions.DefaultRep, Sides: sessions.LeftFirst, Switch: sessions.DefaultSwitch, Finish: sessions.ByPace,
		Overhead: sessions.Overhead{Kind: sessions.OverheadNone}}}
}

// jumps makes it leave the floor, the head rising so many centimetres.
func (m movement) jumps(cm units.Length) movement {
	m.exercise.Contacts = 1
	m.exercise.Overhead = sessions.Overhead{Kind: sessions.OverheadAbove, Above: cm * units.Centimetre}
	return m
}

// every sets the length of a rep, in milliseconds.
func (m movement) every(ms time.Duration) movement {
	m.exercise.Rep = ms * time.Millisecond
	return m
}

// tempo sets the phases of a rep, in seconds.
func (m movement) tempo(lowering, pause, rising time.Duration) movement {
	m.exercise.Tempo = sessions.Tempo{Lowering: lowering * time.Second, Pause: pause * time.Second, Rising: rising * time.Second}
	m.exercise.Rep = m.exercise.Tempo.Rep()
	return m
}

// along makes a rep travel along the floor, in millimetres.
func (m movement) along(mm units.Length) movement {
	m.exercise.Travel = mm
	return m
}

// inTurn works the sides one rep each in turn.
func (m movement) inTurn() movement {
	m.exercise.Sides = sessions.AlternateReps
	return m
}

// swapped starts with the other side in every second round.
func (m movement) swapped() movement {
	m.exercise.Sides = sessions.SwapEachRound
	return m
}

// since sets the lowest level that it is for.
func (m movement) since(l sessions.Level) movement {
	m.from = l
	return m
}

// dosed sets the dose of the three levels.
func (m movement) dosed(count dose, beginner, intermediate, advanced int) movement {
	m.count, m.amount = count, [3]int{beginner, intermediate, advanced}
	return m
}

// at returns the exercise with the dose of a level.
func (m movement) at(l sessions.Level) sessions.Exercise {
	e, n := m.exercise, m.amount[rank(l)]
	switch m.count {
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
