package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"coldfloor/internal/safetext"
)

// helping is the page of the keys.
type helping struct {
	keys  []key.Binding
	plain []string // the same as text
	other string   // what every other key does
}

// helpLines shows the keys, in letters as large as find room, and in a line
// each what goes on and what to do.
func (f frame) helpLines() []string {
	s := f.scene
	f.scene.word += "  " + s.count.plain()
	lines := append(f.banner(1), f.centre(s.doing()), "")
	page := f.largeKeys(f.height - len(lines) - 3)
	if page == nil {
		page = f.help.plain
	}
	for i, l := range page {
		page[i] = cut(l, f.width)
	}
	lines = append(append(lines, page...), "", f.style.note.Render(f.fit(f.help.other)))
	for len(lines) < f.height-1 {
		lines = append(lines, "")
	}
	return append(lines[:f.height-1], f.footLine())
}

// largeKeys draws the keys in large letters in two columns, or returns nothing
// where there is no room for them.
func (f frame) largeKeys(rows int) []string {
	const columns = 2
	deep := (len(f.help.keys) + columns - 1) / columns
	cols, high := f.width/columns-4, (rows+1)/deep-1
	var texts []string
	for _, k := range f.help.keys {
		texts = append(texts, k.Help().Key+" "+k.Help().Desc)
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
