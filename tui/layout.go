package tui

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
	"coldfloor/tui/glyph"
	"coldfloor/tui/palette"
)

// The smallest window that a frame fits into; below it the screen is one
// plain line.
const (
	MinWidth  = 40
	MinHeight = 12
)

// frame is everything that one picture of the running screen depends on.
type frame struct {
	scene  scene
	width  int
	height int
	style  style
	strip  string   // the session as a strip, width cells wide
	foot   string   // a notice, a question or the keys
	loud   bool     // foot is a notice or a question
	help   *helping // every key, in place of all but what goes on; nil where not asked for
	asked  []string // a question in place of the task; nil: none
	rows   float64  // height that figures must have to be read from where the player is, in cells; 0 if unknown
}

// parts is how a frame's lines are shared out. What is dropped first so that
// the time can be larger stands last.
type parts struct {
	word     int // lines of the banner that says what is going on
	time     int
	movement int
	dose     int
	cue      int
	offer    int
	round    int
	strip    int
	then     int
	foot     int
	gaps     int // blank lines between time, task and the rest
}

// total returns how many lines there are in all.
func (p parts) total() int {
	return p.word + p.time + p.movement + p.dose + p.cue + p.offer + p.round + p.strip + p.then + p.foot + p.gaps
}

// share shares out the lines of a window: what is counted gets what the rest
// leaves.
func share(height int, s scene) parts {
	p := parts{word: 1, movement: 1, dose: 1, cue: 1, round: 1, strip: 1, then: 1, foot: 1}
	if height >= 15 {
		p.movement = 3 // the least for large letters
	}
	if height >= 18 {
		p.movement = height * 3 / 10
		if height >= tall && !s.upcoming { // while it is done what is counted matters more
			p.movement = height / 4
		}
		p.gaps = height / 16
		p.cue = min(6, max(1, height/13))
	}
	switch { // how to do it takes more room than a cue
	case height >= 18 && s.upcoming:
		p.cue = min(6, max(2, height/10))
	case height < 15 && s.upcoming:
		p.cue = 0
	}
	if height >= 22 {
		p.dose = max(3, height/10)
	}
	if s.dose == "" {
		p.dose = 0
	}
	if s.offer != "" && height >= 22 {
		p.offer = 1
	}
	if height >= tall {
		p.word = 5 + (height-tall)/20 // letters between two blank rows
		p.then = max(4, height/14)
	}
	if s.calls { // the arrow is to fill the window
		p.movement, p.dose, p.cue, p.word, p.then = 1, 0, 0, 1, 1
		if height >= 18 {
			p.movement = max(4, height/7)
		}
	}
	p.time = height - p.total()
	return p
}

// tall is the height in cells from which on there are lines for the banner, and
// for what follows, in large letters.
const tall = 36

// drop takes away secondary lines, the least important first, until the
// figures reach the height that they must have; the time gets what they had.
func (p parts) drop(reached func(parts) bool) parts {
	for _, part := range []func(*parts) *int{
		func(p *parts) *int { return &p.gaps },
		func(p *parts) *int { return &p.strip },
		func(p *parts) *int { return &p.round },
		func(p *parts) *int { return &p.offer },
		func(p *parts) *int { return &p.cue },
		func(p *parts) *int { return &p.then },
		func(p *parts) *int { return &p.dose },
	} {
		if reached(p) {
			return p
		}
		n := part(&p)
		p.time += *n
		*n = 0
	}
	return p
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
	p.time += p.movement + p.dose + p.cue - len(task) // what the letters left
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
		if rows < 4 || high == 0 || !glyph.Has(f.scene.movement) { // it does not outshine what is done now
			continue
		}
		for i, l := range drawn {
			drawn[i] = f.style.quiet.Render(strings.TrimRight(l, " "))
		}
		return append(drawn, make([]string, rows-len(drawn))...)
	}
	return append(make([]string, rows-1), f.style.quiet.Render(f.fit(f.scene.then)))
}

// parts shares the window's lines out, so that the count can be drawn large,
// and be read from where the player is.
func (f frame) parts() parts {
	p := share(f.height, f.scene)
	if p.movement == 1 && ansi.StringWidth(f.scene.head()) > f.width { // a long name gets a second line
		p.movement, p.time = 2, p.time-1
	}
	if f.height < 15 && p.dose == 1 && p.movement == 1 && f.oneLine() != "" && f.asked == nil { // they share a line
		p.dose, p.time = 0, p.time+1
	}
	if _, ok := f.timeFont(f.height); !ok { // too narrow, and higher would not help
		return p
	}
	return p.drop(func(p parts) bool {
		font, ok := f.timeFont(p.time)
		return ok && font.Height() >= f.rows
	})
}

// plain is the picture for a window that is too small for any other.
func (f frame) plain() string {
	if f.height < 1 || f.width < 1 {
		return ""
	}
	s := f.scene
	line := s.word + " " + s.count.plain()
	if s.movement != "" {
		line += " " + s.movement + ", " + s.dose
	}
	lines := []string{f.fit(line)}
	if f.loud && f.height > 1 {
		lines = append(lines, f.fit(f.foot))
	}
	return strings.Join(lines, "\n")
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
