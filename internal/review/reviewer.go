package review

import (
	"slices"

	"coldfloor/internal/journal"
	"coldfloor/internal/runs"
	"coldfloor/internal/trainingload"
	"maps"
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
	r := &Reviewer{opts: o, today: dayOf(o.Now), players: map[string]*tally{}, squad: Squad{Now: o.Now, Tolerance: o.Tolerance}}
	r.from = r.today.monday() - day(7*(o.Weeks-1))
	return r
}

// Of reviews journals: files, and folders of them. The files tell what was
// wrong inside them.
func Of(paths []string, o Options, ro runs.Options) (*Squad, []runs.File, error) {
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
	switch run.Fate() {
	case journal.Deleted:
		r.squad.Withdrawn++
		return
	case journal.Rehearsed:
		r.squad.Rehearsals++
		return
	case journal.Empty:
		r.squad.Empty++
		return
	}
	p := r.player(run)
	s := r.session(run)
	p.add(s)
	p.remember(s, r.opts.Recent)
	r.jumped(p, s)
	at := dayOf(s.Start)
	if !s.Start.After(r.opts.Now) {
		at = min(at, r.today) // it may be tomorrow where the player is
	}
	switch {
	case at > r.today:
		p.Ahead++
	case at >= r.from:
		p.book(s, at)
	}
}

// player returns the tally of the player whose run it is.
func (r *Reviewer) player(run runs.Run) *tally {
	key := runs.Key(run.Player)
	p := r.players[key]
	if p == nil {
		p = &tally{Player: &Player{Name: run.Player, Now: r.opts.Now}, called: run.Name, weeks: map[day]*Week{}, sessions: map[day]int{}, unrated: map[day]int{}}
		r.players[key] = p
	}
	return p
}

// session returns a run's figures.
func (r *Reviewer) session(run runs.Run) *Session {
	s := &Session{Run: run.Run, Player: run.Player}
	done := run.RoundsDone()
	for i, b := range run.Blocks() {
		blk := Block{Title: b.Title, Share: Share{Prescribed: b.Rounds}}
		if i < len(done) {
			blk.Done = done[i]
		}
		s.Rounds = append(s.Rounds, blk)
		if !run.OnPaper() {
			s.Sets.Prescribed += b.Sets
		}
	}
	for i := range run.Sets {
		set := &run.Sets[i]
		s.Reps.Done += set.Reps
		s.Reps.Prescribed += set.Planned
	}
	if done := run.SetsDone(); run.Started != nil {
		s.Sets.Done = done.N
	}
	for i := range run.Rests {
		s.Rest.add(r.opts.Tolerance, &run.Rests[i])
	}
	s.Load, s.Rated = run.Load()
	return s
}

// add counts a session.
func (t *Total) add(s *Session) {
	t.Sessions++
	if s.State == journal.Complete {
		t.Complete++
	}
	t.Elapsed += s.Elapsed
	for _, b := range s.Rounds {
		t.Rounds.Done += b.Done
		t.Rounds.Prescribed += b.Prescribed
	}
	t.Sets.Done += s.Sets.Done
	t.Sets.Prescribed += s.Sets.Prescribed
	t.Reps.Done += s.Reps.Done
	t.Reps.Prescribed += s.Reps.Prescribed
	t.Contacts += s.Contacts().N
	t.Rest.merge(&s.Rest)
	if s.Rated {
		t.Rated++
	}
	if s.Painful() {
		t.Painful++
	}
}

// jumped keeps the last session that had foot contacts. One that is dated
// after now tells nothing.
func (r *Reviewer) jumped(p *tally, s *Session) {
	end, jumped := s.Jumped()
	if !jumped || end.After(r.opts.Now) || p.Jumps != nil && !end.After(p.Jumps.At) {
		return
	}
	p.Jumps = &Jumps{At: end, Title: s.Title(), Contacts: s.Contacts().N,
		Recovery: trainingload.RecoveryFrom(end, r.opts.Now, r.opts.JumpsEarliest, r.opts.JumpsFull)}
}

// Squad returns everybody, by name. The Reviewer takes no more runs then.
func (r *Reviewer) Squad() *Squad {
	s := r.squad
	for _, p := range r.players {
		p.layOut(r.today)
		s.Players = append(s.Players, p.Player)
	}
	s.Namesakes = r.namesakes()
	s.Sort(ByName, false)
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
