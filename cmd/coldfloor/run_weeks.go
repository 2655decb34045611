package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/season"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/internal/today"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
	"coldfloor/tui"
)

// open opens what is to be run: a session; of a plan of weeks the session of a
// day, or the plan itself if the day's is asked for on the screen.
func (s *stage) open(name string) error {
	o, err := s.openNamed(name)
	if err != nil {
		return err
	}
	if o.Plan == nil {
		plans, err := s.options.day.plansOf(o)
		if err == nil {
			s.plan = plans[0]
		}
		return err
	}
	s.season = o.Plan
	if s.screen() && !s.options.day.given() {
		return nil
	}
	runs, err := s.runs()
	if err != nil {
		return err
	}
	d, err := s.options.day.choose(o.Plan, runs, intervalOf(s.settings), s.language, func(day *today.Day) {
		for _, line := range day.Lines(s.language) {
			fmt.Fprintln(s.command.ErrOrStderr(), line)
		}
	})
	if err != nil {
		return err
	}
	s.weeks = today.Started(o.Plan, d.Planned)
	s.plan, err = today.Session(o.Plan, d.Planned)
	return err
}

// openNamed opens a session or a plan; the settings' own may be a built-in one
// too, whose name the settings have made a path of their folder.
func (s *stage) openNamed(name string) (weeks.Opened, error) {
	o, err := openAny(s.command, name)
	if err != nil && name == s.settings.Weeks {
		if _, builtin := weeks.FindBuiltin(filepath.Base(name)); builtin {
			return openAny(s.command, filepath.Base(name))
		}
		err = fault.At("weeks in the settings", err)
		if !strings.HasPrefix(fault.Hint(err), "did you mean") {
			err = fault.With("change it in "+s.settings.File, err)
		}
	}
	return o, err
}

// runs reads the journal that the run is kept in, none without one.
func (s *stage) runs() ([]*journal.Run, error) {
	if s.options.noLog {
		return nil, nil
	}
	return loadRuns(s.command, s.options.journal)
}

// intervalOf is the least time between two sessions with jumps: the lower end
// of the player's limit.
func intervalOf(p settings.Player) time.Duration { return units.Seconds(p.Limits["jump_interval"].Low) }

// onSeason is what the screen chooses the day's session from; nil if the
// session is known.
func (s *stage) onSeason() *tui.Season {
	if s.season == nil || s.plan != nil {
		return nil
	}
	return &tui.Season{Plan: s.season, Interval: intervalOf(s.settings)}
}

// choose returns the session of a plan of weeks that is meant: of today, of
// --on, or of --week the first that is not done. Show is given the day if it
// is today's. Without one the error says so in a language, and what is next.
func (f *dayFlags) choose(p *weeks.Plan, runs []*journal.Run, interval time.Duration, l *text.Language, show func(*today.Day)) (*season.Day, error) {
	if f.given() {
		if _, err := f.days(p); err != nil {
			return nil, err
		}
	}
	now := time.Now()
	if f.week != 0 {
		return firstOpen(season.Of(p, runs, units.DateOf(now)).Weeks[f.week-1].Sessions, l)
	}
	if f.on != "" {
		date, err := f.date()
		if err != nil {
			return nil, err
		}
		return firstOf(today.On(p, runs, date, interval)), nil
	}
	day := today.Of(p, runs, now, interval)
	show(day)
	switch {
	case day.Current != nil:
		return day.Current, nil
	case len(day.Planned) > 0:
		return nil, errors.New(l.Day.IsDone(day.Date.String()))
	}
	if next := day.Next; next != nil {
		return nil, errors.New(l.Day.NextIsOn(next.Date.String()))
	}
	return nil, errors.New(l.Day.NoneLeft(p.Starts.String(), p.End().String()))
}

// ofLog returns the session of a plan that is meant, by what a journal says is
// done.
func (f *dayFlags) ofLog(c *cobra.Command, p *weeks.Plan, log string) (*season.Day, error) {
	runs, err := loadRuns(c, log)
	if err != nil {
		return nil, err
	}
	return f.choose(p, runs, 0, &text.English, func(*today.Day) {})
}

// firstOf returns the first session of a day that is not done, or else the
// first: the day has one.
func firstOf(day *today.Day) *season.Day {
	if day.Current != nil {
		return day.Current
	}
	return day.Planned[0]
}

// firstOpen returns the first session that is neither done nor left out, or
// else the first. Without one the error says so in a language.
func firstOpen(days []season.Day, l *text.Language) (*season.Day, error) {
	for i := range days {
		if s := days[i].State; s != season.Done && s != season.LeftOut {
			return &days[i], nil
		}
	}
	if len(days) == 0 || days[0].State == season.LeftOut {
		return nil, errors.New(l.Day.NoneInWeek)
	}
	return &days[0], nil
}
