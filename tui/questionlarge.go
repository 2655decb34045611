package tui

import (
	"strings"

	"github.com/charmbracelet/lipgloss"

	"coldfloor/internal/safetext"
	"coldfloor/tui/glyph"
	"coldfloor/tui/palette"
)

// How high the letters of a question are, in cells.
const (
	mostAnswer = 5 // the answers and their keys
	mostText   = 6
)

// large draws the question for somebody who stands away from the screen: what it
// is about, and the keys that answer it, in large letters, and the text too
// where all of it has room in them. It is nothing where there is no room.
func (q question) large(s *style, width, height int) []string {
	answers := q.largeAnswers(s, width, height*2/5)
	head := s.banner(palette.Done, q.title, width, height)
	if answers == nil || head == nil {
		return nil
	}
	room := height - len(head) - len(answers) - 3
	text := s.paragraphs(q.text, width-4, room)
	if text == nil {
		if text = q.lines(width); len(text) > room {
			return nil
		}
		for i, l := range text {
			if text[i] = "  " + l; i < q.heads(width) {
				text[i] = s.strong.Render(text[i])
			}
		}
	}
	lines := append(append(head, ""), text...)
	for len(lines)+len(answers) < height-1 {
		lines = append(lines, "")
	}
	return append(append(lines, answers...), q.foot(s))
}

// foot says once more in a line, for somebody who stands near, what it is about
// and which keys answer it.
func (q question) foot(s *style) string {
	line := s.quiet.Render(" " + q.title)
	for _, a := range q.answers {
		line += "  " + s.strong.Render(s.lang.Keys.Named(a.Help().Key)) + s.quiet.Render(" "+a.Help().Desc)
	}
	return line
}

// largeAnswers draws each answer with its key in a line of large letters, or
// returns nothing where there are not so many rows for them.
func (q question) largeAnswers(s *style, width, rows int) []string {
	var texts []string
	for _, a := range q.answers {
		texts = append(texts, s.spelled(s.lang.Keys.Named(a.Help().Key)+": "+a.Help().Desc))
	}
	high := rows/max(1, len(texts)) - 1
	font, ok := s.upTo(texts, width-4, float64(high), mostAnswer)
	if !ok {
		return nil
	}
	var lines []string
	for _, t := range texts {
		lines = append(append(lines, drawn(font, t, s.strong)...), "")
	}
	return lines
}

// paragraphs returns paragraphs in letters as large as all of them find room in,
// or nothing where there is none.
func (s *style) paragraphs(texts []string, cols, rows int) []string {
	texts = s.allSpelled(texts)
	for high := float64(mostText); high >= minLetter; high -= 0.5 {
		font, ok := s.choose("ÄM", cols, high)
		if !ok || font.Height() < minLetter {
			return nil
		}
		if lines, ok := s.letterset(texts, font, cols); ok && len(lines) <= rows {
			return lines
		}
	}
	return nil
}

// letterset breaks paragraphs into lines of letters, and reports whether every
// character is among them and every word has room.
func (s *style) letterset(texts []string, font glyph.Font, cols int) (lines []string, ok bool) {
	for i, t := range texts {
		if !glyph.Has(t) {
			return nil, false
		}
		if i > 0 {
			lines = append(lines, "")
		}
		for _, l := range broken(t, font, cols) {
			if w, _ := font.Size(l); w > cols {
				return nil, false
			}
			lines = append(append(lines, drawn(font, l, s.note)...), "")
		}
	}
	return lines, true
}

// drawn returns a text in letters, at the left.
func drawn(font glyph.Font, text string, look lipgloss.Style) (lines []string) {
	w, _ := font.Size(text)
	for _, row := range font.Render(text, w) {
		lines = append(lines, look.Render("  "+strings.TrimRight(row, " ")))
	}
	return lines
}

// broken breaks a text between words into lines that are no wider than they must
// be.
func broken(text string, font glyph.Font, cols int) (lines []string) {
	line := ""
	for _, word := range strings.Fields(text) {
		longer := strings.TrimLeft(line+" "+word, " ")
		if w, _ := font.Size(longer); line != "" && w > cols {
			lines, longer = append(lines, line), word
		}
		line = longer
	}
	return append(lines, line)
}

// banner returns a bar across the window with a title in large letters, or
// nothing in a window that is not tall.
func (s *style) banner(p palette.Phase, title string, width, height int) []string {
	if height < tall {
		return nil
	}
	rows := 5 + (height-tall)/20
	font, ok := s.choose(title, width-4, float64(rows-2))
	if !ok {
		return []string{titleBar(s, safetext.Fit(title, width), width)}
	}
	var lines []string
	for _, l := range font.In(title, width, rows) {
		lines = append(lines, s.heavy(p).Render(l))
	}
	return lines
}
