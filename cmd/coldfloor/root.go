package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"runtime"
	"strconv"
	"strings"
	"syscall"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"coldfloor/internal/cautions"
	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/nearest"
	"coldfloor/internal/wholefile"
	"coldfloor/internal/yamlread"
)

// Exit codes.
const (
	exitFine     = 0
	exitProblems = 1
	exitUsage    = 2
)

// usageError is a command wrongly used; hint says how to use it right.
type usageError struct{ message, hint string }

// Error implements error; the hint is printed apart.
func (e usageError) Error() string { return e.message }

// errFound is returned by a command that has already printed the problems it
// found and only needs the exit code.
var errFound = errors.New("problems found")

// execute is the whole command; it returns the exit code.
func execute(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	root := newRoot()
	root.SetArgs(args)
	root.SetIn(stdin)
	out, told := newOutput(stdout), newOutput(stderr)
	root.SetOut(out)
	root.SetErr(told)
	err := root.Execute()
	if err == nil {
		err = out.err
	}
	return report(err, told)
}

// newRoot returns the command tree.
func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:           "coldfloor",
		Short:         "Speed and power sessions for people who train alone",
		Long:          "Speed and power sessions for people who train alone: a coach writes a session, a\nplayer does it at home, the coach reviews what was really done.\n\nOn a terminal, coldfloor alone opens on today's session, or on a list to choose\none from. It takes the flags of coldfloor run.\n\n" + cautions.Help(),
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	chooseFromList(root)
	root.Version = cmp.Or(journal.Program(), "unknown, built from its source")
	root.SetFlagErrorFunc(flagError)
	root.AddCommand(
		newCalendar(),
		newCheck(),
		newExport(),
		newLog(),
		newNew(),
		newPreview(),
		newReview(),
		newNext(),
		newHandout(),
		newRun(),
		newSchema(),
		newSessions(),
		newSettings(),
		newSheet(),
		newSounds(),
		newTrack(),
	)
	addCompletion(root)
	root.InitDefaultCompletionCmd()
	root.InitDefaultHelpCmd()
	for _, c := range root.Commands() {
		switch c.Name() {
		case "completion":
			c.Short = "Print a script with which a shell completes commands, flags and names"
			c.Long = c.Short + ".\nThe help of each shell says how to use it."
			c.Args = noSuchCommand
			c.RunE = func(c *cobra.Command, _ []string) error { return c.Help() }
		case "help":
			c.Short = "Show the help of a command"
			c.Long = c.Short + ", such as\n  coldfloor help log show"
			c.Args = func(_ *cobra.Command, args []string) error {
				of, left, err := root.Find(args)
				if err == nil && len(left) > 0 && !of.HasSubCommands() {
					return nil
				}
				if len(left) > 0 {
					return noSuchCommand(of, left)
				}
				return err
			}
		}
	}
	return root
}

// report prints err, if any, and returns the exit code for it.
func report(err error, stderr io.Writer) int {
	var usage usageError
	var problems yamlread.Problems
	switch {
	case err == nil, isClosedPipe(err): // nobody reads on: what was asked for is said
		return exitFine
	case errors.Is(err, errFound):
		return exitProblems
	case errors.As(err, &usage):
		fault.Print(stderr, fault.New(usage.hint, "%s", usage.message))
		return exitUsage
	case errors.As(err, &problems):
		fault.PrintLines(stderr, problems.Error())
		return exitProblems
	}
	fault.Print(stderr, ofStandardOutput(err))
	return exitProblems
}

// ofStandardOutput says that standard output could not be written to, which the
// system calls by the name of a file that nobody gave.
func ofStandardOutput(err error) error {
	var e *fs.PathError
	if !errors.As(err, &e) || e.Path != os.Stdout.Name() {
		return err
	}
	hint := "send it somewhere else"
	if wholefile.IsFull(e.Err) {
		hint = "free some room, or send it somewhere else"
	}
	return fault.New(hint, "cannot write to standard output: %w", e.Err)
}

// isClosedPipe reports whether err says that the reader of the output has gone.
func isClosedPipe(err error) bool {
	const brokenPipe, noData, notConnected = 109, 232, 233 // Windows has three names for it
	var n syscall.Errno
	return errors.Is(err, syscall.EPIPE) || runtime.GOOS == "windows" && errors.As(err, &n) && (n == brokenPipe || n == noData || n == notConnected)
}

// argsError turns a wrong number of words into a usage error that shows how
// the command is called.
func argsError(check cobra.PositionalArgs) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if err := check(c, args); err != nil {
			return usageError{argsProblem(c, args, err), "usage: " + c.UseLine()}
		}
		return nil
	}
}

// flagMessage says what is wrong with a flag, without the words of the packages
// that read it.
func flagMessage(err error) string {
	var lacking *pflag.ValueRequiredError
	if errors.As(err, &lacking) {
		return "--" + lacking.GetFlag().Name + " needs a value"
	}
	var invalid *pflag.InvalidValueError
	if !errors.As(err, &invalid) {
		return err.Error()
	}
	given := fmt.Sprintf("--%s %q", invalid.GetFlag().Name, invalid.GetValue())
	var number *strconv.NumError
	if !errors.As(err, &number) {
		why := strings.TrimPrefix(errors.Unwrap(invalid).Error(), invalid.GetValue()+" ")
		return given + " " + strings.Replace(why, "must be formatted as key=value", "has no = with a value after it", 1)
	}
	switch number.Func {
	case "ParseBool":
		return given + " is neither true nor false"
	case "ParseFloat":
		return given + " is not a number"
	}
	return given + " is not a whole number, or is too large"
}

// argsProblem says what is wrong with the arguments of a command: none are given
// though its usage names some, or more than it takes, or others.
func argsProblem(c *cobra.Command, args []string, err error) string {
	_, name, _ := strings.Cut(c.CommandPath(), " ")
	_, takes, _ := strings.Cut(c.Use, " ")
	takes, _, _ = strings.Cut(takes, " ")
	switch {
	case len(args) > 0 && len(c.ValidArgs) > 0 && strings.HasPrefix(err.Error(), "invalid argument"):
		return fmt.Sprintf("%s takes %s, not %q", name, strings.Join(c.ValidArgs, " or "), args[0])
	case len(args) > 0 && !c.HasSubCommands() && strings.HasPrefix(err.Error(), "unknown command"):
		return fmt.Sprintf("%s takes no arguments, and %q is one too many", name, args[0])
	case !strings.Contains(err.Error(), "arg(s)"): // a check of our own, which says more than a number
	case takes != "" && len(args) == 0:
		return name + " needs " + takes
	case takes != "" && len(args) > 1:
		return fmt.Sprintf("%s takes %s, and %q is one too many", name, takes, args[1])
	}
	return err.Error()
}

// atMostOne has a command refuse more than one of some flags.
func atMostOne(c *cobra.Command, names ...string) {
	c.PreRunE = func(c *cobra.Command, _ []string) error {
		var given []string
		for _, n := range names {
			if c.Flags().Changed(n) {
				given = append(given, "--"+n)
			}
		}
		if len(given) > 1 {
			return usageError{strings.Join(given, " and ") + " do not go together", "leave out all but one"}
		}
		return nil
	}
}

// flagError says in plain words what a flag's value must be, and names the
// nearest flag to one that does not exist.
func flagError(c *cobra.Command, err error) error {
	e := usageError{message: flagMessage(err), hint: cmp.Or(fault.Hint(err), c.CommandPath()+" --help lists the flags")}
	var unknown *pflag.NotExistError
	if !errors.As(err, &unknown) {
		return e
	}
	var names []string
	c.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	if near := nearest.Word(unknown.GetSpecifiedName(), names); near != "" {
		e.hint = "did you mean: --" + near
	}
	return e
}
