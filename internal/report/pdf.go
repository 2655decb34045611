package report

import (
	"io"
	"strings"

	"codeberg.org/go-pdf/fpdf"

	"coldfloor/internal/paper"
)

// The page, in millimetres: A4 of ISO 216. Letter is 6 mm wider and 18 mm
// less high, and prints it a little smaller.
const (
	pageWide = 210.0
	pageHigh = 297.0
	margin   = 14.0
	footing  = 8.0 // for the page's number
	textWide = pageWide - 2*margin
	leading  = 1.25 // from one baseline to the next, in parts of the size
)

// Sizes of type, in points.
const (
	bodySize    = 9.0
	tableSize   = 7.5
	noteSize    = 7.5
	sectionSize = 12.0
	partSize    = 15.0
	titleSize   = 19.0
)

// pages sets a Doc on pages, from the top down.
type pages struct {
	pdf   *fpdf.Fpdf
	types paper.Setting
	y     float64 // where the next line's top is
	links map[string]int
}

// PDF writes the review as a PDF document, and returns the characters that its
// typeface lacks. The same Doc gives the same bytes.
func (d *Doc) PDF(w io.Writer) (missing []rune, err error) {
	p := &pages{pdf: newDocument(d.Title), types: paper.NewSetting(), links: map[string]int{}}
	p.types.AddTo(p.pdf)
	p.pdf.SetFooterFunc(func() { p.number(d.Title) })
	p.page()
	p.text(true, titleSize, d.Title, 0)
	p.text(false, bodySize, d.About, 0)
	for _, part := range d.Parts {
		p.part(part)
	}
	p.room(40)
	p.gap(5)
	if len(d.Meaning) > 0 {
		p.text(true, partSize, "What the figures can and cannot say", 0)
	}
	for _, l := range d.Left {
		p.text(false, bodySize, l, 0)
	}
	p.facts(d.Meaning)
	return p.types.Missing(), p.pdf.Output(w)
}

// newDocument starts a document whose dates are fixed.
func newDocument(title string) *fpdf.Fpdf {
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: pageWide, Ht: pageHigh}})
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(epoch)
	pdf.SetModificationDate(epoch)
	pdf.SetTitle(title, true)
	pdf.SetCreator(marker, false)
	pdf.SetProducer("", false)
	pdf.SetLang("en")
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	return pdf
}

// page begins a page.
func (p *pages) page() {
	p.pdf.AddPage()
	p.y = margin
}

// bottom is where the text of a page ends.
const bottom = pageHigh - margin - footing

// room begins a page if the present one has less than h left.
func (p *pages) room(h float64) {
	if p.y+h > bottom {
		p.page()
	}
}

func (p *pages) gap(h float64) { p.y += h }

// height is that of a line of type.
func height(size float64) float64 { return mm(size) * leading }

// put writes text whose line has its top at y. It is broken into lines by now,
// and every space in it a plain one, to be searched for.
func (p *pages) put(bold bool, size, x, y float64, line string) {
	weight := ""
	if bold {
		weight = "B"
	}
	p.pdf.SetFont(paper.Family, weight, size)
	p.pdf.Text(x, y+mm(size), strings.ReplaceAll(line, string(paper.NoBreak), " "))
}

// text sets a paragraph, indented, on as many lines as it takes.
func (p *pages) text(bold bool, size float64, s string, indent float64) {
	for _, l := range p.types.Wrap(bold, size, unbroken(s), textWide-indent) {
		p.room(height(size))
		p.put(bold, size, margin+indent, p.y, l)
		p.y += height(size)
	}
}

// part sets a part; one that can be linked to has a page of its own.
func (p *pages) part(part Part) {
	if part.ID != "" {
		p.page()
		p.pdf.SetLink(p.link(part.ID), p.y, -1)
		p.pdf.Bookmark(part.Title, 0, p.y)
	}
	if part.Title != "" {
		p.text(true, partSize, part.Title, 0)
	}
	for _, s := range part.Sections {
		p.section(s)
	}
}

// link returns the number that the document knows a part by.
func (p *pages) link(id string) int {
	n, ok := p.links[id]
	if !ok {
		n = p.pdf.AddLink()
		p.links[id] = n
	}
	return n
}

func (p *pages) section(s Section) {
	least := 26.0
	if len(s.Charts) > 0 {
		least += mm(chartHeight)
	}
	p.room(least)
	p.gap(3)
	if s.Title != "" {
		p.text(true, sectionSize, s.Title, 0)
		p.gap(0.8)
	}
	p.facts(s.Facts)
	p.charts(s.Charts)
	if len(s.Table.Rows) > 0 {
		p.gap(1)
		p.table(s.Table)
	}
	for _, n := range s.Notes {
		p.gap(1)
		p.text(false, bodySize, n, 0)
	}
}

// factIndent is how far the figures of facts stand from their names.
const factIndent = 32.0

func (p *pages) facts(facts []Fact) {
	for _, f := range facts {
		name := p.types.Wrap(true, bodySize, f.Name, factIndent-2)
		var lines []string
		for _, text := range f.Lines {
			lines = append(lines, p.types.Wrap(false, bodySize, unbroken(text), textWide-factIndent)...)
		}
		for i := range max(len(name), len(lines)) {
			p.room(height(bodySize))
			if i < len(name) {
				p.put(true, bodySize, margin, p.y, name[i])
			}
			if i < len(lines) {
				p.put(false, bodySize, margin+factIndent, p.y, lines[i])
			}
			p.y += height(bodySize)
		}
		p.gap(0.6)
	}
}

// charts sets charts two by two, those that have something to show.
func (p *pages) charts(charts []Chart) {
	var shown []Chart
	for _, c := range charts {
		if _, _, ok := c.Range(); ok {
			shown = append(shown, c)
		}
	}
	high := mm(chartHeight) + height(noteSize)*2
	for i := range shown {
		if i%2 == 0 {
			p.room(high + 2)
			p.gap(2)
		}
		c := &shown[i]
		x := margin + float64(i%2)*(textWide-mm(chartWidth))
		c.draw(plate{p.pdf, p.types, x, p.y})
		for j, l := range p.types.Wrap(false, noteSize, unbroken(c.Note), textWide/2-6) {
			p.put(false, noteSize, x+2, p.y+mm(chartHeight)+float64(j)*height(noteSize), l)
		}
		if i%2 == 1 || i == len(shown)-1 {
			p.gap(high)
		}
	}
}

// number sets the title and the page's number below a page.
func (p *pages) number(title string) {
	y := pageHigh - margin - height(noteSize)
	if lines := p.types.Wrap(false, noteSize, title, textWide-30); len(lines) > 0 {
		p.put(false, noteSize, margin, y, lines[0])
	}
	number := "page " + itoa(p.pdf.PageNo())
	p.put(false, noteSize, pageWide-margin-p.types.Width(false, noteSize, number), y, number)
}
