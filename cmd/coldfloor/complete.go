package main

import (
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"coldfloor/internal/check"
	"coldfloor/internal/export"
	"coldfloor/internal/journal"
	"coldfloor/internal/logbook"
	"coldfloor/internal/review"
	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// addCompletion has a shell complete what is typed after a command by what the
// command's usage line asks for, and the values of flags that have few.
func addCompletion(c *cobra.Command) {
	switch use := c.Use; {
	case len(c.ValidArgs) > 0:
	case strings.Contains(use, "SESSION"), strings.Contains(use, " NAME"):
		c.ValidArgsFunction = completeSession
	case strings.Contains(use, "WEEKS"):
		c.ValidArgsFunction = completeWeeks
	case strings.Contains(use, "RUN|last"):
		c.ValidArgsFunction = completeRun
	}
	c.Flags().VisitAll(func(f *pflag.Flag) {
		if values := valuesOf(f); values != nil {
			err := c.RegisterFlagCompletionFunc(f.Name, cobra.FixedCompletions(values, cobra.ShellCompDirectiveNoFileComp))
			if err != nil { // a flag visited twice: not the user's fault
				panic(err)
			}
		}
	})
	for _, sub := range c.Commands() {
		addCompletion(sub)
	}
}

// valuesOf returns what can be given to a flag; nil if that is free.
func valuesOf(flag *pflag.Flag) []string {
	if c, ok := flag.Value.(choice); ok {
		return c.words
	}
	switch flag.Name {
	case "explain":
		return check.Names()
	case "language", "voice":
		return []string{"de", "en"}
	case "level":
		return wordsOf([]sessions.Level{sessions.Beginner, sessions.Intermediate, sessions.Advanced})
	case "paper":
		return []string{"a4", "letter"}
	case "sort":
		return wordsOf(review.Columns)
	case "table":
		return wordsOf(export.Tables)
	case "train":
		return []string{"all", "horizontal", "lateral", "strength", "vertical"}
	}
	return nil
}

// wordsOf returns values as plain strings.
func wordsOf[S ~string](values []S) []string {
	var all []string
	for _, v := range values {
		all = append(all, string(v))
	}
	return all
}

// completeSession completes the name of a built-in session or plan of weeks,
// or that of a file.
func completeSession(c *cobra.Command, args []string, typed string) ([]cobra.Completion, cobra.ShellCompDirective) {
	var names []cobra.Completion
	for _, b := range sessions.Builtins() {
		title := "session"
		if s, err := b.Session(); err == nil {
			title = s.Title
		}
		names = append(names, cobra.CompletionWithDesc(b.Name, title))
	}
	plans, directive := completeWeeks(c, args, typed)
	return append(names, plans...), directive
}

// completeWeeks completes the name of a built-in plan of weeks or of a file.
// A shell that has been given a name looks for no file by itself, so the YAML
// files that fit are among the names.
func completeWeeks(_ *cobra.Command, _ []string, typed string) ([]cobra.Completion, cobra.ShellCompDirective) {
	var names []cobra.Completion
	for _, b := range weeks.Builtins() {
		names = append(names, cobra.CompletionWithDesc(b.Name, "plan of weeks"))
	}
	for _, ending := range []string{"*.yaml", "*.yml"} {
		files, err := filepath.Glob(typed + ending)
		if err != nil { // typed is no pattern: the shell looks for files itself
			break
		}
		names = append(names, files...)
	}
	return names, cobra.ShellCompDirectiveDefault
}

// completeRun completes the name of a run in the journal, the latest first.
func completeRun(c *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
	names := []cobra.Completion{cobra.CompletionWithDesc(logbook.Last, "the latest")}
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	path, err := c.Flags().GetString("journal")
	if err != nil {
		return names, cobra.ShellCompDirectiveNoFileComp
	}
	j, err := journal.At(path)
	if err != nil {
		return names, cobra.ShellCompDirectiveNoFileComp
	}
	all, err := j.Overview()
	if err != nil {
		return names, cobra.ShellCompDirectiveNoFileComp
	}
	for r := range all.Backward() {
		if len(names) > latest {
			break
		}
		names = append(names, cobra.CompletionWithDesc(r.ID, units.DateOf(r.Start).String()+" "+safetext.Clean(r.Title())))
	}
	return names, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveKeepOrder
}
