// Package next proposes how a player's plan of weeks goes on: as planned, with
// nothing added, with less, or after a question. It is given what is known of
// the week and answers with every reason and figure beside it; it predicts no
// injury, decides nothing, and changes nothing by itself.
package next

import (
	"slices"
	"time"

	"coldfloor/internal/settings"
	"coldfloor/sessions/weeks"
)

// Kind is what is proposed for the next week.
type Kind string

// The kinds, from the one that weighs most. A proposal is the first that any
// reason speaks for.
const (
	Less      Kind = "less"       // a lighter week
	Hold      Kind = "hold"       // a week that adds nothing and takes nothing away
	Ask       Kind = "ask"        // too little is known: talk to the player first
	AsPlanned Kind = "as planned" // no reason against the plan
)

// kinds is every kind, the one that weighs most first.
var kinds = []Kind{Less, Hold, Ask, AsPlanned}

// Reason is one thing that was seen and what it speaks for.
type Reason struct {
	Rule   string `json:"rule"`
	For    Kind   `json:"for"`
	Text   string `json:"text"`   // what was seen, with its figures and the limit it is held against
	Source string `json:"source"` // who says so, or "common practice, no source"
}

// Proposal is what is proposed for one player.
type Proposal struct {
	Player  string   `json:"player"`
	Week    int      `json:"week"` // the week proposed for, counted from 1
	Kind    Kind     `json:"kind"`
	Keep    []int    `json:"keep,omitempty"` // with Less: percent kept of the coming weeks, Week's first
	Stop    bool     `json:"stop,omitempty"` // pain that wants a licensed practitioner before the next session
	Reasons []Reason `json:"reasons"`        // all of them, those for Kind first
	Days    *Days    `json:"days,omitempty"` // when to train; nil if no day has jumps

	plan *weeks.Plan // the player's own
}

// Facts is what is known of a player at the end of a week.
type Facts struct {
	Player string
	Now    time.Time
	Next   int // the week proposed for

	Planned, Done, Missed int // sessions of the week judged: planned up to now, of those done, of those missed

	RoundsDone, RoundsPrescribed int // of the sessions whose rounds are known; both 0: not known
	Rests, RestsCut              int // rests of the week that some work followed, and those cut short
	Efforts                      []Effort
	Pain                         []Pain // of the week and of the last 7 days, the latest first; slips are left out
	PainAsked                    bool   // a session of the week says whether there was pain

	Last      time.Time // start of the last session; zero: none is logged
	BackSince time.Time // first session after the latest break that counts; zero: no such break
	BackAfter int       // days of that break
}

// Effort is how hard one session of the week felt.
type Effort struct {
	Session string
	RPE     float64 // session-RPE, 0 to 10
	Usual   float64 // median of the player's earlier ratings of that session
	Of      int     // how many those were
}

// Pain is one statement of pain.
type Pain struct {
	At     time.Time
	Where  string
	Level  *int // 0 to 10; nil: no number given
	New    bool // nothing was said of that place in the eight weeks before
	Before *int // the number given for that place the time before; nil: none
}

// Limits is what the facts are held against. Shares are from 0 to 1.
type Limits struct {
	Rounds     float64 // hold below this share of the prescribed rounds
	RestsCut   float64 // hold above this share of rests cut short
	RestsKnown int     // the fewest rests that say anything
	Effort     float64 // hold from this many points above the usual effort
	Ratings    int     // the fewest earlier ratings that make a usual effort
	Missed     float64 // hold from this share of the week's sessions missed
	StopPain   int     // pain of this number or more wants a practitioner
	PainKeep   int     // percent kept after pain
	Break      int     // days without training that count as a break
	JumpDays   int     // days with jumps in any seven, the most; 0: any number
	Return     []int   // percent kept in the weeks after a break
}

// percent of a whole, for limits that the settings give so.
const hundred = 100

// LimitsOf returns the limits that the settings give.
func LimitsOf(s settings.Limits) Limits {
	whole := func(key string) int { return int(s[key].Low) }
	l := Limits{
		Rounds: s["next_rounds"].Low / hundred, RestsCut: s["next_rests_cut"].Low / hundred,
		RestsKnown: DefaultLimits.RestsKnown, Effort: s["next_effort"].Low, Ratings: whole("next_ratings"),
		Missed: s["next_missed"].Low / hundred, StopPain: whole("next_stop_pain"), PainKeep: whole("next_pain_keep"),
		Break: whole("next_break"), JumpDays: int(s["jump_days"].High),
	}
	for _, key := range []string{"next_return_1", "next_return_2", "next_return_3", "next_return_4"} {
		l.Return = append(l.Return, whole(key))
	}
	return l
}

// DefaultLimits is published if a Reason's source says so, and customary
// elsewhere.
var DefaultLimits = Limits{
	Rounds: .90, RestsCut: .20, RestsKnown: 5, Effort: 2, Ratings: 3, Missed: .5,
	StopPain: 6, PainKeep: 50, Break: 14, JumpDays: 3, Return: []int{50, 70, 80, 90},
}

// Propose weighs the facts. The days are the caller's to add.
func Propose(f Facts, l Limits) Proposal {
	p := Proposal{Player: f.Player, Week: f.Next, Kind: AsPlanned}
	for _, r := range rules {
		p.Reasons = append(p.Reasons, r(f, l)...)
	}
	for _, r := range p.Reasons {
		if slices.Index(kinds, r.For) < slices.Index(kinds, p.Kind) {
			p.Kind = r.For
		}
	}
	if len(p.Reasons) == 0 {
		p.Reasons = []Reason{asPlanned(f)}
	}
	slices.SortStableFunc(p.Reasons, func(a, b Reason) int {
		return slices.Index(kinds, a.For) - slices.Index(kinds, b.For)
	})
	if p.Kind == Less {
		p.Keep = keep(f, l)
	}
	p.Stop = slices.ContainsFunc(f.Pain, func(x Pain) bool { return wantsPractitioner(x, l) })
	return p
}
