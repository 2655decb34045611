package main

import (
	"cmp"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"coldfloor/internal/export"
	"coldfloor/internal/fault"
	"coldfloor/internal/runs"
	"coldfloor/internal/safetext"
	"coldfloor/internal/texttable"
	"coldfloor/internal/wholefile"
)

// exportOptions is what the export command is asked for.
type exportOptions struct {
	journal                  string
	csv, jsonl, parquet      bool
	table, out               string
	raw, force, listsColumns bool
	same                     []string
}

// newExport returns the command that writes what was done as tables.
func newExport() *cobra.Command {
	var o exportOptions
	c := &cobra.Command{
		Use:   "export [JOURNAL|FOLDER…] -o FOLDER",
		Short: "Write what was done as tables for a spreadsheet or a database",
		Long: `Write the sessions, sets and rests in the journal, or in the journals named, as
tables with a row each: CSV (RFC 4180, in UTF-8), JSON Lines or Parquet. All
three go into a folder; with --table one of them goes into a file, or to
standard output. A session that arrives in several journals is written once.
Deleted sessions and rehearsals are left out.

In CSV, a text that a spreadsheet would run as a formula gets an apostrophe in
front, as does one that begins with an apostrophe: take one off to get the text
back. --raw leaves texts as they are, for databases.
A table written before is replaced; any other file is not.`,
		RunE: func(c *cobra.Command, args []string) error {
			if o.listsColumns {
				return listColumns(c.OutOrStdout())
			}
			return o.run(c, args)
		},
	}
	journalFlag(c.Flags(), &o.journal)
	f := c.Flags()
	f.BoolVar(&o.csv, "csv", false, "write CSV (default)")
	f.BoolVar(&o.jsonl, "jsonl", false, "write JSON Lines")
	f.BoolVar(&o.parquet, "parquet", false, "write Parquet")
	f.StringVar(&o.table, "table", "", "write one `TABLE`: sessions, sets or rests")
	f.StringVarP(&o.out, "output", "o", "", "the `FOLDER` to write to, or with --table the file; - prints it")
	f.BoolVar(&o.raw, "raw", false, "in CSV, leave texts as they are, even if a spreadsheet would run them")
	f.BoolVar(&o.force, "force", false, "replace files even if they are not such tables")
	sameFlag(c, &o.same)
	f.BoolVar(&o.listsColumns, "columns", false, "list the columns of the tables, and write nothing")
	return c
}

// format returns the format asked for.
func (o *exportOptions) format() export.Format {
	switch {
	case o.jsonl:
		return export.JSONL
	case o.parquet:
		return export.Parquet
	}
	return export.CSV
}

// tables returns the tables asked for.
func (o *exportOptions) tables() ([]export.Table, error) {
	t := export.Table(o.table)
	switch {
	case o.csv && o.jsonl || o.csv && o.parquet || o.jsonl && o.parquet:
		return nil, usageError{"only one format can be written at once", "write --csv, --jsonl or --parquet"}
	case o.table == "" && o.out == "":
		return nil, usageError{"no folder to write to is given", "add -o and a folder, such as -o season, or --table and a table"}
	case o.table == "":
		return export.Tables, nil
	case !slices.Contains(export.Tables, t):
		return nil, usageError{fmt.Sprintf("no table is called %q", o.table), "write --table sessions, sets or rests"}
	}
	return []export.Table{t}, nil
}

// run reads the journals and writes the tables.
func (o *exportOptions) run(c *cobra.Command, paths []string) error {
	tables, err := o.tables()
	if err != nil {
		return err
	}
	if o.out == "" && o.parquet && isTerminal(c.OutOrStdout()) {
		return usageError{"Parquet cannot be shown here", "add -o and a file"}
	}
	if len(paths) == 0 {
		paths = []string{o.journal}
	}
	reading, end := longReading(c, "writing the tables", runs.TwoThirds)
	defer end()
	reading.Same = o.same
	pile, err := runs.Gather(paths, reading)
	if err != nil {
		return err
	}
	defer pile.Close()
	if err := o.write(c, tables, pile, reading.Stop); err != nil {
		return err
	}
	end()
	return tellLeftOut(c.ErrOrStderr(), pile.Files)
}

// write writes the tables, all or none; none if stopped returns an error.
func (o *exportOptions) write(c *cobra.Command, tables []export.Table, pile *runs.Pile, stopped func() error) error {
	var files export.Files
	defer files.Discard()
	out, err := o.open(c, &files, tables, pile)
	if err != nil {
		return err
	}
	e, err := export.New(export.Options{Format: o.format(), Raw: o.raw}, out)
	if err != nil {
		return err
	}
	if err := cmp.Or(e.All(pile), e.Close(), stopped()); err != nil {
		return err
	}
	if err := files.Commit(); err != nil {
		return err
	}
	if n := e.Differ; n > 0 {
		fmt.Fprintf(c.ErrOrStderr(), "coldfloor: %d lines occur twice and differ; the first counts\n", n)
	}
	return nil
}

// open opens what the tables are written to.
func (o *exportOptions) open(c *cobra.Command, files *export.Files, tables []export.Table, pile *runs.Pile) (map[export.Table]io.Writer, error) {
	if o.table != "" && (o.out == "" || o.out == "-") {
		return map[export.Table]io.Writer{tables[0]: c.OutOrStdout()}, nil
	}
	info, err := os.Stat(o.out)
	folder := o.table == "" || err == nil && info.IsDir()
	if folder {
		if err := wholefile.Folder(o.out, 0o700); err != nil {
			return nil, err
		}
	}
	var journals []string
	for _, f := range pile.Files {
		journals = append(journals, f.Path)
	}
	out := map[export.Table]io.Writer{}
	for _, t := range tables {
		path := o.out
		if folder {
			path = filepath.Join(o.out, string(t)+"."+string(o.format()))
		}
		if out[t], err = files.Add(path, t, o.format(), o.force, journals); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// tellLeftOut says what of the journals could not be used. The error is that a
// whole file could not be read to its end.
func tellLeftOut(stderr io.Writer, files []runs.File) error {
	var failed error
	for _, f := range files {
		name := safetext.Clean(f.Path)
		switch n := f.Damaged + f.Unknown; {
		case f.Damaged > 0 && f.Lines+f.Unknown == 0 && f.Err == nil:
			fault.Print(stderr, fault.New("name journals, or a folder of them", "%s is not a journal: no line of it can be read", safetext.Quote(f.Path)))
			failed = errFound
			continue
		case n > 0:
			fmt.Fprintf(stderr, "coldfloor: %s: %d of %d lines left out; the first: %s\n", name, n, f.Lines+n, safetext.Clean(f.First.Error()))
		}
		if f.Err != nil {
			what := "cannot be read to its end"
			if f.Lines+f.Damaged+f.Unknown == 0 {
				what = "cannot be read"
			}
			fmt.Fprintf(stderr, "coldfloor: %s: %s: %s\n", name, what, safetext.Clean(f.Err.Error()))
			failed = errFound
		}
	}
	return failed
}

// listColumns writes what stands in every column of the tables.
func listColumns(w io.Writer) error {
	var b strings.Builder
	for i, t := range export.Tables {
		if i > 0 {
			b.WriteByte('\n')
		}
		table := texttable.Table{Header: []string{string(t), "holds", "may be missing", "meaning"}}
		for _, c := range export.Columns(t) {
			kind, missing := c.Type, ""
			if c.Free {
				kind = "typed text"
			}
			if c.Optional {
				missing = "yes"
			}
			table.Rows = append(table.Rows, []string{c.Name, kind, missing, c.Meaning})
		}
		b.WriteString(table.String())
	}
	_, err := io.WriteString(w, b.String())
	return err
}
