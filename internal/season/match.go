package season

import (
	"cmp"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"coldfloor/internal/journal"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
)

// Of holds the runs of one player against a plan, as of today. The runs may be
// in any order; those that do not count are left aside.
func Of(p *weeks.Plan, runs []*journal.Run, today units.Date) *Season {
	s := &Season{Plan: p, Today: today}
	for _, w := range p.Weeks() {
		week := Week{Week: w}
		for _, d := range w.Days {
			week.Sessions = append(week.Sessions, Day{Planned: d})
		}
		for _, d := range w.LeftOut {
			week.Sessions = append(week.Sessions, Day{Planned: d, State: LeftOut})
		}
		s.Weeks = append(s.Weeks, week)
	}
	for _, r := range s.offDay(s.ofDay(s.named(sorted(runs)))) {
		if r.Counts() {
			s.Others = append(s.Others, r)
		}
	}
	for d := range s.days() {
		d.judge(today)
	}
	return s
}

// sorted returns the runs that say something of a plan's day: those that count,
// and those that were begun for one and left undone. The earliest comes first.
func sorted(runs []*journal.Run) []*journal.Run {
	var all []*journal.Run
	for _, r := range runs {
		if fate := r.Fate(); fate == journal.Counted || fate == journal.Empty && r.State != journal.Unfinished && planOf(r) != nil {
			all = append(all, r)
		}
	}
	slices.SortStableFunc(all, func(a, b *journal.Run) int { return cmp.Or(a.Start.Compare(b.Start), cmp.Compare(a.ID, b.ID)) })
	return all
}

func planOf(r *journal.Run) *journal.Weeks {
	if r.Started == nil {
		return nil
	}
	return r.Started.Weeks
}

// named gives every run that says for which day it was to that day, and
// returns the others.
func (s *Season) named(runs []*journal.Run) []*journal.Run {
	return slices.DeleteFunc(runs, func(r *journal.Run) bool {
		at := planOf(r)
		if at == nil || at.Title != s.Plan.Title || at.Starts != s.Plan.Starts.String() {
			return false
		}
		d := s.dayOf(at)
		if d != nil {
			d.Runs = append(d.Runs, r)
		}
		return d != nil
	})
}

// dayOf returns the day that a run says it was for. A plan may have been
// changed since: then it is the one that fits best of its session.
func (s *Season) dayOf(at *journal.Weeks) *Day {
	date, err := units.ParseDate(at.Date)
	if err != nil {
		return nil
	}
	same := s.find(func(d *Day) bool { return d.Slot.Session == at.Session && d.State != LeftOut })
	for _, fits := range []func(*Day) bool{
		func(d *Day) bool { return d.Date == date && d.Place == at.Place },
		func(d *Day) bool { return d.Date == date },
		func(d *Day) bool { return d.First == date }, // it was moved since
	} {
		if i := slices.IndexFunc(same, fits); i >= 0 {
			return same[i]
		}
	}
	return nil
}

// ofDay gives runs to the days of their own dates that nothing fills, and
// returns the others.
func (s *Season) ofDay(runs []*journal.Run) []*journal.Run {
	return s.fill(runs, 0)
}

// offDay gives runs to the nearest days that nothing fills, and returns the
// others.
func (s *Season) offDay(runs []*journal.Run) []*journal.Run {
	return s.fill(runs, Reach)
}

// fill gives each run to the nearest day of its session within so many days
// that nothing fills.
func (s *Season) fill(runs []*journal.Run, reach int) []*journal.Run {
	return slices.DeleteFunc(runs, func(r *journal.Run) bool {
		var nearest *Day
		names := s.sessionsOf(r)
		far := func(d *Day) int { return max(int(d.Date-began(r)), int(began(r)-d.Date)) }
		for d := range s.days() {
			if len(d.Runs) == 0 && d.State != LeftOut && far(d) <= reach && (nearest == nil || far(d) < far(nearest)) && slices.Contains(names, d.Slot.Session) {
				nearest = d
			}
		}
		if nearest != nil && r.Counts() {
			nearest.Runs = append(nearest.Runs, r)
			return true
		}
		return false
	})
}

// began returns the date that a run began on, where the player was.
func began(r *journal.Run) units.Date { return units.DateOf(r.Start) }

// weekSuffix is what the session of a week has after its title.
var weekSuffix = regexp.MustCompile(`, week [0-9]{1,2}$`)

// sessionsOf returns the names, as written in the plan, of the sessions that a
// run may have been of: the built-in one or the file that it names; or else
// files called so that lie elsewhere; or else those of its title, which is all
// that a run on paper says.
func (s *Season) sessionsOf(r *journal.Run) []string {
	if r.Started == nil {
		return nil
	}
	source := filepath.ToSlash(r.Started.Source)
	title := weekSuffix.ReplaceAllString(r.Started.Title, "")
	for _, fits := range []func(name string) bool{
		func(name string) bool {
			return source == name || strings.ContainsAny(name, "./") && strings.HasSuffix(source, "/"+path.Clean(filepath.ToSlash(name)))
		},
		func(name string) bool {
			return strings.Contains(name, ".") && path.Base(source) == path.Base(filepath.ToSlash(name))
		},
		func(name string) bool {
			base := s.Plan.Base(name)
			return base != nil && weekSuffix.ReplaceAllString(base.Title, "") == title
		},
	} {
		var names []string
		for _, slot := range s.Plan.Slots {
			if fits(slot.Session) && !slices.Contains(names, slot.Session) {
				names = append(names, slot.Session)
			}
		}
		if len(names) > 0 {
			return names
		}
	}
	return nil
}

// judge says how a day stands that its runs were given to.
func (d *Day) judge(today units.Date) {
	counted := slices.ContainsFunc(d.Runs, (*journal.Run).Counts)
	switch {
	case d.State == LeftOut:
	case counted:
		d.State = Done
		d.Runs = slices.DeleteFunc(d.Runs, func(r *journal.Run) bool { return !r.Counts() })
	case len(d.Runs) > 0:
		d.State = Skipped
	case d.Date > today:
		d.State = Ahead
	case today-d.Date > Reach:
		d.State = Missed
	default:
		d.State = Due
	}
}
