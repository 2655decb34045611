package next

import (
	"cmp"
	"path"
	"path/filepath"
	"slices"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/review"
	"coldfloor/internal/season"
	"coldfloor/internal/units"
)

// painDays is for how many days, today among them, pain speaks whatever week it
// was said in: one of Friday is not over on Monday because a week is.
const painDays = 7

// FactsOf returns what is known of a player at the end of the week before
// week, as of now. The runs are that player's, in any order.
func FactsOf(s *season.Season, player string, runs []*journal.Run, week int, now time.Time, l Limits) Facts {
	runs = slices.SortedFunc(journal.Counting(runs), func(a, b *journal.Run) int { return cmp.Compare(a.Start.UnixNano(), b.Start.UnixNano()) })
	from := s.Plan.Starts + units.Date(7*(week-2))
	to := min(from+6, units.DateOf(now))
	f := Facts{Player: player, Now: now, Next: week}
	if week > 1 {
		c := s.Between(from, to)
		f.Planned, f.Missed = c.Come, c.Missed
	}
	for i, r := range runs {
		f.Last = r.Start
		if i > 0 {
			if days := daysBetween(runs[i-1].Start, r.Start); days >= l.Break {
				f.BackSince, f.BackAfter = r.Start, days
			}
		}
		if d := units.DateOf(r.Start); from <= d && d <= to {
			f.Done++
			f.addRun(r, runs[:i])
		}
	}
	f.Pain = painSince(runs, min(from, units.DateOf(now)-painDays+1))
	return f
}

// addRun adds what one session of the week says, with those before it.
func (f *Facts) addRun(r *journal.Run, earlier []*journal.Run) {
	if done := r.RoundsDone(); done != nil {
		for i, b := range r.Blocks() {
			f.RoundsPrescribed += b.Rounds
			if i < len(done) {
				f.RoundsDone += min(done[i], b.Rounds)
			}
		}
	}
	for i := range r.Rests {
		switch _, v := review.DefaultTolerance.Judge(&r.Rests[i]); v {
		case review.Left:
		case review.Early:
			f.Rests, f.RestsCut = f.Rests+1, f.RestsCut+1
		default:
			f.Rests++
		}
	}
	f.PainAsked = f.PainAsked || r.Rating.Pain != nil
	if r.Rating.RPE == nil {
		return
	}
	usual, of := usualEffort(sessionName(r), earlier)
	f.Efforts = append(f.Efforts, Effort{Session: r.Title(), RPE: *r.Rating.RPE, Usual: usual, Of: of})
}

// usualEffort returns the median of the earlier ratings of a session, and how
// many there are.
func usualEffort(name string, earlier []*journal.Run) (median float64, of int) {
	var rated []float64
	for _, r := range earlier {
		if r.Rating.RPE != nil && sessionName(r) == name {
			rated = append(rated, *r.Rating.RPE)
		}
	}
	if len(rated) == 0 {
		return 0, 0
	}
	slices.Sort(rated)
	m := len(rated) / 2
	if len(rated)%2 == 1 {
		return rated[m], len(rated)
	}
	return (rated[m-1] + rated[m]) / 2, len(rated)
}

// sessionName names a session through all weeks of its plan: as the plan has
// it, or else by its file's own name.
func sessionName(r *journal.Run) string {
	switch {
	case r.Started == nil:
		return ""
	case r.Started.Weeks != nil:
		return path.Base(r.Started.Weeks.Session)
	case r.OnPaper():
		return r.Title()
	}
	return filepath.Base(r.Started.Source)
}

// painSince returns the statements of pain of the sessions from a date on, the
// latest first.
func painSince(runs []*journal.Run, from units.Date) []Pain {
	var all []Pain
	for _, r := range runs {
		for _, said := range r.Pains() {
			x := Pain{At: said.At, Where: said.Where, Level: said.Level, New: true}
			for _, before := range slices.Backward(all) {
				if journal.SamePlace(before.Where, said.Where) {
					x.New, x.Before = daysBetween(before.At, said.At) > journal.NewPainAfter, before.Level
					break
				}
			}
			// Of a place that nobody named it cannot be said that it is new.
			x.New = x.New && said.Where != ""
			all = append(all, x)
		}
	}
	all = slices.DeleteFunc(all, func(x Pain) bool { return units.DateOf(x.At) < from })
	slices.Reverse(all)
	return all
}
