package tui

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/safetext"
	"coldfloor/tui/palette"
)

// task says what to do: the movement, its dose, and the cue or the way to do
// it, each in letters no larger than what stands above it. It takes no more
// lines than it is given.
func (f frame) task(p parts) []string {
	s := f.scene
	if s.phase == palette.Done {
		return make([]string, p.movement+p.dose+p.cue)
	}
	head, dose := s.head(), s.dose
	if s.phase == palette.SideChange {
		dose = s.movement + ", " + s.reps
	}
	if one := head + ", " + s.dose; p.movement == 1 && p.dose == 1 && !s.upcoming && ansi.StringWidth(one) <= f.width {
		head, dose, p.dose = one, "", 0
	}
	most := max(3, p.time*3/5)
	lines := f.large(head, p.movement, most)
	if left := p.movement - len(lines); p.dose > 0 && p.dose+left >= 3 { // what the name left, for the side and the reps
		p.dose = min(p.dose+left, 1+len(lines))
	}
	if p.dose > 0 {
		lines = append(lines, f.large(dose, p.dose, max(3, most-1))...)
	}
	note := s.cue
	if s.upcoming && s.how != "" {
		note = s.how
	}
	if p.cue >= 3 {
		return append(lines, f.large(note, p.cue, most-2)...)
	}
	return append(lines, f.wrapped(note, p.cue)...)
}

// head returns what is to be known first: the movement, or the side to change
// to.
func (s scene) head() string {
	switch {
	case s.phase == palette.SideChange:
		return capital(string(s.side)) + " side"
	case s.phase.Resting():
		return "Next: " + s.movement
	}
	return s.movement
}

// large returns text in letters as large as find room in rows lines, none
// higher than most lines, or in bold where there is no room for any.
func (f frame) large(text string, rows, most int) []string {
	var lines []string
	if rows >= 3 {
		lines = f.style.letters(text, f.width-2, max(3, rows-1), most)
	}
	if lines == nil {
		for _, l := range safetext.Wrap(text, min(f.width, 76), rows) {
			lines = append(lines, f.centre(l))
		}
	}
	for i, l := range lines {
		if l = strings.TrimRight(l, " "); l != "" {
			l = f.style.strong.Render(l)
		}
		lines[i] = l
	}
	if rows > len(lines) && rows >= 3 {
		lines = append(lines, "")
	}
	return lines
}

// wrapped returns text in at most rows lines, and blank ones up to that many.
func (f frame) wrapped(text string, rows int) []string {
	width := min(f.width, 76)
	lines := make([]string, 0, rows)
	for _, l := range safetext.Wrap(text, width, rows) {
		lines = append(lines, f.style.note.Render(f.centre(l)))
	}
	return append(lines, make([]string, max(0, rows-len(lines)))...) // as steady as it can be: the cue comes and goes
}

// centre returns text in the middle of the window, with nothing after it.
func (f frame) centre(text string) string {
	return strings.TrimRight(safetext.Centre(text, f.width), " ")
}
