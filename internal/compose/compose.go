// Package compose writes a sound first session from a few answers, to be edited
// by whoever asked for it. Its table of movements is for badminton's singles
// players in the off-season.
package compose

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// Answers is what a draft goes by.
type Answers struct {
	Level  sessions.Level
	Length time.Duration // the session is as long as fits, and never longer
	Room   settings.Room // its ceiling may be 0: none to mind
	Train  []Quality     // one or more; nil trains them all
	Height units.Length  // of the player; 0: not known, and taken for tall
}

// Bounds of the answers.
const (
	MinLength = 10 * time.Minute
	MaxLength = 60 * time.Minute
	MinSide   = 1 * units.Metre // of the floor
	tall      = 2 * units.Metre // a player whose height is not known, for the ceiling
)

// check returns what is wrong with the answers; the error says what to do.
func (a Answers) check() error {
	short, long := min(a.Room.Along, a.Room.Across), max(a.Room.Along, a.Room.Across)
	switch {
	case a.Length < MinLength || a.Length > MaxLength:
		return fmt.Errorf("a session is drafted for %s to %s", units.FormatDuration(MinLength), units.FormatDuration(MaxLength))
	case short < MinSide || long < MinSide:
		return fmt.Errorf("a room of %v is too small, it takes %v x %v of floor", a.Room, MinSide, MinSide)
	case a.Room.Ceiling > 0 && a.Room.Ceiling < a.height():
		return fmt.Errorf("under a ceiling of %v nobody of %v stands upright", a.Room.Ceiling, a.height())
	}
	for _, q := range a.Train {
		if !slices.Contains(Qualities(), q) {
			return fmt.Errorf("%q is nothing that a draft trains", q)
		}
	}
	return nil
}

func (a Answers) height() units.Length {
	if a.Height > 0 {
		return a.Height
	}
	return tall
}

// Compose returns the text of a session file that answers a. It is valid,
// passes check without a warning, and is no longer than a.Length.
func Compose(a Answers) ([]byte, error) {
	if err := a.check(); err != nil {
		return nil, err
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
	s := a.session()
	if s == nil {
		return nil, errors.New("nothing fits")
	}
	return render(s, a), nil
}

// session returns the richest session that is no longer than the answer.
func (a Answers) session() *sessions.Session {
	for _, shape := range shapes() {
		if s := a.build(shape); plan.Of(s).Total <= a.Length {
			return s
		}
	}
	return nil
}

// shape is how much of what a session has.
type shape struct {
	warmUps  int // rounds of the warm-up
	asked    int // how many of the qualities asked for, the first ones
	rounds   int // of each of them
	trunk    int // rounds; 0: none
	coolDown bool
}

// shapes returns the shapes from the richest to the poorest: what nobody asked
// for is given up first, then rounds, then the warm-up's second round, and
// what was asked for last.
func shapes() []shape {
	var all []shape
	for asked := len(Qualities()); asked > 0; asked-- {
		for warmUps := 2; warmUps > 0; warmUps-- {
			for rounds := 4; rounds > 0; rounds-- {
				for _, rest := range []shape{{trunk: 2, coolDown: true}, {coolDown: true}, {}} {
					all = append(all, shape{warmUps, asked, rounds, rest.trunk, rest.coolDown})
				}
			}
		}
	}
	return all
}

// build returns the session of one shape, every default filled in.
func (a Answers) build(sh shape) *sessions.Session {
	s := &sessions.Session{Version: sessions.Version, Title: a.title(), For: "Badminton singles, off-season", Level: a.Level, LeadIn: sessions.DefaultLeadIn}
	s.Blocks = append(s.Blocks, a.warmUp(sh.warmUps))
	asked := 0
	for _, q := range Qualities() {
		if slices.Contains(a.Train, q) && asked < sh.asked {
			asked++
			s.Blocks = append(s.Blocks, a.pair(q, sh.rounds))
		}
	}
	if sh.trunk > 0 {
		b := a.pair(trunk, sh.trunk)
		b.Rest, b.RestAfter = 45*time.Second, 30*time.Second
		s.Blocks = append(s.Blocks, b)
	}
	if sh.coolDown {
		s.Blocks = append(s.Blocks, sessions.Block{Title: "Wind down", Part: sessions.CoolDown, Trains: []string{"mobility"},
			Rounds: 1, Change: 5 * time.Second, Exercises: a.pick(coolDown, 2)})
	}
	return s
}

// warmUp returns the warm-up: five minutes a round.
func (a Answers) warmUp(rounds int) sessions.Block {
	const length, change, rest = 48 * time.Second, 5 * time.Second, 15 * time.Second
	b := sessions.Block{Title: "Warm up", Part: sessions.WarmUp, Trains: []string{"mobility"}, Rounds: rounds,
		RestAfter: time.Minute, Change: change, Exercises: a.pick(warmUp, len(movements[warmUp]))}
	if rounds > 1 {
		b.Rest = rest
	}
	for i := range b.Exercises {
		b.Exercises[i].Time = length
	}
	return b
}

// pairs names the blocks of two exercises, and what they train.
var pairs = map[Quality]struct {
	title  string
	trains []string
}{
	Vertical:   {"Up", []string{"vertical power"}},
	Horizontal: {"Forward", []string{"horizontal power"}},
	Lateral:    {"Sideways", []string{"lateral power"}},
	Strength:   {"Strong", []string{"strength"}},
	trunk:      {"Hold", []string{"trunk"}},
}

// pair returns a block of the two best movements of a quality, 90 s between
// its rounds. Power has two rounds at least, for one round of it has no rest.
func (a Answers) pair(q Quality, rounds int) sessions.Block {
	if q != Strength {
		rounds = max(rounds, 2)
	}
	return sessions.Block{Title: pairs[q].title, Part: sessions.Main, Trains: pairs[q].trains, Rounds: rounds,
		Rest: 90 * time.Second, RestAfter: 90 * time.Second, Change: sessions.DefaultChange, Exercises: a.pick(q, 2)}
}

// pick returns the n best movements of a quality that fit level and room.
func (a Answers) pick(q Quality, n int) []sessions.Exercise {
	var picked []sessions.Exercise
	for _, m := range movements[q] {
		if len(picked) < n && a.fits(m) {
			picked = append(picked, m.at(a.Level))
		}
	}
	return picked
}

// fits reports whether a movement is for the level and fits the room.
func (a Answers) fits(m movement) bool {
	const spare = 10 * units.Centimetre // below the ceiling
	e := &m.exercise
	if rank(m.from) > rank(a.Level) || e.Floor.Along > a.Room.Along || e.Floor.Across > a.Room.Across {
		return false
	}
	return a.Room.Ceiling == 0 || e.Overhead.Kind != sessions.OverheadAbove || a.height()+e.Overhead.Above+spare <= a.Room.Ceiling
}

// title names the session after what was asked.
func (a Answers) title() string {
	var names []string
	for _, q := range Qualities() {
		if slices.Contains(a.Train, q) {
			names = append(names, string(q))
		}
	}
	name := strings.Join(names, ", ")
	if len(names) == len(Qualities()) {
		name = "all-round"
	}
	return fmt.Sprintf("%s%s, %d minutes", strings.ToUpper(name[:1]), name[1:], a.Length/time.Minute)
}
