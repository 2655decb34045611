package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/today"
	"coldfloor/internal/units"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// openAny opens the session or the plan of weeks that the user named: a
// built-in name, a file, or "-" for standard input.
func openAny(c *cobra.Command, name string) (weeks.Opened, error) {
	return weeks.OpenOr(name, c.InOrStdin())
}

// dayFlags say which week or which day of a plan is meant.
type dayFlags struct {
	week int
	on   string
}

// add gives the command the flags.
func (f *dayFlags) add(c *cobra.Command) {
	weekFlag(c, &f.week, "in a plan of weeks, only week `N`")
	c.Flags().Var(day{&f.on}, "on", "in a plan of weeks, only the sessions of `DATE`, such as 2026-12-07")
}

// given reports whether a week or a day is named.
func (f *dayFlags) given() bool { return f.week != 0 || f.on != "" }

// days returns the sessions of a plan that are meant: those of the week, of
// the day, or all of them.
func (f *dayFlags) days(p *weeks.Plan) ([]weeks.Planned, error) {
	switch {
	case f.week != 0 && f.on != "":
		return nil, usageError{"--week and --on do not go together", "leave out one of them"}
	case f.on != "":
		d, err := f.date()
		if err != nil {
			return nil, err
		}
		days := p.On(d)
		if len(days) == 0 {
			return nil, fault.New(nextHint(p, d), "%s has no session on %s", p.Name, d.Short())
		}
		return days, nil
	case f.week != 0:
		if err := checkWeek(p, f.week); err != nil {
			return nil, err
		}
		return p.Weeks()[f.week-1].Days, nil
	}
	return p.Days(), nil
}

// checkWeek refuses a --week that a plan does not have.
func checkWeek(p *weeks.Plan, week int) error {
	if week < 1 || week > p.Count {
		return usageError{fmt.Sprintf("--week %d is not a week of %s", week, p.Name), "the plan has " + units.Count(p.Count, "week")}
	}
	return nil
}

// date reads --on.
func (f *dayFlags) date() (units.Date, error) {
	d, err := units.ParseDate(f.on)
	if err != nil {
		return 0, usageError{fmt.Sprintf("--on %q %v", f.on, err), units.DateHint}
	}
	return d, nil
}

// nextHint names the next day of a plan with a session.
func nextHint(p *weeks.Plan, after units.Date) string {
	for _, d := range p.Days() {
		if d.Date > after {
			return "the next session is on " + d.Date.String()
		}
	}
	return fmt.Sprintf("the plan runs from %s to %s", p.Starts, p.End())
}

// notFor refuses the flags for a session.
func (f *dayFlags) notFor(s *sessions.Session) error {
	return usageError{"--week and --on are for plans of weeks, and " + s.Name + " is a session", "leave them out"}
}

// plansOf returns the plans of a session, or of the days of a plan of
// weeks that are meant. Each has the text of its day's own session.
func (f *dayFlags) plansOf(o weeks.Opened) ([]*plan.Plan, error) {
	if o.Session != nil {
		if f.given() {
			return nil, f.notFor(o.Session)
		}
		return []*plan.Plan{plan.Of(o.Session)}, nil
	}
	days, err := f.days(o.Plan)
	if err != nil {
		return nil, err
	}
	var plans []*plan.Plan
	for _, d := range days {
		s, err := o.Plan.Written(d)
		if err != nil {
			return nil, err
		}
		plans = append(plans, plan.Of(s))
	}
	return plans, nil
}

// one returns the plan of the one session that is meant: the session itself,
// or of a plan of weeks that of a day: of --on or today the first that is not
// done by the journal, of --week the only one.
func (f *dayFlags) one(c *cobra.Command, name, log string) (*plan.Plan, error) {
	o, err := openAny(c, name)
	if err != nil {
		return nil, err
	}
	if o.Session != nil || f.week != 0 {
		plans, err := f.plansOf(o)
		if err == nil && len(plans) != 1 {
			err = fault.New("name a day with --on: "+dates(o.Plan.Weeks()[f.week-1].Days), "week %d has %s", f.week, units.Count(len(plans), "session"))
		}
		if err != nil {
			return nil, err
		}
		return plans[0], nil
	}
	d, err := f.ofLog(c, o.Plan, log)
	if err != nil {
		return nil, err
	}
	return today.Session(o.Plan, d.Planned)
}

// dates lists the days of sessions.
func dates(days []weeks.Planned) string {
	var list []string
	for _, d := range days {
		list = append(list, d.Date.String())
	}
	return strings.Join(slices.Compact(list), ", ")
}

// loadRuns reads the journal, and reports what is damaged in it.
func loadRuns(c *cobra.Command, path string) ([]*journal.Run, error) {
	o, err := journal.ReadOverview(path)
	if err != nil {
		return nil, err
	}
	for _, p := range o.Problems {
		fault.Print(c.ErrOrStderr(), fault.At(path, p))
	}
	return o.Runs(), nil
}
