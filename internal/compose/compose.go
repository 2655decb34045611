// Package compose writes a sound first session from a few answers, to be edited
// by whoever asked for it. Its exercises are for badminton's singles players in
// the off-season.
package compose

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// Answers is what a draft goes by.
type Answers struct {
	Level  sessions.Level
	Length time.Duration // the session is as long as fits, and never longer
	Room   settings.Room // its ceiling may be 0: none to mind
	Train  []Quality     // one or more, the one that matters most first; nil trains them all
	Height units.Length  // of the player; 0: not known, and taken for tall

	MostContacts int // foot contacts of the session at most; 0: the published range of the level
}

// Draft is a session written from answers.
type Draft struct {
	Source []byte   // the file
	Notes  []string // what had to go and why, what was put in its place, and time that is left over; a sentence each, with no full stop
}

// Bounds of the answers.
const (
	MinLength = 10 * time.Minute
	MaxLength = 60 * time.Minute
	MinSide   = 1 * units.Metre // of the floor
)

// check returns what is wrong with the answers; the error says what to do.
func (a Answers) check() error {
	short, long := min(a.Room.Along, a.Room.Across), max(a.Room.Along, a.Room.Across)
	switch {
	case a.Length < MinLength || a.Length > MaxLength:
		return fmt.Errorf("a session is drafted for %s", units.SentenceRange(MinLength, MaxLength))
	case short < MinSide || long < MinSide:
		return fmt.Errorf("a room of %v is too small, it takes %s x %s of floor", a.Room, MinSide.Text(), MinSide.Text())
	case a.Room.Ceiling > 0 && a.Room.Ceiling < a.height():
		return fmt.Errorf("under a ceiling of %s a player of %s cannot stand upright", a.Room.Ceiling.Text(), a.height().Text())
	}
	for _, q := range a.Train {
		if !slices.Contains(Qualities(), q) {
			return fmt.Errorf("a draft cannot train %q", q)
		}
	}
	return nil
}

func (a Answers) height() units.Length {
	if a.Height > 0 {
		return a.Height
	}
	return settings.AssumedHeight
}

// Compose returns a session that answers a: valid, no longer than a.Length,
// with a warm-up and a cool-down, and without a warning of check or a note on
// rest or effort. What was asked for and has no room in the time is left out
// from the last one asked for on, and the draft's notes say so.
func Compose(a Answers) (Draft, error) {
	if err := a.check(); err != nil {
		return Draft{}, err
	}
	if len(a.Train) == 0 {
		a.Train = Qualities()
	}
	if a.Level == "" {
		a.Level = sessions.Beginner
	}
	if a.Room.Across > a.Room.Along {
		a.Room.Along, a.Room.Across = a.Room.Across, a.Room.Along
	}
	if a.MostContacts == 0 {
		a.MostContacts = int(settings.LimitByKey("contacts_" + string(a.Level)).Default.High)
	}
	sizes := sizer{Answers: a, known: map[part]size{}}
	for n := len(a.Train); n > 0; n-- {
		for _, sh := range shapesOf(a.Train[:n]) {
			if of := sizes.of(sh, a.Train[:n]); of.length <= a.Length && of.contacts <= a.MostContacts {
				s := a.build(sh, a.Train[:n])
				notes := a.notes(s, sh, n)
				return Draft{Source: render(s, a, notes), Notes: notes}, nil
			}
		}
	}
	return Draft{}, errors.New("nothing fits")
}

// fits reports whether an exercise is for the level and fits the room.
func (a Answers) fits(x *exercise) bool {
	const spare = 10 * units.Centimetre // below the ceiling
	if rank(x.from) > rank(a.Level) || x.Floor.Along > a.Room.Along || x.Floor.Across > a.Room.Across {
		return false
	}
	return a.Room.Ceiling == 0 || x.Overhead.Kind != sessions.OverheadAbove || a.height()+x.Overhead.Above+spare <= a.Room.Ceiling
}

// pick returns those of a quality's exercises, the best first, that fit level
// and room.
func (a Answers) pick(from []exercise) []sessions.Exercise {
	var picked []sessions.Exercise
	for i := range from {
		if a.fits(&from[i]) {
			picked = append(picked, from[i].at(a.Level))
		}
	}
	return picked
}
