package tui

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
	"coldfloor/tui/glyph"
	"coldfloor/tui/palette"
)

// The smallest window that a frame fits into; below it the screen is plain text.
const (
	MinWidth  = 40
	MinHeight = 12
)

// frame is everything that one picture of the running screen depends on.
type frame struct {
	scene  scene
	width  int
	height int
	style  *style
	strip  string   // the session as a strip, width cells wide
	foot   string   // a notice, a question or the keys
	loud   bool     // foot is a notice or a question
	help   *helping // every key, in place of all but what goes on; nil where not asked for
	asked  []string // a question in place of the task; nil: none
	rows   float64  // height that figures must have to be read from where the player is, in cells; 0 if unknown
}

// String returns the picture: at most height lines of at most width cells.
func (f frame) String() string {
	if f.width < MinWidth || f.height < MinHeight {
		return f.style.text(f.plain())
	}
	return safetext.Isolate(f.style.text(strings.Join(f.lines(), "\n")))
}

// lines returns the picture line by line.
func (f frame) lines() []string {
	if f.help != nil {
		return f.helpLines()
	}
	p := f.parts()
	task := f.task(p)
	p.time += p.exercise + p.dose + p.cue - len(task) // what the letters left
	lines := append(f.banner(p.word), f.time(p.time)...)
	gap := func(n int) { lines = append(lines, make([]string, max(0, n))...) }
	gap(p.gaps - p.gaps/2)
	lines = append(lines, task...)
	gap(p.gaps / 2)
	if p.offer > 0 {
		lines = append(lines, f.style.quiet.Render(f.centre(f.scene.offer)))
	}
	if p.round > 0 {
		lines = append(lines, f.between(f.roundText(), f.toGo()))
	}
	if p.then > 0 {
		lines = append(lines, f.then(p.then)...)
	}
	if p.strip > 0 {
		lines = append(lines, f.strip)
	}
	if p.foot > 0 {
		lines = append(lines, f.footLine())
	}
	return lines
}

// toGo says how long the session still lasts.
func (f frame) toGo() string {
	if f.scene.phase == palette.Done {
		return ""
	}
	return f.style.lang.Screen.ToGo(units.Clock(ceilSecond(f.scene.left)))
}

// then says what follows, in large letters where there are lines for them, if
// need be without its dose.
func (f frame) then(rows int) []string {
	for _, text := range []string{f.scene.then, f.scene.thenName} {
		drawn, high := f.style.letters(text, f.width-2, rows-1, float64(rows-1))
		if rows < 4 || high == 0 || !glyph.Has(f.scene.exercise) { // it does not outshine what is done now
			continue
		}
		for i, l := range drawn {
			drawn[i] = f.style.quiet.Render(strings.TrimRight(l, " "))
		}
		return append(drawn, make([]string, rows-len(drawn))...)
	}
	return append(make([]string, rows-1), f.style.quiet.Render(f.fit(f.scene.then)))
}

// plain is the picture for a window that is too small for any other.
func (f frame) plain() string {
	if f.height < 1 || f.width < 1 {
		return ""
	}
	if f.help != nil {
		return f.smallHelp()
	}
	var foot []string
	if f.loud {
		foot = safetext.Wrap(f.foot, f.width, f.height-1)
	}
	room := f.height - len(foot)
	lines := safetext.Wrap(f.scene.word+" "+f.scene.count.plain(), f.width, room)
	lines = append(lines, safetext.Wrap(f.scene.doing(), f.width, room-len(lines))...)
	return strings.Join(append(lines, foot...), "\n")
}

// fit returns text cut to the window's width.
func (f frame) fit(text string) string { return safetext.Fit(text, f.width) }

// banner says what is going on, by a word between shapes on a bar across the
// window; in large letters, with a blank row above and below them, where there
// are lines for them.
func (f frame) banner(rows int) []string {
	heavy := f.style.heavy(f.scene.phase)
	if rows >= 5 {
		if font, ok := f.style.choose(f.scene.word, f.width-4, float64(rows-2)); ok {
			var lines []string
			for _, l := range font.In(f.scene.word, f.width, rows) {
				lines = append(lines, heavy.Render(l))
			}
			return lines
		}
	}
	word := "  " + f.scene.word + "  "
	side := max(0, f.width-ansi.StringWidth(word))
	sign := f.style.sign(f.scene.phase)
	pattern := func(n int) string { return strings.Repeat(sign+" ", n/2) + strings.Repeat(" ", n%2) }
	line := pattern(side/2) + word + reverse(pattern(side-side/2))
	lines := []string{heavy.Render(safetext.Fit(line, f.width))}
	return append(lines, make([]string, rows-1)...)
}

// reverse mirrors a pattern of signs and blanks.
func reverse(s string) string {
	r := []rune(s)
	for i, j := 0, len(r)-1; i < j; i, j = i+1, j-1 {
		r[i], r[j] = r[j], r[i]
	}
	return string(r)
}

// roundText says where in the session this is.
func (f frame) roundText() string {
	s := f.scene
	if s.round == "" {
		return s.block
	}
	return capital(s.round) + ", " + s.block
}

// between returns left and right at the two ends of a line.
func (f frame) between(left, right string) string {
	left = safetext.Fit(left, f.width-ansi.StringWidth(right)-2)
	return safetext.Pad(left, f.width-ansi.StringWidth(right)) + right
}

// footLine is the last line: a notice, a question, or the keys.
func (f frame) footLine() string {
	if f.loud {
		return f.style.strong.Render(f.fit(f.foot))
	}
	return cut(f.foot, f.width)
}

// centreRows adds blank lines, width cells wide, above and below up to rows
// lines, and cuts what is more.
func centreRows(lines []string, rows, width int) []string {
	blank := strings.Repeat(" ", width)
	out := make([]string, 0, rows)
	for range (rows - len(lines)) / 2 {
		out = append(out, blank)
	}
	out = append(out, lines...)
	for len(out) < rows {
		out = append(out, blank)
	}
	return out[:rows]
}

// capital returns s with a capital first letter; s begins with a small ASCII
// letter or is empty.
func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
