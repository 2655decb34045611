package sheet

// run is text in one face.
type run struct {
	face face
	text string
}

// line is one line of text in a cell: runs on one baseline.
type line struct {
	runs   []run
	indent float64 // of the first run, in millimetres
	gap    float64 // between two runs
}

// height returns that of the tallest run.
func (l line) height() float64 {
	h := 0.0
	for _, r := range l.runs {
		h = max(h, r.face.height())
	}
	return h
}

// width returns the width of the line with its indent.
func (l line) width(t *typeface) float64 {
	w := l.indent
	for i, r := range l.runs {
		if i > 0 {
			w += l.gap
		}
		w += t.width(r.face, r.text)
	}
	return w
}

// draw sets the line with its top at y in the width from x on.
func (l line) draw(c canvas, t *typeface, x, y, width float64, a align) {
	base := 0.0
	for _, r := range l.runs {
		base = max(base, r.face.baseline())
	}
	x += (width-l.width(t))*float64(a)/2 + l.indent
	for _, r := range l.runs {
		w := t.width(r.face, r.text)
		c.text(rect{x, y + base - r.face.baseline(), w, r.face.height()}, left, r.face, r.text)
		x += w + l.gap
	}
}

// heightOf returns the height of lines one below the other.
func heightOf(lines []line) float64 {
	h := 0.0
	for _, l := range lines {
		h += l.height()
	}
	return h
}

// drawLines sets lines one below the other.
func drawLines(c canvas, t *typeface, lines []line, x, y, width float64, a align) {
	for _, l := range lines {
		l.draw(c, t, x, y, width, a)
		y += l.height()
	}
}

// single makes a line of a short text that is known to fit.
func single(f face, text string) line { return line{runs: []run{{f, text}}} }
