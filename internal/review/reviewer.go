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
	folded  map[string]string // names of exercises, as they are compared

	last      *tally // whom a run was of last
	lastShown string // as which
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
	r := &Reviewer{opts: o, today: dayOf(o.Now), players: map[string]*tally{}, folded: map[string]string{},
		squad: Squad{Now: o.Now, Tolerance: o.Tolerance, Planned: o.Plan != nil}}
	r.from = r.today.monday() - day(7*(o.Weeks-1))
	for _, name := range o.Players {
		r.player(name, name).expected = true
	}
	return r
}

// Of reviews journals: files, and folders of them. The files tell what was wrong
// inside them. What was made of each journal is kept beside it, as runs.Survey
// says.
func Of(paths []string, o Options, ro runs.Options) (*Squad, []runs.File, error) {
	r := New(o)
	t := r.opts.Tolerance
	survey, err := runs.Make(paths, ro, runs.Kind[gist]{Name: nameOf(t), Whole: r.opts.Recent,
		Of:    func(run *journal.Run) gist { return *gistOf(run, t) },
		Coder: func() runs.Coder[gist] { return &gistCoder{} }})
	if err != nil {
		return nil, nil, err
	}
	defer survey.Close()
	err = survey.Each(func(n *runs.Note[gist]) error {
		if r.take(n.Of, n.Player, n.Name, n.Place) {
			n.Keep()
		}
		return nil
	})
	if err == nil {
		err = r.fill(survey.Full)
	}
	if err != nil {
		return nil, nil, err
	}
	return r.Squad(), survey.Files, nil
}

// fill puts whole runs in the place of the lean ones that are shown whole.
func (r *Reviewer) fill(full func([]runs.Place) ([]*journal.Run, error)) error {
	var all []*recent
	var places []runs.Place
	for _, p := range r.players {
		for i := range p.recent {
			all, places = append(all, &p.recent[i]), append(places, p.recent[i].at)
		}
	}
	whole, err := full(places)
	if err != nil {
		return err
	}
	for i, run := range whole {
		all[i].whole = gistOf(run, r.opts.Tolerance)
	}
	return nil
}

// Add adds a whole run that no journal has to be read for, each run once.
func (r *Reviewer) Add(run runs.Run) {
	r.take(gistOf(run.Run, r.opts.Tolerance), run.Player, run.Name, runs.Place{})
}

// take adds a run of a player, who is displayed so and called so, and reports
// whether it holds on to it.
func (r *Reviewer) take(s *gist, player, name string, at runs.Place) bool {
	r.squad.Differ += s.Differ
	switch s.Fate() {
	case journal.Deleted:
		r.squad.Withdrawn++
		return false
	case journal.Rehearsed:
		r.squad.Rehearsals++
		return false
	case journal.Empty:
		r.squad.Empty++
		return r.plan(s, player, name) // it may have been a day that the player chose to leave out
	}
	r.squad.Missing += s.Missing
	p := r.player(player, name)
	p.whole(s)
	p.remember(s, player, at, r.opts.Recent)
	p.exercise(s, r.folded)
	r.jumped(p, s)
	r.book(p, s)
	return r.plan(s, player, name)
}

// book puts a session on its days.
func (r *Reviewer) book(p *tally, s *gist) {
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
	for i := range s.rests {
		if at := min(s.rests[i].at, latest); in(at) {
			p.rested(&s.rests[i], at)
		}
	}
}

// plan keeps a run for the plan that its player is held against, if it may be
// of a day of it, and reports whether it does.
func (r *Reviewer) plan(s *gist, player, name string) bool {
	if r.opts.Plan == nil {
		return false
	}
	plan := r.opts.Plan(name)
	if plan == nil {
		return false
	}
	named := s.Started != nil && s.Started.Weeks != nil
	if on := units.DateOf(s.Start); !named && (on < plan.Starts-season.Reach || on > plan.End()+season.Reach) {
		return false
	}
	p := r.player(player, name)
	if p.Player.planned == nil {
		p.Player.planned = map[*journal.Run]*gist{}
	}
	p.planned, p.Player.planned[s.Run] = append(p.planned, s.Run), s
	return true
}

// player returns the tally of a player who is displayed so and called so.
func (r *Reviewer) player(shown, called string) *tally {
	if r.last != nil && r.lastShown == shown {
		return r.last
	}
	key := runs.Key(shown)
	p := r.players[key]
	if p == nil {
		p = &tally{Player: &Player{Name: shown, Now: r.opts.Now, Worthwhile: r.opts.Worthwhile}, called: called,
			weeks: map[day]*Week{}, days: map[day]*Day{}, exercises: map[string]*Exercise{}}
		r.players[key] = p
	}
	r.last, r.lastShown = p, shown
	return p
}

// jumped keeps the last session that had jumps. One that the journal dates
// after now was done before now all the same: it counts as if it had just ended.
func (r *Reviewer) jumped(p *tally, s *gist) {
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
	if p.Jumps == nil {
		p.Jumps = &Jumps{}
	}
	*p.Jumps = Jumps{At: at, Title: s.Title(), Contacts: ContactsOf(s.Run), Ahead: s.Start.After(r.opts.Now),
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
