package review

import (
	"slices"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/trainingload"
	"coldfloor/internal/units"
)

// Fortnight is how many days a Standing looks back, today among them.
const Fortnight = 14

// Standing is how a player stands today: what a coach looks for in a squad.
type Standing struct {
	Known bool // a session is logged; without one only Planned and Missed say anything
	Since int  // calendar days since something was done last; below 0: it is dated ahead

	Sessions              int  // begun in the Fortnight
	NotRated              int  // of Sessions, those without an effort
	Held                  bool // against a plan, which the next three need
	Planned, Kept, Missed int  // sessions of the plan in the Fortnight: all, done, missed

	Cut, CutBefore Share // rests that ended early of those judged, in the Fortnight and before it

	Contacts      journal.Count // of this week, from Monday
	ContactsUsual Usual         // in a week, of the four before it
	Load          Usual         // of the last seven days, as one of one
	LoadUsual     Usual         // in seven days, of the four times seven before them

	Running int // days running that were trained on, up to today or yesterday

	Trouble Trouble
}

// Usual is a mean of some weeks.
type Usual struct {
	Mean    float64
	AtLeast bool // a part of it is not known
	Weeks   int  // that the mean is of; 0: there is none
}

// Weeks that a Usual is of, at most.
const usualWeeks = 4

// Trouble is the gravest thing to be said of a player.
type Trouble int

// The troubles, the gravest last.
const (
	NoTrouble  Trouble = iota
	CutsRests          // more than CutLimit of the rests of the Fortnight
	Away               // two sessions of the plan missed in it, or nothing done for its length
	Hurts              // pain was said in it
	HurtsBadly         // pain of SeverePain or more, or new, was said in it
)

// What makes a trouble. SeverePain is above what is accepted in a known tendon
// trouble (5 of 10: Silbernagel et al., Am J Sports Med 2007;35:897–906,
// second-hand); new joint pain is a reason to stop on hospitals' pages on
// exercise safety; nothing for two weeks is a break that is come back from in
// steps (Caterisano et al., Strength Cond J 2019;41(3):1–23, second-hand). The
// others are our own choice.
const (
	SeverePain = 6
	CutLimit   = .20
	CutKnown   = 5 // the fewest rests that say anything
	MissedMany = 2
	SinceMany  = 7 // days; told, not a trouble
	RunningMax = 6 // days; told, not a trouble
)

// CutsMany reports whether more rests were cut short in the Fortnight than
// CutLimit.
func (s *Standing) CutsMany() bool {
	part, ok := s.Cut.Part()
	return ok && s.Cut.Prescribed >= CutKnown && part > CutLimit
}

// GravestPain returns the statement of pain to be shown first, and whether it is
// of the Fortnight: the gravest of that, the latest of equal ones; or else the
// latest; nil if there is none.
func (p *Player) GravestPain() (pain *Pain, recent bool) {
	for i := range p.Pain {
		if x := &p.Pain[i]; p.isRecent(x) && (pain == nil || slices.Compare(x.grave(), pain.grave()) > 0) {
			pain = x
		}
	}
	if pain == nil && len(p.Pain) > 0 {
		return &p.Pain[0], false
	}
	return pain, pain != nil
}

// grave returns how grave pain is: whether it is severe, and its number.
func (p *Pain) grave() []int {
	g := []int{0, 0}
	if p.Severe() {
		g[0] = 1
	}
	if p.Level != nil {
		g[1] = *p.Level
	}
	return g
}

// isRecent reports whether pain was said in the Fortnight.
func (p *Player) isRecent(pain *Pain) bool {
	return int(dayOf(p.Now)-dayOf(pain.At)) < Fortnight
}

// Severe reports whether pain is such that a practitioner is to be seen.
func (p *Pain) Severe() bool {
	return p.New && (p.Level == nil || *p.Level > 0) || p.Level != nil && *p.Level >= SeverePain
}

// markNew finds the pain that is new in its place.
func (p *tally) markNew() {
	for i := range p.Pain {
		pain := &p.Pain[i]
		pain.New = journal.NewPain(pain.Where, pain.At, func(yield func(string, time.Time) bool) {
			for _, earlier := range p.Pain[i+1:] {
				if !yield(earlier.Where, earlier.At) {
					return
				}
			}
		})
	}
}

// stand works out how the player stands.
func (p *tally) stand(today day) {
	s := &p.Standing
	s.Known = p.Sessions > 0
	s.Since = int(today - p.lastWorked())
	from := today - Fortnight + 1
	for at, d := range p.days {
		if at >= from {
			s.Cut.Done += d.restCut
			s.Cut.Prescribed += d.rests
		}
	}
	s.CutBefore = Share{p.Rest.Early - s.Cut.Done, p.Rest.Count - s.Cut.Prescribed}
	for at, n := range p.began {
		if at >= from {
			s.Sessions += n
			s.NotRated += p.notRated[at]
		}
	}
	if p.Season != nil {
		n := p.Season.Between(units.Date(from), units.Date(today))
		s.Held, s.Planned, s.Kept, s.Missed = n.Planned > 0, n.Planned, n.Done, n.Missed // before the plan begins nothing is asked
	}
	p.standWeeks(today)
	s.Running = p.running(today)
	s.Trouble = p.trouble()
}

// lastWorked returns the last day on which anything was done.
func (p *tally) lastWorked() day {
	last := dayOf(p.Last)
	for at, d := range p.days {
		if d.Worked {
			last = max(last, at)
		}
	}
	return last
}

// standWeeks compares this week and the last seven days with those before.
func (p *tally) standWeeks(today day) {
	s := &p.Standing
	s.Contacts = journal.CountOf(0)
	n := len(p.Weeks)
	if n == 0 {
		return
	}
	s.Contacts = p.Weeks[n-1].ContactCount()
	u := &s.ContactsUsual
	for _, w := range p.Weeks[max(0, n-1-usualWeeks) : n-1] {
		u.Weeks++
		u.Mean += float64(w.Contacts)
		u.AtLeast = u.AtLeast || w.Uncounted > 0
	}
	s.Load = Usual{Mean: p.Seven.Total, AtLeast: p.Seven.Unrated > 0, Weeks: 1}
	v := &s.LoadUsual
	for v.Weeks < usualWeeks {
		end := len(p.Days) - trainingload.Days*(v.Weeks+1)
		if end <= 0 {
			break
		}
		for _, d := range p.Days[max(0, end-trainingload.Days):end] {
			v.Mean += d.Load
			v.AtLeast = v.AtLeast || d.Unrated > 0
		}
		v.Weeks++
	}
	u.Mean /= float64(max(1, u.Weeks))
	v.Mean /= float64(max(1, v.Weeks))
}

// running counts the days running that were trained on, up to today, or to
// yesterday if nothing was done today yet.
func (p *tally) running(today day) int {
	worked := func(at day) bool { d := p.days[at]; return d != nil && d.Worked }
	at := today
	if !worked(at) {
		at--
	}
	n := 0
	for ; worked(at); at-- {
		n++
	}
	return n
}

// trouble returns the gravest thing to be said of the player.
func (p *tally) trouble() Trouble {
	s, worst := &p.Standing, NoTrouble
	for i := range p.Pain {
		if p.isRecent(&p.Pain[i]) {
			worst = max(worst, Hurts)
			if p.Pain[i].Severe() {
				worst = HurtsBadly
			}
		}
	}
	switch {
	case s.Missed >= MissedMany, s.Known && s.Since >= Fortnight, !s.Known && s.Held && s.Missed > 0:
		return max(worst, Away)
	case s.CutsMany():
		return max(worst, CutsRests)
	}
	return worst
}
