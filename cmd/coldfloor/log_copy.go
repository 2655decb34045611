package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/fault"
	"coldfloor/internal/logbook"
	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
	"coldfloor/internal/wholefile"
)

// copyKind tells a journal that this command wrote.
var copyKind = wholefile.Kind{Name: "a journal", Begins: []byte(`{"v":`), Empty: true}

// newLogCopy returns the command that copies what to send to a coach.
func newLogCopy(o *logOptions) *cobra.Command {
	var out, since string
	c := &cobra.Command{
		Use:   "copy -o FILE|FOLDER",
		Short: "Copy the log into one file to send, all of it or since a date",
		Long: `Copy the log into one file to send to a coach, who can review it as it is.
In a folder the file is named after the player and the dates. -o - prints it
instead of writing a file. With --since it holds the sessions that were done,
rated or corrected on that date or later, and the one before them, by which a
review can tell that two copies are one player's. It may mention pain: only you
can read it until you send it.`,
		Args: argsError(cobra.NoArgs),
		RunE: func(c *cobra.Command, _ []string) error {
			if out == "" {
				return usageError{"no file to write to is given", "add -o and a file, or a folder such as -o ."}
			}
			var from time.Time
			if since != "" {
				day, err := units.ParseDate(since)
				if err != nil {
					return wrongValue(fault.New(units.DateHint, "--since %q %v", since, err))
				}
				from = day.In(time.Local, 0)
			}
			return o.copyTo(c, out, from)
		},
	}
	c.Flags().StringVarP(&out, "output", "o", "", "the `FILE` to write, a folder for it, or - to print it")
	c.Flags().StringVar(&since, "since", "", "only what was done or said on that `DATE` or later, such as 2026-12-07")
	return c
}

var errNothingToCopy = fault.New("coldfloor log lists what there is", "there is nothing to copy")

// copyTo copies the journal to out.
func (o *logOptions) copyTo(c *cobra.Command, out string, since time.Time) error {
	if _, err := o.load(c.ErrOrStderr()); err != nil {
		return err
	}
	f, err := os.Open(o.journal)
	if errors.Is(err, fs.ErrNotExist) {
		return errNothingToCopy
	}
	if err != nil {
		return fmt.Errorf("cannot read the journal: %w", err)
	}
	defer f.Close()
	copied, err := logbook.Copy(f, since)
	if err != nil {
		return fmt.Errorf("cannot read the journal: %w", err)
	}
	switch {
	case copied.Runs == 0 && !since.IsZero():
		return fault.New("leave --since out to copy all of the log", "nothing was done or said on %s or later", since.Format(time.DateOnly))
	case copied.Runs == 0:
		return errNothingToCopy
	}
	if out == "-" {
		_, err = c.OutOrStdout().Write(copied.Text)
		return err
	}
	if info, err := os.Stat(out); err == nil && info.IsDir() {
		out = filepath.Join(out, copied.Name)
	}
	err = wholefile.Write(out, copied.Text, wholefile.Options{Mode: 0o600, Firm: true, Inputs: []string{o.journal}, Ours: &copyKind})
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.OutOrStdout(), "%s: %s\n", safetext.Clean(out), units.Count(copied.Runs, "session"))
	return err
}
