package review

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/measured"
	"coldfloor/internal/runs"
	"coldfloor/internal/season"
	"coldfloor/internal/trainingload"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
)

// tally is a player in the making.
type tally struct {
	*Player
	called    string        // by their settings or their file, which another may be too
	weeks     map[day]*Week // by Monday
	days      map[day]*Day  // those in view with anything on them
	began     map[day]int   // sessions
	notRated  map[day]int   // of those, the ones without an effort
	exercises map[string]*Exercise
	results   []measured.Result
	planned   []*journal.Run // for the plan
	recent    []recent       // the latest first
	expected  bool           // in the squad without any session too
}

// remember keeps what is shown of single sessions.
func (p *tally) remember(s *gist, player string, at runs.Place, most int) {
	if p.First.IsZero() || s.Start.Before(p.First) {
		p.First = s.Start
	}
	if p.Last.IsZero() || s.Start.After(p.Last) {
		p.Last, p.LastTitle, p.Name = s.Start, s.Title(), player
	}
	one := recent{start: s.Start, id: s.ID, player: player, at: at}
	if !s.Lean() {
		one.whole = s
	}
	p.recent = keepLatest(p.recent, one, most, func(a, b recent) int {
		return cmp.Or(b.start.Compare(a.start), cmp.Compare(a.id, b.id))
	})
	_, there := s.Start.Zone()
	if _, here := s.Start.In(p.Now.Location()).Zone(); here != there {
		p.Elsewhere++
	}
	for _, said := range s.Said {
		p.say(s, said)
	}
	p.results = append(p.results, s.results...)
}

// recent is a session that is shown whole.
type recent struct {
	start      time.Time
	id, player string
	at         runs.Place
	whole      *gist // nil until it is read
}

// say keeps a statement, unless a later one says that it was a slip.
func (p *tally) say(s *gist, said journal.Statement) {
	if said.Painful() {
		pain := Pain{At: said.At, Start: s.Start, Title: s.Title(), Where: said.Where, Level: said.Level, Note: said.Note}
		if pain.At.IsZero() {
			pain.At = s.Start
		}
		p.Pain = keepLatest(p.Pain, pain, MaxPain, func(a, b Pain) int {
			return cmp.Or(b.At.Compare(a.At), b.Start.Compare(a.Start), strings.Compare(a.Where, b.Where), strings.Compare(a.Note, b.Note))
		})
		return
	}
	if said.Note != "" && !said.Slip {
		note := Note{At: said.At, Start: s.Start, Title: s.Title(), Text: said.Note}
		p.Notes = keepLatest(p.Notes, note, MaxPain, func(a, b Note) int {
			return cmp.Or(b.At.Compare(a.At), b.Start.Compare(a.Start), strings.Compare(a.Text, b.Text))
		})
	}
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

// week returns the week that a day is of.
func (p *tally) week(at day) *Week {
	monday := at.monday()
	w := p.weeks[monday]
	if w == nil {
		w = &Week{Monday: monday.date()}
		p.weeks[monday] = w
	}
	return w
}

// day returns a day in view.
func (p *tally) day(at day) *Day {
	d := p.days[at]
	if d == nil {
		d = &Day{Date: at.date()}
		p.days[at] = d
	}
	return d
}

// begun counts a session on the day that it began.
func (p *tally) begun(s *gist, at day) {
	p.week(at).begun(s)
	if p.began == nil {
		p.began, p.notRated = map[day]int{}, map[day]int{}
	}
	p.began[at]++
	if !s.rated() {
		p.notRated[at]++
	}
	p.day(at)
}

// worked counts a day's part of a session.
func (p *tally) worked(s *gist, part dated) {
	w, d := p.week(part.day), p.day(part.day)
	d.Worked = true
	w.jumped(part.contacts)
	d.Contacts += part.contacts.N
	if !part.contacts.Known {
		d.Uncounted++
	}
	w.Elapsed += time.Duration(part.part * float64(s.Elapsed))
	load, _ := s.Load()
	w.Daily[part.day-part.day.monday()] += part.part * load
	d.Load += part.part * load
	if !s.rated() {
		d.Unrated++
		w.Unknown[part.day-part.day.monday()] = true
	}
}

// rested counts the rests that ended on a day.
func (p *tally) rested(x *restsOf, at day) {
	p.week(at).Rest.take(x)
	if x.count > 0 {
		d := p.day(at)
		d.rests += x.count
		d.restCut += x.early
	}
}

// against holds the player against a plan.
func (p *tally) against(plan *weeks.Plan, today day) {
	if plan != nil {
		p.Season = season.Of(plan, p.planned, units.Date(today))
	}
}

// layOut lays the weeks and days in view out without a gap, from the first
// that has anything to today.
func (p *tally) layOut(today day) {
	p.Measured = measured.Of(p.results)
	p.layOutExercises()
	p.markNew()
	for _, x := range p.recent {
		p.Recent = append(p.Recent, x.whole.session(x.player))
	}
	if len(p.weeks) > 0 {
		p.layOutWeeks(today)
	}
	p.stand(today)
	p.weeks, p.days, p.began, p.exercises, p.results, p.planned, p.recent = nil, nil, nil, nil, nil, nil, nil // laid out
}

func (p *tally) layOutWeeks(today day) {
	monday, first := today.monday(), today
	for m := range p.weeks {
		monday = min(monday, m)
	}
	for d := range p.days {
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
	short, long := trainingload.NewAverage(trainingload.ShortSpan), trainingload.NewAverage(trainingload.LongSpan)
	unrated := day(-1 << 30)
	p.Days = make([]Day, 0, today-first+1)
	for at := first; at <= today; at++ {
		d := Day{Date: at.date()}
		if known := p.days[at]; known != nil {
			d = *known
		}
		if d.Unrated > 0 {
			unrated = at
		}
		d.Short, d.Long = short.Add(d.Load), long.Add(d.Load)
		d.ShortAtLeast = int(at-unrated) < trainingload.Memory(trainingload.ShortSpan)
		d.LongAtLeast = int(at-unrated) < trainingload.Memory(trainingload.LongSpan)
		p.Days = append(p.Days, d)
	}
	p.seven(today)
}

// seven adds the seven days up to today up.
func (p *tally) seven(today day) {
	var daily [trainingload.Days]float64
	for i := range daily {
		if at := len(p.Days) - 1 - i; at >= 0 {
			daily[i] = p.Days[at].Load
			p.Seven.Unrated += p.Days[at].Unrated
		}
		p.Seven.Sessions += p.began[today-day(i)]
	}
	p.Seven.Week = trainingload.WeekOf(daily)
}

// LastDay returns the last day with its averages, and false if no week is in
// view.
func (p *Player) LastDay() (Day, bool) {
	if len(p.Days) == 0 {
		return Day{}, false
	}
	return p.Days[len(p.Days)-1], true
}
