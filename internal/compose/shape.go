package compose

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"sync"
	"time"

	"coldfloor/sessions"
)

// shape is how much of what a session has.
type shape struct {
	warmUp   int  // exercises in a row: half a round of the warm-up, one round, or two
	rounds   int  // of each block that was asked for
	each     int  // exercises of such a block
	second   bool // a second block of each quality, of its next exercises
	long     bool // the longer rest between rounds
	trunk    int  // rounds; 0: none
	coolDown int  // exercises
}

// Warm-ups, in exercises.
const (
	halfWarmUp = 3 // for slow work alone
	oneWarmUp  = 6 // five minutes
	twoWarmUps = 12
)

// Rests of a draft. Between rounds of power about 90 s are the custom and 60 s
// the least (common practice, no source; that 60 s pass: our own). Strength
// rests 2 min and more (NSCA Essentials, second-hand).
const (
	longRest     = 90 * time.Second
	shortRest    = 60 * time.Second
	strengthRest = 2 * time.Minute
)

// worth weighs what a shape has: the warm-up and the rounds of what was asked
// for most, what nobody asked for least. Our own, no source.
func (sh shape) worth() int {
	w := map[int]int{halfWarmUp: 10, oneWarmUp: 30, twoWarmUps: 60}[sh.warmUp]
	w += []int{0, 0, 20, 40, 50, 54}[sh.rounds]
	w += 24 * (sh.each - 1)
	w += 6*sh.trunk + 3*sh.coolDown
	if sh.long {
		w += 12
	}
	if sh.second {
		w += 14
	}
	return w
}

// allShapes are all shapes, the one that is worth most first.
var allShapes = sync.OnceValue(func() []shape {
	var all []shape
	for _, warmUp := range []int{halfWarmUp, oneWarmUp, twoWarmUps} {
		for rounds := 2; rounds <= 5; rounds++ {
			for each := 1; each <= 2; each++ {
				for trunk := 0; trunk <= 3; trunk++ {
					for _, coolDown := range []int{1, 2, 3, 5} {
						for i := range 4 {
							all = append(all, shape{warmUp, rounds, each, i&1 > 0, i&2 > 0, trunk, coolDown})
						}
					}
				}
			}
		}
	}
	slices.SortStableFunc(all, func(a, b shape) int { return cmp.Compare(b.worth(), a.worth()) })
	return all
})

// fastShapes and slowShapes are those for sessions with fast work in them, and
// for slow work alone, which half a round may warm up for. A second block needs
// whole first ones.
var (
	fastShapes = sync.OnceValue(func() []shape { return shapes(false) })
	slowShapes = sync.OnceValue(func() []shape { return shapes(true) })
)

func shapes(slow bool) []shape {
	return slices.DeleteFunc(slices.Clone(allShapes()), func(sh shape) bool {
		return sh.warmUp == halfWarmUp && !slow || sh.second && (sh.each < 2 || sh.rounds < 3)
	})
}

// shapesOf returns the shapes that a session of these qualities may have.
func shapesOf(train []Quality) []shape {
	if len(train) == 1 && train[0] == Strength {
		return slowShapes()
	}
	return fastShapes()
}

// build returns the session of one shape, every default filled in.
func (a Answers) build(sh shape, train []Quality) *sessions.Session {
	s := &sessions.Session{Version: sessions.Version, For: "Badminton singles, off-season", Level: a.Level, LeadIn: sessions.DefaultLeadIn}
	s.Blocks = append(s.Blocks, a.warmUp(sh.warmUp))
	for _, q := range Qualities() {
		if slices.Contains(train, q) {
			s.Blocks = append(s.Blocks, a.blocks(q, sh)...)
		}
	}
	if sh.trunk > 0 {
		s.Blocks = append(s.Blocks, a.trunk(sh.trunk))
	}
	s.Blocks = append(s.Blocks, a.coolDown(sh.coolDown))
	_, length := sessions.Size(s)
	s.Title = title(train, length)
	if !jumpsIn(s) {
		return s
	}
	s.Note = "Indoor shoes, a dry floor that does not slip, a step of room all round. End a set as soon as a landing gets louder or a jump lower."
	return s
}

// jumpsIn reports whether a session has foot contacts.
func jumpsIn(s *sessions.Session) bool {
	return slices.ContainsFunc(s.Blocks, func(b sessions.Block) bool {
		return slices.ContainsFunc(b.Exercises, func(e sessions.Exercise) bool { return e.Contacts > 0 })
	})
}

// warmUp returns a warm-up of so many exercises.
func (a Answers) warmUp(n int) sessions.Block {
	b := block("Warm up", []string{"mobility"}, 1, a.pick(frame[warmUp])[:min(n, oneWarmUp)])
	b.Part, b.Change, b.RestAfter = sessions.WarmUp, 5*time.Second, 30*time.Second
	if n == twoWarmUps {
		b.Rounds, b.Rest = 2, 15*time.Second
	}
	return b
}

// trunk returns a block for the trunk.
func (a Answers) trunk(rounds int) sessions.Block {
	b := block("Trunk", []string{"trunk"}, rounds, a.pick(frame[trunk])[:2])
	b.Rest, b.RestAfter = 45*time.Second, 30*time.Second
	return b
}

// coolDown returns a cool-down of so many exercises, fewer if the room is small.
func (a Answers) coolDown(n int) sessions.Block {
	picked := a.pick(frame[coolDown])
	b := block("Cool down", []string{"mobility"}, 1, picked[:min(n, len(picked))])
	b.Part, b.Change = sessions.CoolDown, 5*time.Second
	return b
}

// named says how the blocks of a quality are called, and what they train.
var named = map[Quality]struct{ title, trains string }{
	Vertical:   {"Up", "vertical power"},
	Horizontal: {"Forward", "horizontal power"},
	Lateral:    {"Sideways", "lateral power"},
	Strength:   {"Strong", "strength"},
}

// blocks returns the one or two blocks of a quality.
func (a Answers) blocks(q Quality, sh shape) []sessions.Block {
	picked := a.pick(exercises[q])
	var list []sessions.Block
	for i := 0; i < len(picked) && (i == 0 || sh.second && i < 2*sh.each); i += sh.each {
		b := block(named[q].title, []string{named[q].trains}, sh.rounds, picked[i:min(i+sh.each, len(picked))])
		if i > 0 {
			b.Title += " again"
		}
		b.Rest = shortRest
		if sh.long {
			b.Rest = longRest
		}
		b.RestAfter = b.Rest
		if q == Strength {
			b.Rest, b.RestAfter = strengthRest, shortRest
		}
		list = append(list, b)
	}
	return list
}

// block returns a block of the main part.
func block(title string, trains []string, rounds int, es []sessions.Exercise) sessions.Block {
	return sessions.Block{Title: title, Part: sessions.Main, Trains: trains, Rounds: rounds, Change: sessions.DefaultChange, Exercises: es}
}

// title names a session after what it trains, and how long it is.
func title(train []Quality, length time.Duration) string {
	name := words(train)
	if len(train) == len(Qualities()) {
		name = "all-round"
	}
	return fmt.Sprintf("%s%s, %d minutes", strings.ToUpper(name[:1]), name[1:], (length+time.Minute-1)/time.Minute)
}

// words writes qualities in the order in which a session trains them.
func words(list []Quality) string {
	var names []string
	for _, q := range Qualities() {
		if slices.Contains(list, q) {
			names = append(names, string(q))
		}
	}
	return strings.Join(names, ", ")
}
