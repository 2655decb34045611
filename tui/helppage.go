package tui

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"coldfloor/internal/safetext"
)

// helping is the page of the keys.
type helping struct {
	keys  []key.Binding
	plain []string // the same as text
	other []string // what keys do that are not among them
	page  int      // of those that a small window takes
}

// helpLines shows the keys, in letters as large as find room, and in a line
// each what goes on and what to do.
func (f frame) helpLines() []string {
	s := f.scene
	f.scene.word += "  " + s.count.plain()
	lines := append(f.banner(1), f.centre(s.doing()))
	rows := f.height - len(lines) - len(f.help.other) - 1
	page := f.largeKeys(rows - 2)
	if page == nil {
		page = f.help.plain
	}
	if rows -= len(page); rows > 0 {
		lines = append(lines, "")
	}
	for _, l := range page {
		lines = append(lines, cut(l, f.width))
	}
	if rows > 1 {
		lines = append(lines, "")
	}
	for _, other := range f.help.other {
		lines = append(lines, f.style.note.Render(f.fit(other)))
	}
	for len(lines) < f.height-1 {
		lines = append(lines, "")
	}
	return append(lines[:f.height-1], f.footLine())
}

// helpPages returns what the keys do as one text, for windows too small for a line
// each, in pages between the line that says what goes on and the foot.
func (f frame) helpPages() [][]string {
	var all []string
	for _, k := range f.help.keys {
		all = append(all, k.Help().Key+" "+k.Help().Desc)
	}
	lines := safetext.WrapParts(append(all, f.help.other...), f.width)
	return slices.Collect(slices.Chunk(lines, max(1, f.height-2)))
}

// smallHelp is the page of the keys for a window that is too small for a frame.
func (f frame) smallHelp() string {
	pages := f.helpPages()
	lines := append([]string{f.fit(f.scene.word + " " + f.scene.count.plain())}, pages[min(f.help.page, len(pages)-1)]...)
	for len(lines) < f.height-1 {
		lines = append(lines, "")
	}
	if lines = append(lines, f.fit(f.foot)); len(lines) > f.height { // no room for what goes on
		lines = lines[1 : 1+f.height]
	}
	return strings.Join(lines, "\n")
}

// largeKeys draws the keys in large letters in two columns, or returns nothing
// where there is no room for them.
func (f frame) largeKeys(rows int) []string {
	const columns = 2
	deep := (len(f.help.keys) + columns - 1) / columns
	cols, high := f.width/columns-4, (rows+1)/deep-1
	var texts []string
	for _, k := range f.help.keys {
		texts = append(texts, f.style.spelled(k.Help().Key+" "+k.Help().Desc))
	}
	font, ok := f.style.fontFor(texts, cols, float64(high))
	if !ok || font.Height() < minLetter {
		return nil
	}
	var lines []string
	for i := range deep {
		left := font.In(texts[i], 0, high)
		for row := range left {
			var line strings.Builder
			for c := range columns {
				text := ""
				if at := i + c*deep; at < len(texts) {
					w, _ := font.Size(texts[at])
					text = font.In(texts[at], w, high)[row]
				}
				line.WriteString("  " + safetext.Pad(text, cols+2))
			}
			lines = append(lines, f.style.strong.Render(strings.TrimRight(line.String(), " ")))
		}
		lines = append(lines, "")
	}
	return lines
}
