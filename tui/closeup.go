package tui

import (
	"strings"

	"coldfloor/internal/safetext"
)

// closeup returns the line at the cursor in large letters, and with the effort
// the words of its figures, for a form that is read from where the player came
// to rest; nothing where there is no room for it. It takes rows lines at most.
func (m finishScreen) closeup(rows int) []string {
	label, value := m.current()
	text := label
	if value != "" {
		text += ": " + value
	}
	head, high := m.style.letters(text, m.width-2, min(rows/4, 6), 6)
	if high == 0 {
		return nil
	}
	lines := append([]string{""}, head...)
	if m.line() == lineRPE {
		scale := m.largeScale(rows-len(lines)-1, high)
		if scale == nil {
			return nil // its words matter more
		}
		lines = append(append(lines, ""), scale...)
	}
	for i, l := range lines {
		lines[i] = m.style.strong.Render(strings.TrimRight(l, " "))
	}
	return lines
}

// largeScale returns the figures of the effort that have words, in two columns
// of letters no higher than most, or nothing where there is no room.
func (m finishScreen) largeScale(rows int, most float64) []string {
	words := m.style.lang.Form.Scale()
	const columns = 2
	deep := (len(words) + columns - 1) / columns
	cols, high := m.width/columns-3, rows/deep-1
	font, ok := m.style.upTo(words, cols, float64(high), most)
	if !ok || font.Height() < minLetter {
		return nil
	}
	tall := 0
	for _, w := range words { // marks on letters take room too
		_, h := font.Size(w)
		tall = max(tall, h)
	}
	var lines []string
	for i := range deep {
		for row := range tall {
			line := ""
			for c := range columns {
				text := ""
				if at := i + c*deep; at < len(words) {
					w, _ := font.Size(words[at])
					text = font.In(words[at], w, tall)[row]
				}
				line += "  " + safetext.Pad(text, cols)
			}
			lines = append(lines, line)
		}
		lines = append(lines, "")
	}
	return lines
}
