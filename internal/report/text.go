package report

import (
	"fmt"
	"io"
	"strings"

	"coldfloor/internal/safetext"
	"coldfloor/internal/texttable"
)

// proseWidth is how wide paragraphs are set, in cells.
const proseWidth = 78

// Text writes the review as plain text. Of a squad it writes the table alone,
// unless whole is set: then every player's part too.
func (d *Doc) Text(w io.Writer, whole bool) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s\n", safetext.Clean(d.Title), d.About)
	for i, p := range d.Parts {
		if i > 0 && !whole {
			break
		}
		if p.Title != "" {
			title := safetext.Clean(p.Title)
			fmt.Fprintf(&b, "\n\n%s\n%s\n", title, strings.Repeat("=", safetext.Width(title)))
		}
		for _, s := range p.Sections {
			b.WriteString("\n" + strings.TrimPrefix(SectionText(s), "\n"))
		}
	}
	paragraphs(&b, d.Left)
	if len(d.Meaning) > 0 {
		b.WriteString("\nWhat the figures can and cannot say\n")
	}
	for _, m := range d.Meaning {
		paragraphs(&b, []string{m.Name + ": " + strings.Join(m.Lines, " ")})
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// SectionText returns a section as plain text, its charts left out: their
// figures stand in its tables.
func SectionText(s Section) string {
	var b strings.Builder
	if s.Title != "" {
		fmt.Fprintln(&b, safetext.Clean(s.Title))
	}
	b.WriteString(FactsText(s.Facts))
	if len(s.Table.Rows) > 0 {
		if len(s.Facts) > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(s.Table.Text())
	}
	paragraphs(&b, s.Notes)
	return b.String()
}

// FactsText returns facts as plain text, their names in a column.
func FactsText(facts []Fact) string {
	if len(facts) == 0 {
		return ""
	}
	var t texttable.Table
	for _, f := range facts {
		for i, l := range f.Lines {
			name := f.Name
			if i > 0 {
				name = ""
			}
			t.Rows = append(t.Rows, []string{name, l})
		}
	}
	return t.String()
}

// longest is how wide a column of plain text may be, in cells.
const longest = 60

// Text returns the table as plain text. A cell that is too long goes on in the
// lines below.
func (t Table) Text() string {
	var rows [][]string
	for _, row := range t.Rows {
		cells := make([][]string, len(row))
		most := 1
		for c, cell := range row {
			cells[c] = wrapped(cell, longest)
			most = max(most, len(cells[c]))
		}
		for i := range most {
			line := make([]string, len(row))
			for c := range row {
				if i < len(cells[c]) {
					line[c] = cells[c][i]
				}
			}
			rows = append(rows, line)
		}
	}
	return texttable.Table{Header: t.Header, Right: t.Right, Rows: rows}.String()
}

// wrapped breaks a text into lines, all of it.
func wrapped(text string, width int) []string { return safetext.Wrap(text, width, len(text)+1) }

// paragraphs writes texts, each broken into lines.
func paragraphs(b *strings.Builder, texts []string) {
	for _, t := range texts {
		fmt.Fprintf(b, "\n%s\n", strings.Join(wrapped(t, proseWidth), "\n"))
	}
}
