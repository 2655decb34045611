package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"coldfloor/internal/fault"
	"coldfloor/internal/paper"
	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/sheet"
)

// sheetFlags is how sheet was called.
type sheetFlags struct {
	file, paper  string
	language     string
	large, force bool
}

// newSheet returns the command that sets a session on paper.
func newSheet() *cobra.Command {
	var f sheetFlags
	var log string
	var day dayFlags
	c := &cobra.Command{
		Use:   "sheet SESSION|WEEKS -o FILE.pdf|.html|.md",
		Short: "Put a session on paper, to follow from the floor",
		Long: `Put a session on paper: a table to follow from the floor and to tick round by
round, with rests in large type, cues, easier variants and lines for effort and
notes. SESSION is a built-in name or a file. The ending of FILE names the
format; a page of HTML can be ticked on a screen too, and fits the paper when it
is printed. A sheet written before is replaced; any other file is not.

In a plan of weeks it is today's session, or that of the day that --on names.`,
		Args: argsError(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error {
			return f.write(c, args[0], func() (*plan.Plan, error) { return day.one(c, args[0], log) })
		},
	}
	c.Flags().StringVarP(&f.file, "output", "o", "", "the `FILE` to write: .pdf, .html or .md")
	c.Flags().StringVar(&f.paper, "paper", paper.Sizes[0].Name, "the `SIZE` of the paper of .pdf and .html: a4 or letter")
	c.Flags().BoolVar(&f.large, "large", false, "set a .pdf for the wall, to be read from 2 m: a block a page, in capitals")
	c.Flags().BoolVar(&f.force, "force", false, "replace the file even if it is not a sheet")
	languageFlag(c, &f.language)
	day.add(c)
	journalFlag(c.Flags(), &log)
	return c
}

// write writes the sheet of the session that open gives to a file.
func (f sheetFlags) write(c *cobra.Command, name string, open func() (*plan.Plan, error)) error {
	format, ok := sheet.FormatOf(f.file)
	switch {
	case f.file == "":
		return usageError{"no file to write is given", "add -o and a file, such as -o session.pdf"}
	case !ok:
		return usageError{fmt.Sprintf("%q does not end in .pdf, .html or .md", f.file), "the ending names the format, such as -o session.pdf"}
	}
	if f.large && format != sheet.PDF {
		return usageError{"a large sheet is a .pdf", "add -o and a file, such as -o wall.pdf"}
	}
	size, ok := paper.FindSize(f.paper)
	if !ok {
		return usageError{fmt.Sprintf("no paper is called %q", f.paper), "write --paper a4 or --paper letter"}
	}
	mine, err := settings.Load()
	if err != nil {
		return err
	}
	p, err := open()
	if err != nil {
		return err
	}
	printed, err := sheet.Of(p, languageOf(f.language, mine)).WriteFile(f.file, format, size, f.large, f.force, inputs(name, p.Session.Name)...)
	if err != nil {
		return err
	}
	tellLacking(c, printed.Missing)
	return nil
}

// tellLacking says which characters a sheet could not show.
func tellLacking(c *cobra.Command, missing []rune) {
	if len(missing) == 0 {
		return
	}
	const most = 20
	var names []string
	for _, r := range missing[:min(len(missing), most)] {
		names = append(names, paper.NameOf(r))
	}
	if more := len(missing) - most; more > 0 {
		names = append(names, fmt.Sprintf("and %d more", more))
	}
	fault.Print(c.ErrOrStderr(), fault.New("a sheet that ends in .html shows what the reader's fonts have",
		"the font of the sheet lacks %s; %c stands in their place", strings.Join(names, ", "), paper.Lacking))
}
