package review

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/load"
	"coldfloor/internal/runs"
)

// Reviewer adds runs up.
type Reviewer struct {
	opts    Options
	today   day
	from    day // Monday of the first week in view
	squad   Squad
	players map[string]*tally // by runs.Key of their name
}

// tally is a player in the making.
type tally struct {
	*Player
	weeks map[day]*Week // by Monday
	// of each day in view: sessions, and those not rated
	sessions, unrated map[day]int
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
		o.JumpsEarliest, o.JumpsFull = load.EarliestAfter, load.FullAfter
	}
	r := &Reviewer{opts: o, today: dayOf(o.Now), players: map[string]*tally{}, squad: Squad{Now: o.Now}}
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
	switch {
	case run.Withdrawn:
		r.squad.Withdrawn++
		return
	case run.Rehearsal():
		r.squad.Rehearsals++
		return
	case empty(run.Run):
		r.squad.Empty++
		return
	}
	p := r.player(run.Player)
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

// empty reports whether a run was begun and nothing was done or said in it.
func empty(r *journal.Run) bool {
	if r.State == journal.Complete || r.OnPaper() || r.Rating.RPE != nil || r.Rating.Pain != nil {
		return false
	}
	return !slices.ContainsFunc(r.Sets, func(s journal.Set) bool { return engine.Outcome(s.Outcome) != engine.Skipped })
}

// player returns the tally of the player of that name.
func (r *Reviewer) player(name string) *tally {
	key := runs.Key(name)
	p := r.players[key]
	if p == nil {
		p = &tally{Player: &Player{Name: name, Now: r.opts.Now}, weeks: map[day]*Week{}, sessions: map[day]int{}, unrated: map[day]int{}}
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
		if engine.Outcome(set.Outcome) == engine.Done && run.Started != nil {
			s.Sets.Done++
		}
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
	t.Contacts += s.Contacts()
	t.Rest.merge(&s.Rest)
	if s.Rated {
		t.Rated++
	}
	if s.Painful() {
		t.Painful++
	}
}

// Painful reports whether the player told of pain.
func (s *Session) Painful() bool {
	return s.Rating.Pain != nil && *s.Rating.Pain || s.Rating.Where != nil && *s.Rating.Where != ""
}

// remember keeps what is shown of single sessions.
func (p *tally) remember(s *Session, recent int) {
	if p.First.IsZero() || s.Start.Before(p.First) {
		p.First = s.Start
	}
	if p.Last.IsZero() || s.Start.After(p.Last) {
		p.Last, p.LastTitle, p.Name = s.Start, s.Title(), s.Player
	}
	p.Recent = keepLatest(p.Recent, s, recent, func(a, b *Session) int {
		return cmp.Or(b.Start.Compare(a.Start), cmp.Compare(a.ID, b.ID))
	})
	if s.Painful() {
		note := Pain{Start: s.Start, Title: s.Title(), Where: text(s.Rating.Where), Note: text(s.Rating.Note)}
		p.Pain = keepLatest(p.Pain, note, MaxPain, func(a, b Pain) int {
			return cmp.Or(b.Start.Compare(a.Start), strings.Compare(a.Where, b.Where), strings.Compare(a.Note, b.Note))
		})
	}
}

func text(p *string) string {
	if p == nil {
		return ""
	}
	return *p
}

// keepLatest puts v in its place and keeps the first n.
func keepLatest[T any](all []T, v T, n int, compare func(a, b T) int) []T {
	i, _ := slices.BinarySearchFunc(all, v, compare)
	if i >= n {
		return all
	}
	all = slices.Insert(all, i, v)
	if len(all) > n {
		clear(all[n:])
		all = all[:n]
	}
	return all
}

// jumped keeps the last session that had foot contacts. One that is dated
// after now tells nothing.
func (r *Reviewer) jumped(p *tally, s *Session) {
	end := s.Start.Add(s.Elapsed)
	if s.Contacts() == 0 || end.After(r.opts.Now) || p.Jumps != nil && !end.After(p.Jumps.At) {
		return
	}
	p.Jumps = &Jumps{At: end, Title: s.Title(), Contacts: s.Contacts(),
		Recovery: load.RecoveryFrom(end, r.opts.Now, r.opts.JumpsEarliest, r.opts.JumpsFull)}
}

// book counts a session in its week and on its day.
func (p *tally) book(s *Session, at day) {
	monday := at.monday()
	w := p.weeks[monday]
	if w == nil {
		w = &Week{Monday: monday.date()}
		p.weeks[monday] = w
	}
	w.add(s)
	w.Daily[at-monday] += s.Load
	p.sessions[at]++
	if !s.Rated {
		p.unrated[at]++
	}
}

// Squad returns everybody, by name. The Reviewer takes no more runs then.
func (r *Reviewer) Squad() *Squad {
	s := r.squad
	for _, p := range r.players {
		p.layOut(r.today)
		s.Players = append(s.Players, p.Player)
	}
	s.Sort(ByName, false)
	return &s
}

// layOut lays the weeks and days in view out without a gap, from the first
// that has a session to today.
func (p *tally) layOut(today day) {
	if len(p.weeks) == 0 {
		return
	}
	monday, first := today.monday(), today
	for m := range p.weeks {
		monday = min(monday, m)
	}
	for d := range p.sessions {
		first = min(first, d)
	}
	for m := monday; m <= today; m += 7 {
		w := p.weeks[m]
		if w == nil {
			w = &Week{Monday: m.date()}
		}
		w.Open = m == today.monday()
		p.Weeks = append(p.Weeks, *w)
	}
	short, long := load.NewAverage(load.ShortSpan), load.NewAverage(load.LongSpan)
	for d := first; d <= today; d++ {
		l := p.Weeks[(d.monday()-monday)/7].Daily[d-d.monday()]
		p.Days = append(p.Days, Day{Date: d.date(), Load: l, Unrated: p.unrated[d], Short: short.Add(l), Long: long.Add(l)})
	}
	p.seven(today)
}

// seven adds the seven days up to today up.
func (p *tally) seven(today day) {
	var daily [load.Days]float64
	for i := range daily {
		if at := len(p.Days) - 1 - i; at >= 0 {
			daily[i] = p.Days[at].Load
			p.Seven.Unrated += p.Days[at].Unrated
		}
		p.Seven.Sessions += p.sessions[today-day(i)]
	}
	p.Seven.Week = load.WeekOf(daily)
}

// LastDay returns the last day with its averages, and false where no week is
// in view.
func (p *Player) LastDay() (Day, bool) {
	if len(p.Days) == 0 {
		return Day{}, false
	}
	return p.Days[len(p.Days)-1], true
}

// Ago returns how long before now the last session began.
func (p *Player) Ago() time.Duration { return p.Now.Sub(p.Last) }
