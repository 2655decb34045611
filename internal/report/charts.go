package report

import (
	"fmt"

	"coldfloor/internal/review"
	"coldfloor/internal/trainingload"
)

// The axis of weeks.
const weekAxis = "week from (Monday)"

// hollow says why a column is drawn hollow.
const hollow = "hollow: the week is not over or a session is not rated, so it may grow"

// weekly returns a chart with a spot a week; value gives its figure, and
// whether there is one.
func weekly(p *review.Player, title, unit string, value func(*review.Week) (float64, bool)) Chart {
	c := Chart{Title: title, Unit: unit, Time: weekAxis}
	for i := range p.Weeks {
		w := &p.Weeks[i]
		s := Spot{Label: w.Monday.Format(dateOnly), Open: w.Open}
		if v, ok := value(w); ok {
			s.Values = []float64{v}
		}
		c.Spots = append(c.Spots, s)
	}
	if n := len(c.Spots); n > 0 && c.Spots[n-1].Open {
		c.Note = "hollow: the week is not over"
	}
	return c
}

func contactsChart(p *review.Player) Chart {
	c := weekly(p, "Foot contacts a week", "foot contacts", func(w *review.Week) (float64, bool) {
		return float64(w.Contacts), w.Contacts > 0 || w.Uncounted == 0
	})
	for i := range c.Spots {
		if p.Weeks[i].Uncounted > 0 {
			c.Spots[i].Open, c.Note = true, "hollow: the week is not over or jumps are uncounted, so it may grow"
		}
	}
	return c
}

// cutChart is the part of the rests that were cut short, which is what a clock
// that ends rests cannot hide.
func cutChart(p *review.Player) Chart {
	return weekly(p, "Rests cut short", "%", func(w *review.Week) (float64, bool) {
		part, ok := cut(&w.Rest).Part()
		return 100 * part, ok
	})
}

func roundsChart(p *review.Player) Chart {
	return weekly(p, "Rounds done of those prescribed", "%", func(w *review.Week) (float64, bool) {
		part, ok := w.Rounds.Part()
		return 100 * part, ok
	})
}

// loadChart is the load a week, the sum of what is known of it.
func loadChart(p *review.Player) Chart {
	c := weekly(p, "Load a week", "effort × min", func(w *review.Week) (float64, bool) {
		return w.Load().Total, w.Load().Total > 0 || w.Lacks() == 0
	})
	for i := range c.Spots {
		if p.Weeks[i].Lacks() > 0 {
			c.Spots[i].Open, c.Note = true, hollow
		}
	}
	return c
}

func monotonyChart(p *review.Player) Chart {
	c := weekly(p, "Monotony", "mean / SD", func(w *review.Week) (float64, bool) {
		m, _, why := w.Monotony()
		return m, why == ""
	})
	c.Note = "no column: the week has none"
	return c
}

func strainChart(p *review.Player) Chart {
	c := weekly(p, "Strain", "load × monotony", func(w *review.Week) (float64, bool) {
		_, s, why := w.Monotony()
		return s, why == ""
	})
	c.Note = "no column: the week has none"
	return c
}

// restChart is the middle of the rest deviations of every week.
func restChart(p *review.Player) Chart {
	c := Chart{Title: "Rest taken less rest prescribed", Unit: "seconds", Time: weekAxis, Kind: Spans,
		Note: "median and middle half; above 0 is longer than prescribed"}
	for i := range p.Weeks {
		w := &p.Weeks[i]
		s := Spot{Label: w.Monday.Format(dateOnly), Open: w.Open}
		if m, ok := w.Rest.Deviations.Median(); ok {
			first, third, _ := w.Rest.Deviations.Middle()
			s.Values = []float64{first.Seconds(), m.Seconds(), third.Seconds()}
		}
		c.Spots = append(c.Spots, s)
	}
	return c
}

// averagesChart is the weighted averages of the daily load.
func averagesChart(p *review.Player) Chart {
	c := Chart{Title: "Weighted load a day", Unit: "effort × min a day", Time: "day", Kind: Lines,
		Names: []string{fmt.Sprintf("over %d days", trainingload.ShortSpan), fmt.Sprintf("over %d days", trainingload.LongSpan)}}
	for _, d := range p.Days {
		c.Spots = append(c.Spots, Spot{Label: d.Date.Format(dateOnly), Values: []float64{d.Short, d.Long}})
	}
	return c
}
