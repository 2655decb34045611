package main

import (
	"bytes"
	"fmt"
	"io"
	"strconv"

	"github.com/spf13/cobra"

	"coldfloor/internal/journal"
	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
	"coldfloor/internal/preview"
	"coldfloor/internal/safetext"
	"coldfloor/internal/texttable"
	"coldfloor/internal/units"
	"coldfloor/internal/wholefile"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// newSessions returns the command that lists the built-in sessions.
func newSessions() *cobra.Command {
	c := &cobra.Command{
		Use:   "sessions",
		Short: "List the built-in sessions and plans of weeks",
		Args:  noSuchCommand,
		RunE: func(c *cobra.Command, _ []string) error {
			return listSessions(c.OutOrStdout())
		},
	}
	var day dayFlags
	var out string
	var force bool
	show := &cobra.Command{
		Use:   "show NAME",
		Short: "Print the file of a built-in session or plan of weeks, to start your own from",
		Long: `Print the file of a built-in session or plan of weeks, to start your own from.
For a plan of weeks, --on prints the sessions of one day and --week those of one
week, as they are then.`,
		Args: argsError(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error {
			if out == "" || out == "-" {
				return showSource(c, c.OutOrStdout(), args[0], &day)
			}
			return saveSource(c, args[0], &day, out, force)
		},
	}
	day.add(show)
	show.Flags().StringVarP(&out, "output", "o", "", "write to `FILE` instead of printing")
	show.Flags().BoolVar(&force, "force", false, "replace FILE if it exists")
	c.AddCommand(show)
	return c
}

// saveSource writes to a file what showSource prints.
func saveSource(c *cobra.Command, name string, day *dayFlags, file string, force bool) error {
	var source bytes.Buffer
	if err := showSource(c, &source, name, day); err != nil {
		return err
	}
	if err := wholefile.Write(file, source.Bytes(), wholefile.Options{Mode: 0o644, Force: force, Inputs: inputs(name)}); err != nil {
		return err
	}
	fmt.Fprintf(c.OutOrStdout(), "wrote %s\n", safetext.Clean(file))
	return nil
}

// showSource prints the file of what is named, or of the sessions of days.
func showSource(c *cobra.Command, w io.Writer, name string, day *dayFlags) error {
	o, err := openAny(c, name)
	if err != nil {
		return err
	}
	if o.Plan != nil && !day.given() {
		_, err = w.Write(o.Plan.Source)
		return err
	}
	plans, err := day.plansOf(o)
	for i, p := range plans {
		if i > 0 {
			fmt.Fprintln(w, "---")
		}
		if _, err := w.Write(p.Session.Source); err != nil {
			return err
		}
	}
	return err
}

// listSessions writes the built-in sessions, a line each.
func listSessions(w io.Writer) error {
	t := texttable.Table{
		Header: []string{"name", "title", "level", "length", "blocks", "contacts"},
		Right:  []bool{false, false, false, true, true, true},
	}
	for _, b := range sessions.Builtins() {
		s, err := b.Session()
		if err != nil {
			return err
		}
		p := plan.Of(s)
		t.Rows = append(t.Rows, []string{b.Name, s.Title, string(s.Level), units.Clock(p.Total),
			strconv.Itoa(len(p.Blocks)), journal.Count{N: p.Contacts, Known: jumps.AllCounted(s.Blocks...)}.Cell()})
	}
	if _, err := io.WriteString(w, t.String()+"\n"); err != nil {
		return err
	}
	return listPlans(w)
}

// listPlans writes the built-in plans of weeks, a line each.
func listPlans(w io.Writer) error {
	t := texttable.Table{
		Header: []string{"plan of weeks", "title", "level", "weeks", "sessions", "contacts"},
		Right:  []bool{false, false, false, true, true, true},
	}
	for _, b := range weeks.Builtins() {
		p, err := b.Plan()
		if err != nil {
			return err
		}
		w := plan.OfWeeks(p)
		t.Rows = append(t.Rows, []string{b.Name, p.Title, string(p.Level), strconv.Itoa(p.Count),
			strconv.Itoa(len(p.Days())), journal.Count{N: w.Contacts, Known: preview.AllCounted(w)}.Cell()})
	}
	_, err := io.WriteString(w, t.String())
	return err
}
