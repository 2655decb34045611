package review

import (
	"math"
	"slices"
	"time"
)

// raw is a line of a journal as anybody reads it.
type raw struct {
	Run     string    `json:"run"`
	N       int       `json:"n"`
	At      time.Time `json:"at"`
	Clock   float64   `json:"t_s"`
	Event   string    `json:"event"`
	Started *struct {
		Source string  `json:"source"`
		Speed  float64 `json:"speed"`
		Blocks []struct {
			Rounds, Sets int
			Contacts     *int
		}
	}
	Set *struct {
		Block, Round int
		Outcome      string
		TakenS       float64 `json:"taken_s"`
		Reps         int
		Planned      int `json:"planned_reps"`
		Contacts     *int
	}
	Rest *struct {
		PrescribedS float64 `json:"prescribed_s"`
		TakenS      float64 `json:"taken_s"`
	}
	Finish *struct {
		Outcome  string
		ElapsedS float64 `json:"elapsed_s"`
	}
	Rating *struct {
		Rounds []int
		RPE    *float64
		Pain   *bool
		NoPain bool `json:"no_pain"`
		Note   *string
	}
	Correct *struct {
		At      *time.Time
		LengthS *float64 `json:"length_s"`
	}
}

// sums are the figures that the oracle works out.
type sums struct {
	sessions, complete, rated, painful int
	rounds, sets, reps                 Share
	unknown, contacts, uncounted       int
	kept, early, overrun               int
	elapsed                            float64
	load                               map[int]float64 // by day
	lacks                              map[int]bool
}

func newSums() *sums { return &sums{load: map[int]float64{}, lacks: map[int]bool{}} }

// oracle is a second reading of the package's words, of the same lines.
type oracle struct {
	now    time.Time
	today  int
	all    *sums
	weeks  map[int]*sums // by Monday
	begun  map[int]int
	worked map[int]bool
	cut14  Share
	jumps  time.Time
	pains  int
	latest int // day: today, or for a run that began after now no bound
}

func number(t time.Time) int {
	y, m, d := t.Date()
	return int(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / 86400)
}

func (o *oracle) week(day int) *sums {
	if day > o.today {
		return newSums() // what lies ahead is in no week
	}
	monday := day - (day+3)%7
	if o.weeks[monday] == nil {
		o.weeks[monday] = newSums()
	}
	return o.weeks[monday]
}

// both calls f with the sums of all and those of the week of a day.
func (o *oracle) both(day int, f func(*sums)) { f(o.all); f(o.week(day)) }

// told is what the lines of one run say together.
type told struct {
	lines, sets        []raw
	start              time.Time
	shift              time.Duration // of a corrected start
	elapsed            float64
	complete, finished bool
	withdrawn, length  bool // length: it was corrected
	said               bool
	rpe                *float64
	pain               *bool
	rounds             []int
	statements         int
}

// moment is when a line was written, as the start is corrected.
func (r *told) moment(l raw) time.Time { return l.At.Add(r.shift).In(r.start.Location()) }

func (r *told) paper() bool { return r.lines[0].Started.Source == "paper" }

// tell takes the lines of one run, each once and in order.
func tell(lines []raw) *told {
	r := &told{lines: lines, start: lines[0].At}
	begun, last, leg := lines[0].At, lines[0].At, 0.0
	for _, l := range lines {
		switch {
		case l.Event == "resume":
			leg += last.Sub(begun).Seconds()
			begun, last = l.At, l.At
		case l.Set != nil:
			r.sets = append(r.sets, l)
			last = l.At
		case l.Rest != nil:
			last = l.At
		case l.Finish != nil:
			r.finished, r.complete, r.elapsed = true, l.Finish.Outcome == "complete", l.Finish.ElapsedS
		case l.Event == "withdraw", l.Event == "restore":
			r.withdrawn = l.Event == "withdraw"
		case l.Rating != nil:
			r.rate(l)
		}
	}
	if !r.finished {
		r.elapsed = leg + last.Sub(begun).Seconds()
	}
	for _, l := range lines {
		if l.Correct != nil && l.Correct.At != nil {
			r.start, r.shift = *l.Correct.At, l.Correct.At.Sub(lines[0].At)
		}
		if l.Correct != nil && l.Correct.LengthS != nil {
			r.elapsed, r.length = *l.Correct.LengthS, true
		}
	}
	return r
}

// rate takes a rating: the last word on rounds and effort, every word of pain.
func (r *told) rate(l raw) {
	if l.Rating.RPE != nil {
		r.rpe = l.Rating.RPE
	}
	if l.Rating.Rounds != nil {
		r.rounds = l.Rating.Rounds
	}
	no := false
	switch {
	case l.Rating.NoPain:
		r.pain, r.statements, r.said = &no, 0, true
	case l.Rating.Pain != nil && *l.Rating.Pain:
		r.pain, r.said = l.Rating.Pain, true
		r.statements++
	case l.Rating.Pain != nil:
		r.said = true
		if r.pain == nil {
			r.pain = &no
		}
	}
	r.said = r.said || l.Rating.Note != nil
}

// counts reports whether the run is a session that was done.
func (r *told) counts() bool {
	something := slices.ContainsFunc(r.sets, func(l raw) bool { return l.Set.Outcome != "skipped" })
	return !r.withdrawn && r.lines[0].Started.Speed == 0 &&
		(r.paper() || r.complete && len(r.sets) == 0 || r.rpe != nil || r.said || something)
}

// read takes one run.
func (o *oracle) read(lines []raw) {
	r := tell(lines)
	if !r.counts() {
		return
	}
	o.pains += r.statements
	o.latest = o.today
	if r.start.After(o.now) {
		o.latest = math.MaxInt
	}
	day := min(number(r.start), o.latest)
	o.session(r, day)
	o.daily(r, day)
	o.rests(r)
	jumped, any := r.jumps()
	if any && jumped.After(o.now) {
		jumped = o.now
	}
	if any && jumped.After(o.jumps) {
		o.jumps = jumped
	}
}

// jumps returns when the run had its last jumps, and whether it had any.
func (r *told) jumps() (at time.Time, any bool) {
	for _, l := range r.sets {
		if (l.Set.Outcome != "skipped" || l.Set.TakenS > 0) && (l.Set.Contacts == nil || *l.Set.Contacts > 0) {
			any = true
			if m := r.moment(l); m.After(at) {
				at = m
			}
		}
	}
	if r.paper() {
		n, known := r.paperContacts()
		any = n > 0 || !known && r.prescribed()
	}
	if r.paper() || r.length {
		at = r.start.Add(time.Duration(r.elapsed * float64(time.Second)))
	}
	return at, any
}

// prescribed reports whether the session has jumps in it.
func (r *told) prescribed() bool {
	for _, b := range r.lines[0].Started.Blocks {
		if b.Contacts == nil || *b.Contacts > 0 {
			return true
		}
	}
	return false
}

// paperContacts returns the contacts of the rounds said to be done.
func (r *told) paperContacts() (n int, known bool) {
	if r.rounds == nil {
		return 0, false
	}
	known = true
	for i, b := range r.lines[0].Started.Blocks {
		switch {
		case r.rounds[i] == 0:
		case b.Contacts == nil:
			known = false
		default:
			n += *b.Contacts * r.rounds[i] / b.Rounds
		}
	}
	return n, known
}
