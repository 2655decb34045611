package paper

// Run is text in one face.
type Run struct {
	Face Face
	Text string
}

// Text returns a run.
func Text(f Face, s string) Run { return Run{f, s} }

// Line is one line of text in a cell: runs on one baseline.
type Line struct {
	Runs   []Run
	Indent float64 // of the first run, in millimetres
	Gap    float64 // between two runs
}

// Height returns that of the tallest run.
func (l Line) Height() float64 {
	h := 0.0
	for _, r := range l.Runs {
		h = max(h, r.Face.Height())
	}
	return h
}

// Width returns the width of the line with its indent.
func (l Line) Width(t *Typeface) float64 {
	w := l.Indent
	for i, r := range l.Runs {
		if i > 0 {
			w += l.Gap
		}
		w += t.Width(r.Face, r.Text)
	}
	return w
}

// Draw sets the line with its top at y in the width from x on.
func (l Line) Draw(c Canvas, t *Typeface, x, y, width float64, a Align) {
	base := 0.0
	for _, r := range l.Runs {
		base = max(base, r.Face.Baseline())
	}
	x += (width-l.Width(t))*float64(a)/2 + l.Indent
	for _, r := range l.Runs {
		w := t.Width(r.Face, r.Text)
		c.Text(Rect{x, y + base - r.Face.Baseline(), w, r.Face.Height()}, Left, r.Face, r.Text)
		x += w + l.Gap
	}
}

// HeightOf returns the height of lines one below the other.
func HeightOf(lines []Line) float64 {
	h := 0.0
	for _, l := range lines {
		h += l.Height()
	}
	return h
}

// DrawLines sets lines one below the other.
func DrawLines(c Canvas, t *Typeface, lines []Line, x, y, width float64, a Align) {
	for _, l := range lines {
		l.Draw(c, t, x, y, width, a)
		y += l.Height()
	}
}

// Single makes a line of a short text that is known to fit.
func Single(f Face, text string) Line { return Line{Runs: []Run{{f, text}}} }
