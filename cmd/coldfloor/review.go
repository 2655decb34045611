package main

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/fault"
	"coldfloor/internal/players"
	reports "coldfloor/internal/report"
	"coldfloor/internal/review"
	"coldfloor/internal/runs"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
	"coldfloor/tui/glyph"
	screen "coldfloor/tui/review"
)

// reviewOptions are the flags of the review command.
type reviewOptions struct {
	journal       string
	plain, asJSON bool
	whole         bool
	report        string
	force         bool
	weeks         int
	sort          string
	reverse       bool
	same          []string
	inputs        []string // the journals that were read
	plan, players string
	page          bool
	background    string
	worthwhile    map[string]string

	weeksPlan *weeks.Plan
	squad     []players.Player
	matters   map[string]float64
}

// The least and the most weeks in view, and how many there are unless told
// otherwise.
const (
	defaultWeeks = 26
	maxWeeks     = 1040 // twenty years
)

// newReview returns the command that reviews what was done.
func newReview() *cobra.Command {
	var o reviewOptions
	c := &cobra.Command{
		Use:   "review [FOLDER|FILE…]",
		Short: "Review what was done: rounds, rests, load, jumps and pain over the weeks",
		Long: `Review what was really done, from your journal or from the journals named:
rounds done and prescribed, rests taken and prescribed, foot contacts, load,
monotony and strain by week, when the last jumps were, and every report of pain.
Several players' journals make a squad: one line a player, and you can open
each. A session that arrives in several journals counts once. Nothing is sent
anywhere.

A player has the name in their settings, or else that of their file. Journals of
one name that have no session in common are taken for two players and shown with
their files, unless --same says that they are one.

If the output is not a terminal, or with --plain, the review is plain text.`,
		RunE: func(c *cobra.Command, args []string) error { return o.run(c, args) },
	}
	journalFlag(c.Flags(), &o.journal)
	backgroundFlag(c, &o.background)
	f := c.Flags()
	f.BoolVar(&o.plain, "plain", false, "write plain text")
	f.BoolVar(&o.whole, "whole", false, "in plain text, write every player of a squad in full")
	f.BoolVar(&o.asJSON, "json", false, "write JSON")
	f.StringVar(&o.report, "report", "", "write a report with charts to `FILE`.html or .pdf")
	f.BoolVar(&o.force, "force", false, "replace the file even if it is not a report")
	f.IntVar(&o.weeks, "weeks", defaultWeeks, "show `N` weeks, this one included")
	f.StringVar(&o.sort, "sort", string(review.ByTrouble), "sort a squad by `COLUMN`: "+columnNames())
	f.BoolVar(&o.reverse, "reverse", false, "reverse the order")
	f.StringVar(&o.plan, "plan", "", "compare what was done with the plan of weeks in `WEEKS`")
	f.StringVar(&o.players, "players", "", "the players' `FILE`: their days away, and who is in the squad")
	f.BoolVar(&o.page, "page", false, "with --report and a PDF, write the squad's table alone, on one page")
	f.StringToStringVar(&o.worthwhile, "worthwhile", nil, "the smallest change of a test that matters, `TEST=CHANGE`, in its unit, such as \"Standing long jump=5\"")
	f.Lookup("worthwhile").DefValue = ""
	sameFlag(c, &o.same)
	atMostOne(c, "plain", "json", "report")
	return c
}

// columnNames lists what a squad can be sorted by.
func columnNames() string {
	names := make([]string, len(review.Columns))
	for i, c := range review.Columns {
		names[i] = string(c)
	}
	return orOf(names)
}

// check refuses wrong values.
func (o *reviewOptions) check() error {
	_, known := reports.FormatOf(o.report)
	switch {
	case o.weeks < 1 || o.weeks > maxWeeks:
		return usageError{fmt.Sprintf("--weeks %d is not between 1 and %d", o.weeks, maxWeeks), "26 weeks are half a year"}
	case o.report != "" && !known:
		return usageError{fmt.Sprintf("%q does not end in .html or .pdf", o.report), "the ending names the format, such as --report review.pdf"}
	case o.page && !strings.EqualFold(filepath.Ext(o.report), ".pdf"):
		return usageError{"--page needs a PDF to write", "add --report squad.pdf"}
	case !slices.Contains(review.Columns, review.Column(o.sort)):
		return usageError{fmt.Sprintf("a squad is not sorted by %q", o.sort), "write --sort " + columnNames()}
	}
	o.matters = map[string]float64{}
	for name, text := range o.worthwhile {
		v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
		if err != nil || !(v > 0) || math.IsInf(v, 0) {
			return usageError{fmt.Sprintf("--worthwhile %q is not a number above 0", name+"="+text), `write the exercise and the change, such as --worthwhile "Standing long jump=5"`}
		}
		o.matters[runs.Key(name)] = v
	}
	return nil
}

// run reviews the journals in the form asked for.
func (o *reviewOptions) run(c *cobra.Command, paths []string) error {
	if err := o.check(); err != nil {
		return err
	}
	if o.plan != "" {
		p, err := openWeeks(c, o.plan)
		if err != nil {
			return err
		}
		o.weeksPlan = p
	}
	if o.players != "" {
		var err error
		if o.squad, err = players.Read(o.players); err != nil {
			return err
		}
	}
	squad, failed := o.read(c, paths)
	if squad == nil {
		return failed
	}
	return errors.Join(o.write(c, squad), failed)
}

// write shows the squad in the form asked for.
func (o *reviewOptions) write(c *cobra.Command, squad *review.Squad) error {
	switch {
	case o.asJSON:
		return writeJSON(c.OutOrStdout(), reports.JSONOf(squad))
	case o.report != "":
		format, _ := reports.FormatOf(o.report)
		doc := reports.Of(squad)
		if o.page {
			doc = reports.Page(squad)
		}
		missing, err := doc.WriteFile(o.report, format, o.force, o.inputs...)
		if err == nil {
			tellLacking(c, missing)
		}
		return err
	}
	if o.plain || o.whole || len(squad.Players) == 0 || !isTerminal(c.OutOrStdout()) || !isTerminal(c.InOrStdin()) {
		return reports.Of(squad).Text(c.OutOrStdout(), o.whole)
	}
	mine, err := loadSettings("")
	if err != nil {
		return err
	}
	look, font := lookOf(o.background, mine), fontOf(c.OutOrStdout())
	return screen.Run(screen.Options{Squad: squad, By: review.Column(o.sort), Reverse: o.reverse,
		Glyphs: glyph.Best(os.Getenv, runtime.GOOS, font), Font: font, Look: look})
}

// read reviews the journals. The error beside a squad is that of journals that
// could not be read to their end, which was said already.
func (o *reviewOptions) read(c *cobra.Command, paths []string) (*review.Squad, error) {
	mine, err := settings.Load()
	if err != nil {
		return nil, err
	}
	ro := review.Options{Now: time.Now(), Weeks: reports.WeeksFor(o.weeks), Recent: o.recent(paths), Worthwhile: o.matters}
	if ro.Plan, err = o.plans(); err != nil {
		return nil, err
	}
	same := o.same
	for _, p := range o.squad {
		ro.Players = append(ro.Players, p.Name)
		same = append(same, p.Name)
	}
	interval := mine.Limits["jump_interval"]
	ro.JumpsEarliest, ro.JumpsFull = units.Seconds(interval.Low), units.Seconds(interval.High)
	if len(paths) == 0 {
		if _, err := os.Stat(o.journal); errors.Is(err, os.ErrNotExist) && !c.Flags().Changed("journal") {
			return review.New(ro).Squad(), nil // nothing was done yet
		}
		paths = []string{o.journal}
	}
	reading, end := longReading(c, "reading the journals", runs.MostIsReading)
	reading.Same = same
	squad, files, err := review.Of(paths, ro, reading)
	end()
	if err != nil {
		return nil, err
	}
	for _, f := range files {
		o.inputs = append(o.inputs, f.Path)
	}
	squad.Sort(review.Column(o.sort), o.reverse)
	return reports.InView(squad, o.weeks), tellLeftOut(c.ErrOrStderr(), files)
}

// plans returns the plan that each player is held against, with the player's
// own days away left out, or nil without a plan.
func (o *reviewOptions) plans() (func(player string) *weeks.Plan, error) {
	if o.weeksPlan == nil {
		return nil, nil
	}
	own := map[string]*weeks.Plan{}
	for _, p := range o.squad {
		plan, err := o.weeksPlan.ForPlayer(p.Away)
		if err != nil {
			return nil, fault.New("move the session, or take the day out of away", "with the days away of %q the plan is not valid: %w", p.Name, err)
		}
		own[runs.Key(p.Name)] = plan
	}
	return func(player string) *weeks.Plan {
		if plan := own[runs.Key(player)]; plan != nil {
			return plan
		}
		return o.weeksPlan
	}, nil
}

// Sessions that are kept whole, to be looked into: of one journal as many as
// anybody does in the weeks in view, of many a few of each.
const (
	sessionsAWeek = 14
	sessionsEach  = 30
)

func (o *reviewOptions) recent(paths []string) int {
	if len(paths) > 1 {
		return sessionsEach
	}
	if len(paths) == 1 {
		if info, err := os.Stat(paths[0]); err == nil && info.IsDir() {
			return sessionsEach
		}
	}
	return sessionsAWeek * o.weeks
}
