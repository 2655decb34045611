package sheet

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"coldfloor/internal/text"
)

// Markdown writes the sheet as GitHub-flavoured Markdown. Whatever a session
// says is shown as it is: nothing in it is taken for markup.
func (d *Doc) Markdown(w io.Writer) error {
	var b strings.Builder
	fmt.Fprintf(&b, "<!-- %s -->\n\n# %s\n\n", marker, escape(d.Title))
	if d.About != "" {
		fmt.Fprintf(&b, "%s\n\n", escape(d.About))
	}
	fmt.Fprintf(&b, "**%s**", escape(d.Total.String()))
	for _, t := range d.Times {
		b.WriteString(" · " + t.Mark + " " + escape(t.Text))
	}
	fmt.Fprintf(&b, "  \n%s\n\n```text\n%s\n```\n", escapeAll(d.Facts, " · "), strings.TrimRight(d.Strip.Text, " "))
	for i := range d.Blocks {
		d.Blocks[i].markdown(&b, d.Words())
	}
	fmt.Fprintf(&b, "\n%s\n", escapeAll(d.Legend, " "))
	if len(d.Cautions) > 0 {
		fmt.Fprintf(&b, "\n## %s\n\n", d.Words().TakeCare)
		for _, c := range d.Cautions {
			fmt.Fprintf(&b, "- %s\n", escape(c))
		}
	}
	d.Effort.markdown(&b, d.Words())
	_, err := io.WriteString(w, b.String())
	return err
}

// markdown writes a block as a heading and a table.
func (b *Block) markdown(w *strings.Builder, words *text.Sheet) {
	if b.Before != (Rest{}) {
		fmt.Fprintf(w, "\n**%s** %s\n", escape(b.Before.Figure.String()), escape(b.Before.Label))
	}
	fmt.Fprintf(w, "\n## %s\n\n%s\n\n", escape(b.Name()), escapeAll(b.Facts, " · "))
	w.WriteString("| | " + strings.Join(words.Columns[:], " | ") + " |\n|---|---|---|---|---|\n")
	for i := range b.Rows {
		r := &b.Rows[i]
		fmt.Fprintf(w, "| %s | %s | %s | %s | %s |\n", escape(r.ID), r.markdownText(), r.markdownDose(), r.markdownTicks(), r.Then.markdown())
	}
}

// markdownText returns name, cues and the longer texts, a line each.
func (r *Row) markdownText() string {
	lines := []string{"**" + escape(r.Name) + "**"}
	if len(r.Cues) > 0 {
		lines = append(lines, "*"+escapeAll(r.Cues, " · ")+"*")
	}
	for _, n := range r.Notes {
		label := ""
		if n.Label != "" {
			label = n.Label + ": "
		}
		lines = append(lines, label+escape(n.Text))
	}
	return strings.Join(lines, "<br>")
}

// markdownDose returns the dose, and how it is done, a line each.
func (r *Row) markdownDose() string {
	return join("<br>", "**"+escape(join(" ", r.Dose.String(), r.Side))+"**", escapeAll(r.Details, "<br>"))
}

// markdownTicks returns boxes to tick, the boxes of a round on one line.
func (r *Row) markdownTicks() string {
	if r.Tally != "" {
		return escape(r.Tally)
	}
	rounds := make([]string, len(r.Rounds))
	for i, round := range r.Rounds {
		for j, box := range round.Boxes {
			if j > 0 {
				rounds[i] += " "
			}
			rounds[i] += "☐ " + box
		}
	}
	return strings.Join(rounds, "<br>")
}

// markdown returns the rest, in bold if it is one.
func (r Rest) markdown() string {
	text := escape(r.Figure.String())
	if r.Large {
		text = "**" + text + "**"
	}
	if r == (Rest{}) {
		return ""
	}
	return text + " " + escape(r.Label)
}

// markdown writes the effort scale as a table.
func (e *Effort) markdown(w *strings.Builder, words *text.Sheet) {
	fmt.Fprintf(w, "\n## %s\n\n%s\n\n| %s | %s | %s |\n|---|---|---|\n", words.Effort, escape(e.Question), words.Effort, words.EffortWords, words.Marked)
	for _, g := range e.Scale {
		fmt.Fprintf(w, "| %s | %s | ☐ |\n", g.Number, escape(g.Words))
	}
	fmt.Fprintf(w, "\n%s\n\n", escape(e.Source))
	for _, b := range append(slices.Clip(e.Blanks), e.Pain) {
		fmt.Fprintf(w, "%s: ____________________\n\n", escape(b))
	}
	w.WriteString(words.Notes + ": ____________________\n")
}

// escaper puts a backslash before what Markdown takes for markup wherever it
// stands, and breaks what GitHub takes for an address.
var escaper = strings.NewReplacer(
	`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "[", `\[`, "]", `\]`, "<", `\<`, ">", `\>`, "|", `\|`, "~", `\~`,
	"&", `\&`, "#", `\#`, "$", `\$`, "@", `\@`, "://", `\://`, "!", `\!`, "www.", `www\.`, "WWW.", `WWW\.`)

// escape returns text as Markdown that shows it unchanged. Text of the sheet
// may begin a line, so what begins a list or underlines a heading is escaped
// there.
func escape(s string) string {
	s = escaper.Replace(strings.TrimSpace(s))
	digits := len(s) - len(strings.TrimLeft(s, "0123456789"))
	rest := s[digits:]
	mark := digits == 0 && strings.IndexAny(rest, "-+=") == 0
	number := digits > 0 && strings.IndexAny(rest, ".)") == 0 && (len(rest) == 1 || rest[1] == ' ')
	if mark || number {
		return s[:digits] + `\` + rest
	}
	return s
}

// escapeAll escapes texts and joins them.
func escapeAll(texts []string, sep string) string {
	escaped := make([]string, len(texts))
	for i, t := range texts {
		escaped[i] = escape(t)
	}
	return strings.Join(escaped, sep)
}
