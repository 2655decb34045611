package review

import (
	"maps"
	"math"
	"slices"

	"coldfloor/internal/journal"
	"coldfloor/internal/runs"
	"coldfloor/internal/season"
	"coldfloor/internal/trainingload"
	"coldfloor/internal/units"
)

// Reviewer adds runs up.
type Reviewer struct {
	opts    Options
	today   day
	from    day // Monday of the first week in view
	squad   Squad
	players map[string]*tally // by the name that they are displayed with
}

// New returns a Reviewer that has seen no run.
func New(o Options) *Reviewer {
	if o.Weeks <= 0 {
		o.Weeks = DefaultWeeks
	}
	if o.Recent <= 0 {
		o.Recent = DefaultRecent
	}
	if o.Tolerance == (Tolerance{}) {
		o.Tolerance = DefaultTolerance
	}
	if o.JumpsEarliest == 0 && o.JumpsFull == 0 {
		o.JumpsEarliest, o.JumpsFull = trainingload.EarliestAfter, trainingload.FullAfter
	}
	r := &Reviewer{opts: o, today: dayOf(o.Now), players: map[string]*tally{},
		squad: Squad{Now: o.Now, Tolerance: o.Tolerance, Planned: o.Plan != nil}}
	r.from = r.today.monday() - day(7*(o.Weeks-1))
	for _, name := range o.Players {
		r.player(runs.Run{Player: name, Name: name}).expected = true
	}
	return r
}

// Of reviews journals: files, and folders of them. The files tell what was
// wrong inside them. The Progress of ro is told how far all of it has come.
func Of(paths []string, o Options, ro runs.Options) (*Squad, []runs.File, error) {
	if tell := ro.Progress; tell != nil { // the reading takes about two thirds of the time
		read := int64(0)
		ro.Progress = func(done, total int64) { read = total; tell(2*done, 3*total) }
		ro.Folding = func(done, total int64) {
			tell(2*read+int64(float64(read)*float64(done)/float64(max(total, 1))), 3*read)
		}
	}
	pile, err := runs.Gather(paths, ro)
	if err != nil {
		return nil, nil, err
	}
	defer pile.Close()
	r := New(o)
	err = pile.Each(func(run runs.Run) error { r.Add(run); return nil })
	return r.Squad(), pile.Files, err
}

// Add adds a run, each run once.
func (r *Reviewer) Add(run runs.Run) {
	r.squad.Differ += run.Differ
	fate := run.Fate()
	switch fate {
	case journal.Deleted:
		r.squad.Withdrawn++
		return
	case journal.Rehearsed:
		r.squad.Rehearsals++
		return
	case journal.Empty:
		r.squad.Empty++
		r.plan(run) // it may have been a day that the player chose to leave out
		return
	}
	r.squad.Missing += run.Missing
	p := r.player(run)
	s := SessionOf(run.Run, run.Player, r.opts.Tolerance)
	p.whole(s)
	p.remember(s, r.opts.Recent)
	r.jumped(p, s)
	r.plan(run)
	r.book(p, s)
}

// book puts a session on its days.
func (r *Reviewer) book(p *tally, s *Session) {
	latest := day(math.MaxInt)
	if s.Start.After(r.opts.Now) {
		p.Ahead++
	} else {
		latest = r.today // it may be tomorrow at the player's place
	}
	in := func(d day) bool { return r.from <= d && d <= r.today }
	if at := min(dayOf(s.Start), latest); in(at) {
		p.begun(s, at)
	}
	for _, d := range s.days(latest) {
		if in(d.day) {
			p.worked(s, d)
		}
	}
	for i := range s.Rests {
		at := dayOf(s.Rests[i].At)
		if s.Rests[i].At.IsZero() {
			at = dayOf(s.Start)
		}
		if at = min(at, latest); in(at) {
			p.rested(r.opts.Tolerance, &s.Rests[i], at)
		}
	}
}

// plan keeps a run for the plan that its player is held against, if it may be
// of a day of it.
func (r *Reviewer) plan(run runs.Run) {
	if r.opts.Plan == nil {
		return
	}
	plan := r.opts.Plan(run.Name)
	if plan == nil {
		return
	}
	named := run.Started != nil && run.Started.Weeks != nil
	if on := units.DateOf(run.Start); named || plan.Starts-season.Reach <= on && on <= plan.End()+season.Reach {
		p := r.player(run)
		p.planned = append(p.planned, run.Run)
	}
}

// player returns the tally of the player whose run it is.
func (r *Reviewer) player(run runs.Run) *tally {
	key := runs.Key(run.Player)
	p := r.players[key]
	if p == nil {
		p = &tally{Player: &Player{Name: run.Player, Now: r.opts.Now, Worthwhile: r.opts.Worthwhile}, called: run.Name,
			weeks: map[day]*Week{}, days: map[day]*Day{}, exercises: map[string]*Exercise{}}
		r.players[key] = p
	}
	return p
}

// jumped keeps the last session that had jumps. One that the journal dates
// after now was done before now all the same: it counts as if it had just ended.
func (r *Reviewer) jumped(p *tally, s *Session) {
	at, jumped := s.Jumped()
	if !jumped {
		return
	}
	if at.After(r.opts.Now) {
		at = r.opts.Now
	}
	if p.Jumps != nil && !at.After(p.Jumps.At) {
		return
	}
	p.Jumps = &Jumps{At: at, Title: s.Title(), Contacts: ContactsOf(s.Run), Ahead: s.Start.After(r.opts.Now),
		Recovery: trainingload.RecoveryFrom(at, r.opts.Now, r.opts.JumpsEarliest, r.opts.JumpsFull)}
}

// Squad returns everybody, those in trouble first. The Reviewer takes no more
// runs then.
func (r *Reviewer) Squad() *Squad {
	s := r.squad
	for _, p := range r.players {
		if r.opts.Plan != nil {
			p.against(r.opts.Plan(p.called), r.today)
		}
		p.layOut(r.today)
		if p.Sessions > 0 || p.expected {
			s.Players = append(s.Players, p.Player)
		}
	}
	s.Namesakes = r.namesakes()
	s.Sort(ByTrouble, false)
	return &s
}

// namesakes returns the names that two players or more have.
func (r *Reviewer) namesakes() []string {
	called := map[string]string{}
	var several []string
	for _, key := range slices.Sorted(maps.Keys(r.players)) {
		name := r.players[key].called
		k := runs.Key(name)
		if first, again := called[k]; again && name != "" && !slices.Contains(several, first) {
			several = append(several, first)
		} else if !again {
			called[k] = name
		}
	}
	return several
}
