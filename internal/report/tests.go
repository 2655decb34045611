package report

import (
	"fmt"
	"math"
	"strings"

	"coldfloor/internal/measured"
	"coldfloor/internal/review"
	"coldfloor/internal/runs"
	"coldfloor/internal/safetext"
)

// Tests is what was measured at home, day by day, with what can be said of it.
func Tests(p *review.Player) Section {
	s := Section{Title: "Tests at home", Table: Table{
		Header: []string{"exercise", "day", "mean", "best", "tries", "practice"},
		Right:  []bool{false, false, true, true},
	}}
	for _, x := range p.Measured {
		s.Facts = append(s.Facts, Fact{seriesName(x), changeLines(x, p.Worthwhile[runs.Key(x.Name)])})
		for i := range x.Days {
			s.Table.Rows = append(s.Table.Rows, testRow(x, i))
		}
		s.Charts = append(s.Charts, testChart(x))
	}
	for _, pair := range measured.Pairs(p.Measured) {
		s.Facts = append(s.Facts, Fact{pair.Left.Name + ", left against right", sideLines(pair)})
	}
	if len(p.Measured) > 0 {
		s.Notes = []string{"The first day of a test is learning and counts for nothing (Marin-Jimenez et al., Eur J Sport Sci 2024). " +
			"The typical error is the SD of the tries within a day, all days but the first together: it leaves out how a player changes from day to day, " +
			"so that the true error of a change is larger (Hopkins, Sports Med 2000;30:1–15). Results of other ways of measuring are never compared."}
	}
	return s
}

// seriesName names what was measured, on which side and how.
func seriesName(x *measured.Series) string {
	name := x.Name
	if x.Side != "both" && x.Side != "" {
		name += ", " + x.Side
	}
	if x.Way != "" {
		name += " (" + x.Way + ")"
	}
	return name
}

// value writes a result with its unit.
func value(x *measured.Series, v float64) string {
	text := strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0")
	if text == "-0" {
		text = "0"
	}
	if x.Unit() != "" {
		text += " " + x.Unit()
	}
	return text
}

// testRow is one day of a series.
func testRow(x *measured.Series, i int) []string {
	d := &x.Days[i]
	mean, best := unknown, unknown
	if m, ok := d.Mean(); ok {
		mean = value(x, m)
	}
	if b, ok := x.Best(d); ok {
		best = value(x, b)
	}
	tries := list(d.Tries)
	if d.LeftOut > 0 {
		tries += fmt.Sprintf(" (%d left out)", d.LeftOut)
	}
	if i == 0 {
		tries += " (learning)"
	}
	return []string{seriesName(x), d.Date.String(), mean, best, tries, list(d.Practice)}
}

// list writes results one after another.
func list(all []float64) string {
	texts := make([]string, len(all))
	for i, v := range all {
		texts[i] = strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0")
	}
	return strings.Join(texts, ", ")
}

// changeLines says what became of a series, and how sure that is.
func changeLines(x *measured.Series, worthwhile float64) []string {
	c, lack := x.Change()
	var lines []string
	if c.Error.Enough() {
		lines = append(lines, fmt.Sprintf("typical error %s (with 95 %% between %s and %s)", value(x, c.Error.SD), value(x, c.Error.Low), value(x, c.Error.High)))
	}
	if c.From != nil {
		text := fmt.Sprintf("%s since %s", signed(x, c.By), c.From.Date)
		switch {
		case lack != "":
		case c.Detectable():
			text += fmt.Sprintf(": more than the tries' own error explains (%s at 95 %%)", value(x, c.Least))
		default:
			text += fmt.Sprintf(": no more than the tries' own error explains (%s at 95 %%)", value(x, c.Least))
		}
		lines = append(lines, text)
	}
	if lack != "" {
		return append(lines, "too little to say: "+string(lack))
	}
	if worthwhile > 0 {
		lines = append(lines, chanceLine(x, &c, worthwhile))
	}
	return lines
}

// chanceLine says how likely a worthwhile change is.
func chanceLine(x *measured.Series, c *measured.Change, worthwhile float64) string {
	more, less := "better", "worse"
	if x.Measure == "time" {
		more, less = "longer", "shorter"
	}
	ch := c.Chances(worthwhile)
	return fmt.Sprintf("if %s matters: %s %s, trivial %s, %s %s", value(x, worthwhile), more, chance(ch.More), chance(ch.Trivial), less, chance(ch.Less))
}

// chance writes a chance in percent, none of them certain.
func chance(part float64) string {
	switch {
	case part < .01:
		return "under 1 %"
	case part > .99:
		return "over 99 %"
	}
	return fmt.Sprintf("%.0f %%", 100*part)
}

// signed writes a change with its sign.
func signed(x *measured.Series, v float64) string {
	if math.Round(v*10) > 0 {
		return "+" + value(x, v)
	}
	return value(x, v)
}

// sideLines holds left against right.
func sideLines(s measured.Sides) []string {
	left, _ := s.Day[0].Mean()
	right, _ := s.Day[1].Mean()
	first := fmt.Sprintf("%s: left %s, right %s", s.Day[0].Date, value(s.Left, left), value(s.Right, right))
	if s.Weaker != "" {
		first += fmt.Sprintf("; the %s is %.0f %% of the other", s.Weaker, s.Percent)
	}
	error := "too few tries to know the error of it"
	if s.Error > 0 {
		error = fmt.Sprintf("%.1f points either way at 95 %%, from the player's own tries", 1.96*s.Error)
	}
	return []string{first, error, fmt.Sprintf("published: two such figures differ from %.1f to %.1f points on (Knee 2019, PubMed 31431339); it predicts little, and distance flatters a knee (Sports Med 2020, PMC7018781)",
		measured.SymmetryLeastLow, measured.SymmetryLeastHigh)}
}

// testChart is the means of the days with the tries' error about them.
func testChart(x *measured.Series) Chart {
	c := Chart{Title: safetext.Fit(seriesName(x), 36), Unit: x.Unit(), Time: "day", Kind: Spans, Close: true, Note: "mean of the day's tries; the bar is its standard error at 95 %, from the typical error; the first day is learning"}
	if c.Unit == "" {
		c.Unit = "number"
	}
	e := x.Typical()
	for i := range x.Days {
		d := &x.Days[i]
		spot := Spot{Label: d.Date.String()}
		if m, ok := d.Mean(); ok {
			half := 0.0
			if e.Enough() {
				half = 1.96 * e.SD / math.Sqrt(float64(len(d.Tries)))
			}
			spot.Values = []float64{m - half, m, m + half}
		}
		c.Spots = append(c.Spots, spot)
	}
	return c
}
