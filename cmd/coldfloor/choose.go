package main

import (
	"fmt"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"coldfloor/internal/nearest"
	"coldfloor/sessions/weeks"
)

// chooseFromList makes c, which is called with no word after it, run a session
// as the run command does without one, and gives it that command's flags. The
// help of c leaves them to that of run.
func chooseFromList(c *cobra.Command) {
	var o runOptions
	o.add(c)
	c.Flags().VisitAll(func(f *pflag.Flag) { f.Hidden = true })
	c.Args = noSuchCommand
	c.RunE = func(c *cobra.Command, args []string) error {
		if c.Flags().NFlag() == 0 && !(isTerminal(c.OutOrStdout()) && isTerminal(c.InOrStdin())) {
			return c.Help()
		}
		return o.run(c, args)
	}
}

// noSuchCommand refuses a word that is no command, and says what was probably
// meant: the nearest one, or after the program's name a session to run.
func noSuchCommand(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	e := usageError{message: fmt.Sprintf("no command %q", args[0]), hint: c.CommandPath() + " --help lists the commands"}
	var names []string
	for _, sub := range c.Commands() {
		names = append(names, sub.Name())
	}
	if near := nearest.Word(args[0], names); near != "" {
		e.hint = "did you mean: " + c.CommandPath() + " " + near
	} else if near := weeks.Near(args[0]); near != "" && !c.HasParent() {
		e.hint = "did you mean: " + c.CommandPath() + " run " + near
	}
	return e
}
