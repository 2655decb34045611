package main

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"runtime"
	"slices"

	"github.com/spf13/cobra"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/pace"
	"coldfloor/internal/plan"
	"coldfloor/internal/preview"
	"coldfloor/tui/glyph"
)

// newPreview returns the command that shows sessions before they are run.
func newPreview() *cobra.Command {
	var asJSON, steps bool
	var log, file string
	c := &cobra.Command{
		Use:   "preview SESSION…",
		Short: "Show a session's length and dose before it is run",
		Long: `Show a session's length and its parts, block by block, with sets, reps, foot
contacts and work to rest. SESSION is a built-in name or a file. For several
sessions it shows a table, a line each.

Your length is how long the session takes at your own pace, from the sets that
you ended yourself in the journal, with the range that four sessions of five lie
in. It says so where there are too few of them.`,
		Args: argsError(cobra.MinimumNArgs(1)),
		RunE: func(c *cobra.Command, args []string) error {
			plans, err := plansOf(c, args)
			if err != nil {
				return err
			}
			own, err := ownPace(c, log, file)
			if err != nil {
				return err
			}
			return showPreview(c.OutOrStdout(), plans, own, asJSON, steps)
		},
	}
	journalFlag(c, &log)
	settingsFlag(c, &file)
	c.Flags().BoolVar(&asJSON, "json", false, "write JSON: an object, or an array of them for several sessions")
	c.Flags().BoolVar(&steps, "steps", false, "list the timeline, step by step")
	atMostOne(c, "json", "steps")
	return c
}

// ownPace returns what the journal tells of the player's pace. One that cannot
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
	done, _, err := journal.Load(log)
	if err != nil {
		fault.Print(c.ErrOrStderr(), fault.At("your own pace is not known: cannot read the journal", err))
	}
	if name != "" {
		done = slices.DeleteFunc(done, func(r *journal.Run) bool { return r.Started == nil || r.Started.Player != name })
	}
	return pace.Of(done), nil
}

// showPreview writes the previews in the form asked for.
func showPreview(w io.Writer, plans []*plan.Plan, own *pace.Table, asJSON, steps bool) error {
	switch {
	case asJSON:
		return writeJSON(w, documents(plans, own))
	case steps:
		for _, p := range plans {
			if err := preview.Steps(w, p); err != nil {
				return err
			}
		}
		return nil
	case len(plans) == 1:
		e := own.Length(plans[0])
		return preview.Text(w, plans[0], &e, plainGlyphs())
	}
	return preview.Table(w, plans)
}

// plainGlyphs reports whether the terminal is to be drawn on in ASCII alone.
func plainGlyphs() bool { return glyph.Best(os.Getenv, runtime.GOOS) == glyph.Plain }

// documents returns one document, or a list of several.
func documents(plans []*plan.Plan, own *pace.Table) any {
	docs := make([]preview.Document, len(plans))
	for i, p := range plans {
		docs[i] = preview.WithPace(p, own.Length(p))
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

// plansOf opens every session and lays it out. It tells of every problem in
// every file before it gives up.
func plansOf(c *cobra.Command, names []string) ([]*plan.Plan, error) {
	var plans []*plan.Plan
	var failed error
	for _, name := range names {
		p, err := planOf(c, name)
		if err != nil {
			report(err, c.ErrOrStderr())
			failed = fmt.Errorf("%w: %s", errFound, name)
			continue
		}
		plans = append(plans, p)
	}
	return plans, failed
}
