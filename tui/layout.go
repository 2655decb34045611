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
	help   []string // every key, in place of all but what goes on; nil where not asked for
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
	round    int
	strip    int
	then     int
	foot     int
	gaps     int // blank lines between time, task and the rest
}

// total returns how many lines there are in all.
func (p parts) total() int {
	return p.word + p.time + p.movement + p.dose + p.cue + p.round + p.strip + p.then + p.foot + p.gaps
}

// share shares out the lines of a window: the time gets what the rest leaves.
func share(height int, upcoming bool) parts {
	p := parts{word: 1, movement: 1, dose: 1, cue: 1, round: 1, strip: 1, then: 1, foot: 1}
	if height >= 15 {
		p.movement = 3 // the least for large letters
	}
	if height >= 18 {
		p.movement = height * 3 / 10
		p.gaps = height / 16
		p.cue = min(6, max(1, height/13))
	}
	switch { // how to do it takes more room than a cue
	case height >= 18 && upcoming:
		p.cue = min(6, max(2, height/10))
	case height < 15 && upcoming:
		p.cue, p.then = 2, 0
	}
	if height >= 30 {
		p.dose = height / 10
	}
	if height >= 36 {
		p.word = 3 + height/40
	}
	p.time = height - p.total()
	return p
}

// drop takes away secondary lines, the least important first, until the
// figures reach the height that they must have; the time gets what they had.
func (p parts) drop(rows float64, reached func(parts) bool) parts {
	if rows <= 0 {
		return p
	}
	for _, part := range []func(*parts) *int{
		func(p *parts) *int { return &p.gaps },
		func(p *parts) *int { return &p.then },
		func(p *parts) *int { return &p.strip },
		func(p *parts) *int { return &p.round },
		func(p *parts) *int { return &p.cue },
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
	return f.style.text(strings.Join(f.lines(), "\n"))
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
	if p.round > 0 {
		lines = append(lines, f.between(f.roundText(), units.Clock(ceilSecond(f.scene.left))+" left"))
	}
	if p.then > 0 {
		lines = append(lines, f.style.quiet.Render(f.fit(f.scene.then)))
	}
	if p.strip > 0 {
		lines = append(lines, f.strip)
	}
	if p.foot > 0 {
		lines = append(lines, f.footLine())
	}
	return lines
}

// parts shares the window's lines out, so that the time can be read from where
// the player is.
func (f frame) parts() parts {
	return share(f.height, f.scene.upcoming).drop(f.rows, func(p parts) bool {
		font, ok := f.timeFont(p.time)
		return ok && font.Height() >= f.rows
	})
}

// helpLines shows the keys, and in a line each what goes on and what to do.
func (f frame) helpLines() []string {
	s := f.scene
	f.scene.word += "  " + s.time
	lines := append(f.banner(1), f.centre(s.movement+", "+s.dose), "")
	lines = append(lines, f.help...)
	for len(lines) < f.height-1 {
		lines = append(lines, "")
	}
	return append(lines[:f.height-1], f.footLine())
}

// plain is the picture for a window that is too small for any other.
func (f frame) plain() string {
	if f.height < 1 || f.width < 1 {
		return ""
	}
	s := f.scene
	line := s.word + " " + s.time
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
// window; in large letters where there are lines for them.
func (f frame) banner(rows int) []string {
	fill := f.style.fill(f.scene.phase)
	if rows >= 4 {
		if font, ok := glyph.Choose(f.scene.word, f.width-4, rows-1, f.style.set); ok {
			var lines []string
			for _, l := range centreRows(font.Render(f.scene.word, f.width), rows, f.width) {
				lines = append(lines, fill.Bold(true).Render(l))
			}
			return lines
		}
	}
	word := "  " + f.scene.word + "  "
	side := max(0, f.width-len(word))
	sign := f.style.sign(f.scene.phase)
	pattern := func(n int) string { return strings.Repeat(sign+" ", n/2) + strings.Repeat(" ", n%2) }
	line := pattern(side/2) + word + reverse(pattern(side-side/2))
	lines := []string{fill.Bold(true).Render(safetext.Fit(line, f.width))}
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

// timeFont returns the largest font for the time. It does not depend on which
// figures the time has, so that the clock stands still while it counts.
func (f frame) timeFont(rows int) (glyph.Font, bool) {
	wide := strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return '0'
		}
		return r
	}, f.scene.time)
	if len(wide) == 1 {
		wide = "00"
	}
	return glyph.Choose(wide, f.width-2*f.edge(), rows, f.style.set)
}

// edge returns how wide the bar is that says which side is worked.
func (f frame) edge() int { return max(2, f.width/16) }

// time draws the time left with the shape of the phase beside it. In the last
// seconds the whole field is filled and the figure cut out of it: once, with
// nothing that blinks.
func (f frame) time(rows int) []string {
	inner := f.width - 2*f.edge()
	drawn := []string{safetext.Centre(f.scene.time, inner)}
	if font, ok := f.timeFont(rows); ok {
		drawn = f.withShape(font, rows, inner)
	}
	lines := make([]string, 0, rows)
	for _, l := range centreRows(drawn, rows, inner) {
		lines = append(lines, f.timeLine(l))
	}
	return lines
}

// withShape draws the time, and to its left the shape as large as fits beside
// it. Where the shape would be smaller than three lines it is left out.
func (f frame) withShape(font glyph.Font, rows, inner int) []string {
	width, _ := font.Size(f.scene.time)
	shape := string(f.scene.phase.Look().Shape)
	gap := max(3, inner/14) // enough that a ring is not read as a nought
	for high := max(3, rows*3/4); high >= 3; high-- {
		beside, ok := glyph.Choose(shape, inner-width-gap, high, f.style.set)
		if !ok {
			continue
		}
		w, h := beside.Size(shape)
		if h < 3 {
			break
		}
		margin := (inner - width - gap - w) / 2
		left := centreRows(beside.Render(shape, w), rows, w)
		right := centreRows(font.Render(f.scene.time, width), rows, width)
		for i := range left {
			left[i] = strings.Repeat(" ", margin) + left[i] + strings.Repeat(" ", gap) + right[i] +
				strings.Repeat(" ", inner-width-gap-w-margin)
		}
		return left
	}
	return font.Render(f.scene.time, inner)
}

// timeLine draws one line of the time's field, with the edges beside it.
func (f frame) timeLine(l string) string {
	blank := strings.Repeat(" ", f.edge())
	if f.scene.last {
		return f.style.filled(f.scene.phase, blank+l+blank)
	}
	left, right := f.sideEdges()
	ink, solid := f.style.ink(f.scene.phase), f.style.filled(f.scene.phase, blank)
	switch {
	case right:
		return blank + ink.Render(l) + solid
	case left:
		return solid + ink.Render(strings.TrimRight(l, " "))
	}
	if l = strings.TrimRight(blank+l, " "); l == "" {
		return ""
	}
	return ink.Render(l)
}

// sideEdges reports on which edges of the field a bar stands: the side of the
// body that works.
func (f frame) sideEdges() (left, right bool) {
	s := f.scene
	if s.phase != palette.Work && s.phase != palette.OwnPace && s.phase != palette.SideChange {
		return false, false
	}
	return s.side == "left", s.side == "right"
}

// task says what to do: the movement, its dose, and the cue or the way to do
// it, each in letters no larger than what stands above it. It takes no more
// lines than it is given.
func (f frame) task(p parts) []string {
	s := f.scene
	if s.phase == palette.Done {
		return make([]string, p.movement+p.dose+p.cue)
	}
	head, dose := s.movement, s.dose
	switch {
	case s.phase == palette.SideChange:
		head, dose = capital(string(s.side))+" side", s.movement+", "+s.reps
	case s.upcoming:
		dose = "Next: " + dose
	}
	if one := head + ", " + s.dose; p.movement == 1 && p.dose == 1 && !s.upcoming && ansi.StringWidth(one) <= f.width {
		head, dose, p.dose, p.cue = one, "", 0, p.cue+1
	}
	most := max(3, p.time*6/10)
	lines := f.large(head, p.movement, most)
	if left := p.movement - len(lines); p.dose > 0 && p.dose+left >= 3 { // what the name left, for the side and the reps
		p.dose = min(p.dose+left, 1+len(lines))
	}
	if p.dose > 0 {
		lines = append(lines, f.large(dose, p.dose, most-1)...)
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
