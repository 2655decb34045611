package main

import (
	"io"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"coldfloor/internal/plan"
	"coldfloor/internal/texttable"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// newSessions returns the command that lists the built-in sessions.
func newSessions() *cobra.Command {
	c := &cobra.Command{
		Use:   "sessions",
		Short: "List the built-in sessions",
		Args:  argsError(cobra.NoArgs),
		RunE: func(c *cobra.Command, _ []string) error {
			return listSessions(c.OutOrStdout())
		},
	}
	c.AddCommand(&cobra.Command{
		Use:   "show NAME",
		Short: "Print a built-in session's file, to start one's own from",
		Args:  argsError(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error {
			s, err := sessions.Open(args[0])
			if err != nil {
				return err
			}
			_, err = c.OutOrStdout().Write(s.Source)
			return err
		},
	})
	return c
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
			strconv.Itoa(len(p.Blocks)), strconv.Itoa(p.Contacts)})
	}
	_, err := io.Copy(w, strings.NewReader(t.String()))
	return err
}
