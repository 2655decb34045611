package main

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"runtime"

	"github.com/spf13/cobra"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/pace"
	"coldfloor/internal/plan"
	"coldfloor/internal/preview"
	"coldfloor/internal/safetext"
	"coldfloor/sessions/weeks"
	"coldfloor/tui/glyph"
)

// previewFlags is how preview was called.
type previewFlags struct {
	asJSON, steps bool
	log, settings string
	days          dayFlags
	folder        string // to write the sessions of a week to
}

// newPreview returns the command that shows sessions before they are run.
func newPreview() *cobra.Command {
	var f previewFlags
	c := &cobra.Command{
		Use:   "preview SESSION|WEEKS…",
		Short: "Show the length and dose of a session, or of a plan of weeks, before it is run",
		Long: `Show a session's length and its parts, block by block, with sets, reps, foot
contacts and the ratio of work to rest. SESSION is a built-in name or a file. For
several sessions it shows a table, a line each.

For a plan of weeks it shows each week, with its contacts compared with the week
before; --week shows one week day by day, --on the sessions of one day. --write
makes files of the sessions of a week or a day, as they are then.

"Your length" is how long the session takes at your own pace, from the sets in
the journal that you ended yourself, with the range in which four sessions out
of five fall. If there are too few such sets, it says so.`,
		Args: argsError(cobra.MinimumNArgs(1)),
		RunE: func(c *cobra.Command, args []string) error { return f.run(c, args) },
	}
	journalFlag(c.Flags(), &f.log)
	settingsFlag(c, &f.settings)
	f.days.add(c)
	c.Flags().BoolVar(&f.asJSON, "json", false, "write JSON: an object, or an array of them for several sessions")
	c.Flags().BoolVar(&f.steps, "steps", false, "list the timeline, step by step")
	c.Flags().StringVar(&f.folder, "write", "", "with --week or --on: write each session as a file into `FOLDER`")
	atMostOne(c, "json", "steps", "write")
	return c
}

// run shows what args name.
func (f *previewFlags) run(c *cobra.Command, args []string) error {
	opened, err := openAll(c, args)
	if err != nil {
		return err
	}
	if f.folder != "" {
		return f.write(c, opened)
	}
	own, err := ownPace(c, f.log, f.settings)
	if err != nil {
		return err
	}
	var plans []*plan.Plan // of sessions, and of the days that are named
	var season []*plan.Weeks
	for _, o := range opened {
		if o.Plan != nil && f.days.on == "" {
			if f.days.week != 0 {
				if err := checkWeek(o.Plan, f.days.week); err != nil {
					return err
				}
			}
			season = append(season, plan.OfWeeks(o.Plan))
			continue
		}
		of, err := f.days.plansOf(o)
		if err != nil {
			return err
		}
		plans = append(plans, of...)
	}
	return f.show(c.OutOrStdout(), plans, season, own)
}

// show writes the previews in the form asked for.
func (f *previewFlags) show(w io.Writer, plans []*plan.Plan, season []*plan.Weeks, own *pace.Table) error {
	if f.asJSON {
		return writeJSON(w, f.documents(plans, season, own))
	}
	if f.steps && len(season) > 0 {
		return usageError{"the steps of a whole plan of weeks are too many to list", "name a day with --on"}
	}
	for i, s := range season {
		if i > 0 {
			fmt.Fprintln(w)
		}
		if err := f.showWeeks(w, s); err != nil {
			return err
		}
	}
	if len(plans) == 0 {
		return nil
	}
	return showPreview(w, plans, own, f.steps)
}

// showWeeks writes a plan of weeks, or one of its weeks.
func (f *previewFlags) showWeeks(w io.Writer, s *plan.Weeks) error {
	if f.days.week != 0 {
		return preview.WeekText(w, s, f.days.week)
	}
	return preview.WeeksText(w, s, shownOn(w))
}

// write writes the sessions of a week or a day as files, and says which.
func (f *previewFlags) write(c *cobra.Command, opened []weeks.Opened) error {
	if len(opened) != 1 || opened[0].Plan == nil || !f.days.given() {
		return usageError{"--write needs one plan of weeks, and --week or --on", "such as coldfloor preview autumn.yaml --week 3 --write week3"}
	}
	days, err := f.days.days(opened[0].Plan)
	if err != nil {
		return err
	}
	files, err := opened[0].Plan.WriteFiles(f.folder, days)
	for _, name := range files {
		fmt.Fprintln(c.OutOrStdout(), name)
	}
	return err
}

// ownPace returns what the journal shows of the player's pace. One that cannot
// be read tells nothing, and is no reason to show no preview. With the settings
// file of another player only that player's runs count.
func ownPace(c *cobra.Command, log, file string) (*pace.Table, error) {
	var name string
	if file != "" {
		p, err := loadSettings(file)
		if err != nil {
			return nil, err
		}
		name = p.Name
	}
	var done []*journal.Run
	o, err := journal.ReadOverview(log)
	if err == nil {
		done, err = o.Recent(pace.Sessions, func(r *journal.Run) bool {
			return name == "" || r.Started != nil && r.Started.Player == name
		})
	}
	if err != nil {
		fault.Print(c.ErrOrStderr(), fault.At("your own pace is not known: cannot read the journal", err))
	}
	return pace.Of(done), nil
}

// showPreview writes sessions: one, a table of several, or their steps.
func showPreview(w io.Writer, plans []*plan.Plan, own *pace.Table, steps bool) error {
	switch {
	case steps:
		for _, p := range plans {
			if err := preview.Steps(w, p); err != nil {
				return err
			}
		}
		return nil
	case len(plans) == 1:
		e := own.Length(plans[0])
		return preview.Text(w, plans[0], &e, shownOn(w))
	}
	return preview.Table(w, plans)
}

// shownOn returns the characters that the terminal is to be drawn on with.
func shownOn(w io.Writer) safetext.Repertoire {
	font := fontOf(w)
	if glyph.Best(os.Getenv, runtime.GOOS, font) == glyph.Plain {
		return safetext.Repertoire{}
	}
	return font
}

// documents returns one document, or a list of several: plans of weeks first.
func (f *previewFlags) documents(plans []*plan.Plan, season []*plan.Weeks, own *pace.Table) any {
	var docs []any
	for _, s := range season {
		d := preview.OfWeeks(s)
		if f.days.week != 0 {
			d = d.Only(f.days.week)
		}
		docs = append(docs, d)
	}
	for _, p := range plans {
		docs = append(docs, preview.WithPace(p, own.Length(p)))
	}
	if len(docs) == 1 {
		return docs[0]
	}
	return docs
}

// writeJSON writes v as indented JSON.
func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}

// openAll opens everything that is named. It reports every problem in every
// file before it gives up.
func openAll(c *cobra.Command, names []string) ([]weeks.Opened, error) {
	var all []weeks.Opened
	var failed error
	for _, name := range names {
		o, err := openAny(c, name)
		if err != nil {
			report(err, c.ErrOrStderr())
			failed = fmt.Errorf("%w: %s", errFound, name)
			continue
		}
		all = append(all, o)
	}
	return all, failed
}
