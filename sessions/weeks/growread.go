package weeks

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// readGrow reads what changes from week to week.
func (r *reader) readGrow() {
	for _, m := range r.m.Mappings("grow", maxList, "an entry of grow", growKeys...) {
		marks := m.Marks()
		g := Grow{In: m.Text("in", sessions.MaxText), Pos: marks[""], Marks: marks, ok: true}
		m.Need("in", "what")
		g.What = What(m.Enum("what", "", string(Reps), string(Time), string(Rounds), string(Rest)))
		g.Blocks = names(m, "block")
		g.Exercises = names(m, "exercise")
		if m.Has("exercise") && (g.What == Rounds || g.What == Rest) {
			m.Problem("exercise", fmt.Sprintf("%s belong to a block and not to an exercise", g.What.plural()), "take exercise out, or write what: reps or what: time")
			g.ok = false
		}
		g.From = m.Int("from", 1, r.weeks(), g.defaultFrom(m))
		g.Every = m.Int("every", 1, MaxWeeks, 1)
		g.Until = m.Int("until", 1, r.weeks(), r.weeks())
		r.readAmounts(m, &g)
		g.ok = g.ok && g.In != "" && g.What != ""
		r.p.Grow = append(r.p.Grow, g)
		r.grow = append(r.grow, m)
	}
}

// plural names the value in a sentence.
func (w What) plural() string {
	if w == Rest {
		return "rests"
	}
	return string(w)
}

// defaultFrom is the first week of an entry that names none.
func (g *Grow) defaultFrom(m *yamlread.Mapping) int {
	if m.Has("each") {
		return 1
	}
	return 2
}

// names reads one name or a list of them.
func names(m *yamlread.Mapping, key string) []string {
	v, ok := m.Value(key)
	if !ok {
		return nil
	}
	var all []string
	for _, item := range v.OneOrMore(maxNames) {
		if name := item.Text(sessions.MaxLabel); name != "" {
			all = append(all, name)
		}
	}
	return all
}

// readAmounts reads how the value changes: by so much, or written out.
func (r *reader) readAmounts(m *yamlread.Mapping, g *Grow) {
	if m.Has("each") {
		for _, k := range []string{"by", "every", "until", "limit"} {
			if m.Has(k) {
				m.Problem(k, fmt.Sprintf("%q and \"each\" are both given", k), "each writes the values out, week by week; keep one of the two ways")
				g.ok = false
			}
		}
		r.readEach(m, g)
		return
	}
	if !m.Has("by") {
		m.Problem("", `"by" is missing`, "add by: with what is added each time, or each: with the values week by week")
		g.ok = false
		return
	}
	if m.Has("until") && g.Until < g.From {
		m.Problem("until", fmt.Sprintf("the last week that adds, %d, is before the first, %d", g.Until, g.From), "without from: the first is week 2")
		g.ok = false
	}
	if g.What == "" {
		return
	}
	g.ok = scalar(m, "by", g.byHint(), g.readBy) && g.ok
	if m.Has("limit") {
		g.ok = scalar(m, "limit", g.amountHint(), func(text string) error {
			v, err := g.amount(text)
			g.Limit = &v
			return err
		}) && g.ok
	}
}

// scalar reads a plain value and reports whether it could.
func scalar(m *yamlread.Mapping, key, hint string, parse func(string) error) bool {
	v, ok := m.Value(key)
	return ok && v.Scalar(hint, parse)
}

// readEach reads the values written out.
func (r *reader) readEach(m *yamlread.Mapping, g *Grow) {
	v, ok := m.Value("each")
	if !ok || g.What == "" {
		g.ok = false
		return
	}
	items := v.Items(MaxWeeks)
	g.ok = g.ok && items != nil
	g.Each = []int64{}
	for _, item := range items {
		g.ok = item.Scalar(g.amountHint(), func(text string) error {
			a, err := g.amount(text)
			g.Each = append(g.Each, a)
			return err
		}) && g.ok
	}
}

// maxPercent is the most that is added at a time.
const maxPercent = 1000

// readBy reads what is added at a time.
func (g *Grow) readBy(text string) (err error) {
	size, negative := strings.CutPrefix(text, "-")
	if !negative {
		size = strings.TrimPrefix(size, "+")
	}
	sign := int64(1)
	if negative {
		sign = -1
	}
	if strings.HasSuffix(size, "%") {
		p, err := ParsePercent(size)
		if err == nil && p > maxPercent*1000 {
			err = fmt.Errorf("is more than %d %%", maxPercent)
		}
		g.Percent = Percent(sign) * p
		return orNothing(err, int64(p))
	}
	v, err := g.plain(size)
	g.By = sign * v
	return orNothing(err, v)
}

// orNothing refuses a change of nothing.
func orNothing(err error, v int64) error {
	if err == nil && v == 0 {
		return errors.New("changes nothing")
	}
	return err
}

// amount reads a value that the session can have.
func (g *Grow) amount(text string) (int64, error) {
	v, err := g.plain(text)
	if err == nil && v == 0 && g.What != Rest {
		err = errors.New("is nothing at all")
	}
	return v, err
}

// plain reads a whole number, or a duration, of 0 or more.
func (g *Grow) plain(text string) (int64, error) {
	if !g.What.counted() {
		d, err := units.ParseDuration(text)
		if err == nil && d > sessions.MaxLength {
			err = errors.New("is longer than a session may be")
		}
		return int64(d), err
	}
	v, err := strconv.Atoi(text)
	switch {
	case err != nil || strconv.Itoa(v) != text || v < 0:
		return 0, errors.New("is not a whole number")
	case v > sessions.MaxReps:
		return 0, fmt.Errorf("is more than %d", sessions.MaxReps)
	}
	return int64(v), nil
}

// byHint says how to write what is added.
func (g *Grow) byHint() string {
	if g.What.counted() {
		return "write a whole number such as 1 or -1, or a percentage such as 10%"
	}
	return "write a duration such as 5s or -5s, or a percentage such as 10%"
}

// amountHint says how to write a value.
func (g *Grow) amountHint() string {
	if g.What.counted() {
		return "write a whole number"
	}
	return units.DurationHint
}

// ParsePercent reads a percentage such as 10% or 12.5%, of at most three
// decimals. The error reads on from the text.
func ParsePercent(text string) (Percent, error) {
	number, sign := strings.CutSuffix(text, "%")
	number = strings.TrimRight(number, " ")
	whole, decimals, dotted := strings.Cut(number, ".")
	if !sign || dotted && decimals == "" || len(decimals) > 3 || strings.Trim(whole+decimals, "0123456789") != "" {
		return 0, errors.New("is not a percentage")
	}
	n, err := strconv.ParseInt(whole+decimals+strings.Repeat("0", 3-len(decimals)), 10, 64)
	if whole == "" || err != nil || n > math.MaxInt32 {
		return 0, errors.New("is not a percentage")
	}
	return Percent(n), nil
}
