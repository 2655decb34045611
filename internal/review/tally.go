package review

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/trainingload"
)

// tally is a player in the making.
type tally struct {
	*Player
	called string        // by their settings or their file, which another may be too
	weeks  map[day]*Week // by Monday
	// of each day in view: sessions, and those not rated
	sessions, unrated map[day]int
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
	for _, said := range s.Pains() {
		note := Pain{Start: s.Start, Title: s.Title(), Where: said.Where, Note: said.Note}
		p.Pain = keepLatest(p.Pain, note, MaxPain, func(a, b Pain) int {
			return cmp.Or(b.Start.Compare(a.Start), strings.Compare(a.Where, b.Where), strings.Compare(a.Note, b.Note))
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
	short, long := trainingload.NewAverage(trainingload.ShortSpan), trainingload.NewAverage(trainingload.LongSpan)
	for d := first; d <= today; d++ {
		l := p.Weeks[(d.monday()-monday)/7].Daily[d-d.monday()]
		p.Days = append(p.Days, Day{Date: d.date(), Load: l, Unrated: p.unrated[d], Short: short.Add(l), Long: long.Add(l)})
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
		p.Seven.Sessions += p.sessions[today-day(i)]
	}
	p.Seven.Week = trainingload.WeekOf(daily)
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
