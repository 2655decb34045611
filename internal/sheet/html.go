package sheet

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"strings"

	"coldfloor/internal/plan"
)

//go:embed sheet.html
var htmlText string

var htmlTemplate = template.Must(template.New("sheet").Funcs(template.FuncMap{
	"marker":  func() string { return marker },
	"columns": func() []string { return columnNames[:] },
	"join":    func(texts []string, sep string) string { return strings.Join(texts, sep) },
	"at":      func(fraction float64) string { return fmt.Sprintf("%.2f", fraction*stripWidth) },
	"length":  func(from, to float64) string { return fmt.Sprintf("%.2f", (to-from)*stripWidth) },
	"wide":    func(from, to float64) bool { return (to-from)*stripWidth > 60 },
	"fill":    fillOf,
	"boxName": func(r Row, box string) string { return r.ID + " " + r.Name + ", " + boxWords(box) },
}).Parse(htmlText))

// stripWidth is the width of the strip's drawing in its own units.
const stripWidth = 720.0

// HTML writes the sheet as one HTML page that needs no other file and asks
// nothing of the network. It can be ticked on a screen, and printed on the
// paper.
func (d *Doc) HTML(w io.Writer, paper Paper) error {
	return htmlTemplate.Execute(w, struct {
		*Doc
		Paper string
	}{d, paper.Name})
}

// fillOf returns how a part of the strip is filled: work is full, rest empty.
func fillOf(k plan.Kind) string {
	switch k {
	case plan.Work:
		return "currentColor"
	case plan.Rest:
		return "none"
	}
	return "url(#hatch)"
}

// boxWords says what a box is for, to be read aloud.
func boxWords(box string) string {
	round := strings.TrimRight(box, "LR")
	switch box[len(round):] {
	case "L":
		return "round " + round + " left"
	case "R":
		return "round " + round + " right"
	}
	return "round " + round
}
