package tui

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/safetext"
	"coldfloor/tui/glyph"
	"coldfloor/tui/palette"
)

// task says what to do: the exercise, its dose, and the cue or the way to do
// it, each in letters no larger than what stands above it. It takes no more
// lines than it is given.
func (f frame) task(p parts) []string {
	s := f.scene
	if f.asked != nil {
		return f.question(p.exercise+p.dose+p.cue, p.time/4)
	}
	most := 3.0
	if font, ok := f.timeFont(p.time); ok {
		most = max(most, font.Height()*0.6) // what is counted is the largest
	}
	head, dose := s.head(), s.dose
	if s.phase == palette.SideChange {
		dose = s.exercise + ", " + s.reps
	}
	if one := f.oneLine(); p.exercise == 1 && p.dose == 0 && one != "" {
		head = one
	}
	lines, high := f.named(head, p.exercise, most)
	if left := p.exercise - len(lines); p.dose > 0 && p.dose+left >= 3 { // what the name left, for the side and the reps
		p.dose = min(p.dose+left, 1+len(lines))
	}
	if p.dose > 0 {
		drawn, _ := f.large(dose, p.dose, high)
		lines = append(lines, drawn...)
	}
	return append(lines, f.note(p.cue, high)...)
}

// oneLine returns the exercise and its dose where they fit into one line
// together, and nothing where they do not.
func (f frame) oneLine() string {
	s := f.scene
	one := s.head()
	switch {
	case s.phase == palette.SideChange:
		one += ", " + s.exercise
	case s.dose != "":
		one += ", " + s.dose
	}
	if ansi.StringWidth(one) > f.width {
		return ""
	}
	return one
}

// head returns what is to be known first: the exercise, or the side to change
// to.
func (s scene) head() string {
	switch {
	case s.phase == palette.SideChange:
		return capital(s.lang.Side(s.side))
	case s.next():
		return capital(s.lang.Screen.Next) + ": " + s.exercise
	}
	return s.exercise
}

// next reports whether the exercise has to be told to be the next one: the
// phase does not say so.
func (s scene) next() bool {
	return s.phase.Resting() || s.phase == palette.Paused && s.upcoming
}

// named returns the head in letters as large as find room, and how high they
// are. That it is the next exercise is said in a line above where the letters
// would be smaller for it.
func (f frame) named(head string, rows int, most float64) ([]string, float64) {
	lines, high := f.large(head, rows, most)
	if !f.scene.next() || rows < 4 {
		return lines, high
	}
	if alone, higher := f.large(f.scene.exercise, rows-1, most); higher > high {
		return append([]string{f.style.strong.Render(f.centre(f.style.lang.Screen.Next + ":"))}, alone...), higher
	}
	return lines, high
}

// note says how to do it, in the lines below the task: a cue while it is done,
// and what can be read at leisure before. In large letters it is a cue in either
// case, for a sentence has no room in them.
func (f frame) note(rows int, most float64) []string {
	s := f.scene
	how := s.cue
	if s.upcoming && s.how != "" {
		how = s.how
	}
	if rows < 3 {
		return f.wrapped(how, rows)
	}
	text := s.cue
	if text == "" {
		text = how
	}
	lines, _ := f.large(text, rows, most)
	if left := rows - len(lines); how != text && left > 0 {
		lines = append(lines, f.wrapped(how, left)...)
	}
	return lines
}

// question asks something in place of the task. It takes up to more lines from the
// time if the letters are large only then.
func (f frame) question(rows, more int) []string {
	font, large := f.askedFont(rows)
	if large == 0 {
		if font, large = f.askedFont(rows + more); large > 0 {
			rows += more
		}
	}
	var lines []string
	for i, text := range f.asked {
		if i >= large {
			lines = append(lines, f.style.strong.Render(f.centre(text)))
			continue
		}
		text = f.style.spelled(text)
		if i > 0 {
			lines = append(lines, "")
		}
		for _, l := range font.Render(text, f.width) {
			lines = append(lines, f.style.strong.Render(strings.TrimRight(l, " ")))
		}
	}
	return append(lines, make([]string, max(0, rows-len(lines)))...)
}

// askedFont returns the largest letters that fit into rows, and how many of the
// lines that ask something are written in them: all, or at least the first two.
func (f frame) askedFont(rows int) (glyph.Font, int) {
	for large := len(f.asked); large >= min(2, len(f.asked)); large-- {
		high := (rows-(len(f.asked)-large)+1)/large - 1
		if font, ok := f.style.fontFor(f.style.allSpelled(f.asked[:large]), f.width-2, float64(high)); ok && font.Height() >= minLetter {
			return font, large
		}
	}
	return glyph.Font{}, 0
}

// large returns text in letters as large as find room in rows lines, none
// higher than most lines, and how high they are. Where there is no room for
// any, or the letters are not drawn by hand, it is as heavy as the terminal's
// own text gets, and stands where the letters would.
func (f frame) large(text string, rows int, most float64) (lines []string, height float64) {
	if rows >= 3 && most >= minLetter {
		lines, height = f.style.letters(text, f.width-f.sides(), max(3, rows-1), most)
		for i := range lines {
			lines[i] = strings.Repeat(" ", f.sides()/2-1) + lines[i]
		}
	}
	if lines == nil {
		for _, l := range f.heaviest(text, rows) {
			lines = append(lines, f.centre(l))
		}
		height = 1
		if rows >= 3 && !glyph.Has(text) {
			lines = centreRows(lines, rows, 0)
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
	return lines, height
}

// sides returns the blank beside large letters, left and right together.
func (f frame) sides() int {
	if f.width < 100 {
		return 2
	}
	return f.width / 20
}

// heaviest returns text in at most rows lines. What is never drawn large is
// spaced out, where its script allows that and there is room.
func (f frame) heaviest(text string, rows int) []string {
	if spaced := safetext.Spaced(text); !glyph.Has(text) && safetext.Width(spaced) <= f.width {
		return []string{spaced}
	}
	return safetext.Wrap(text, min(f.width, 76), rows)
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
