package compose

import (
	"fmt"
	"slices"
	"time"

	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// notable is how much time may be left over without a word.
const notable = 2 * time.Minute

// notes says what the session lacks of what was asked for, and why; it trains
// the first n of the qualities asked for.
func (a Answers) notes(s *sessions.Session, sh shape, n int) []string {
	var notes []string
	add := func(format string, args ...any) { notes = append(notes, fmt.Sprintf(format, args...)) }
	if left := a.Train[n:]; len(left) > 0 {
		add("left out for want of time: %s; %s hold a warm-up, %s and a cool-down", words(left), minutes(a.Length), words(a.Train[:n]))
	}
	for _, q := range Qualities() {
		if slices.Contains(a.Train[:n], q) && q != Strength && !leavesFloor(s, q) {
			whom := a.height().Text()
			if a.Height == 0 {
				whom += ", assumed because the settings give no height"
			}
			add("%s is trained without leaving the floor: its jumps do not fit the room, or the ceiling over a player of %s", q, whom)
		}
	}
	fast := words(a.Train[:n]) != string(Strength)
	if fast && sh.warmUp < twoWarmUps {
		add("the warm-up is %s, the least; practice is 10 min before jumps and sprints, so add some if you can", units.Sentence(lengthOf(s.Blocks[0])))
	}
	if fast && !sh.long {
		add("60 s of rest between rounds, the least, to fit it all in; practice is about 90 s")
	}
	_, length := sessions.Size(s)
	if spare := a.Length - length; spare >= notable {
		why := "another round of anything is longer than that"
		if sh == shapesOf(a.Train[:n])[0] || sh.rounds == 5 && sh.second {
			why = "more of the same would tire and no longer train it"
		}
		add("%s of the %s are left over: %s", units.Clock(spare), minutes(a.Length), why)
	}
	return notes
}

// leavesFloor reports whether some block of a quality has foot contacts.
func leavesFloor(s *sessions.Session, q Quality) bool {
	return slices.ContainsFunc(s.Blocks, func(b sessions.Block) bool {
		return slices.Contains(b.Trains, named[q].trains) &&
			slices.ContainsFunc(b.Exercises, func(e sessions.Exercise) bool { return e.Contacts > 0 })
	})
}

// lengthOf returns the length of a block without the rest after it.
func lengthOf(b sessions.Block) time.Duration {
	_, length := sessions.Size(&sessions.Session{Blocks: []sessions.Block{b}})
	return length
}

// minutes writes a time there is as it was asked for.
func minutes(d time.Duration) string { return fmt.Sprintf("%d min", int(d/time.Minute)) }
