package paper

import (
	"bytes"
	"strings"

	"codeberg.org/go-pdf/fpdf"
)

// Family is the name that Setting gives the typeface in a PDF document.
const Family = "sans"

// Setting is the typeface of the sheets for whatever else is set in a PDF
// document. Sizes are in points, widths in millimetres.
type Setting struct{ types *Typeface }

// NewSetting returns the typeface, with no character noted as missing.
func NewSetting() Setting { return Setting{NewTypeface()} }

// AddTo adds both weights to a document, as Family.
func (s Setting) AddTo(pdf *fpdf.Fpdf) {
	// The library writes into the font it is given.
	pdf.AddUTF8FontFromBytes(Family, "", bytes.Clone(s.types.regular.ttf))
	pdf.AddUTF8FontFromBytes(Family, "B", bytes.Clone(s.types.bold.ttf))
}

// Width returns how wide a text is once set.
func (s Setting) Width(bold bool, size float64, text string) float64 {
	return s.types.Width(Face{Bold: bold, Size: size}, s.types.Printable(text))
}

// Least returns how wide, in millimetres, the widest part of a text is that Wrap
// breaks only if it must.
func (s Setting) Least(bold bool, size float64, text string) float64 {
	least := 0.0
	for _, p := range pieces(s.types.Printable(text)) {
		least = max(least, s.types.Width(Face{Bold: bold, Size: size}, p.text))
	}
	return least
}

// Wrap breaks a text into lines of at most width, each as it is to be written
// from left to right.
func (s Setting) Wrap(bold bool, size float64, text string, width float64) []string {
	var lines []string
	for _, l := range s.types.Wrap(Face{Bold: bold, Size: size}, text, width) {
		var b strings.Builder
		for _, r := range l.Runs {
			b.WriteString(r.Text)
		}
		lines = append(lines, Visual(b.String()))
	}
	return lines
}

// Line returns a text as it is to be written on one line.
func (s Setting) Line(text string) string { return Visual(s.types.Printable(text)) }

// Missing returns the characters of all texts so far that the typeface lacks,
// in order; Lacking stands in their place.
func (s Setting) Missing() []rune { return s.types.Missing() }
