package weeks_test

import (
	"fmt"
	"math/big"
	"slices"
	"strings"
	"time"

	"pgregory.net/rapid"
)

// drawPlan draws a plan, most often a valid one, and sometimes one with an
// entry that finds or changes nothing, is beyond its limit, or moves what
// cannot be moved.
func drawPlan(t *rapid.T) *oPlan {
	p := &oPlan{
		starts:  time.Date(2026, 11, rapid.IntRange(1, 30).Draw(t, "starts"), 0, 0, 0, 0, time.UTC),
		weeks:   rapid.IntRange(1, 9).Draw(t, "weeks"),
		days:    map[string][]oSlot{},
		lighter: map[int]int64{},
		move:    map[time.Time]time.Time{},
	}
	for i := range rapid.IntRange(1, 3).Draw(t, "sessions") {
		p.sessions = append(p.sessions, drawSession(t, fmt.Sprintf("s%d.yaml", i+1)))
	}
	for _, day := range rapid.SliceOfNDistinct(rapid.SampledFrom(oWeekdays), 1, 4, rapid.ID).Draw(t, "days") {
		for range rapid.SampledFrom([]int{1, 1, 1, 2}).Draw(t, "slots") {
			p.days[day] = append(p.days[day], p.drawSlot(t))
		}
	}
	for range rapid.IntRange(0, 3).Draw(t, "entries") {
		p.grow = append(p.grow, p.drawGrow(t))
	}
	for range rapid.SampledFrom([]int{0, 0, 1, 2}).Draw(t, "lighter") {
		p.lighter[p.week(t)] = rapid.Int64Range(1, 99).Draw(t, "keep")
	}
	p.hold = rapid.SliceOfNDistinct(rapid.IntRange(1, p.weeks), 0, min(2, p.weeks), rapid.ID).Draw(t, "hold")
	for range rapid.SampledFrom([]int{0, 0, 1}).Draw(t, "away") {
		from := p.day(t)
		p.away = append(p.away, [2]time.Time{from, from.AddDate(0, 0, rapid.IntRange(0, 4).Draw(t, "long"))})
	}
	for range rapid.SampledFrom([]int{0, 0, 1, 2}).Draw(t, "moves") {
		p.move[p.day(t)] = p.day(t)
	}
	return p
}

func (p *oPlan) week(t *rapid.T) int { return rapid.IntRange(1, p.weeks).Draw(t, "week") }

// day draws a day of the plan, or now and then one beside it.
func (p *oPlan) day(t *rapid.T) time.Time {
	if all := p.pattern(); len(all) > 0 && rapid.Bool().Draw(t, "of the pattern") {
		return rapid.SampledFrom(all).Draw(t, "day").date
	}
	return p.starts.AddDate(0, 0, rapid.IntRange(-1, 7*p.weeks).Draw(t, "day"))
}

func (p *oPlan) drawSlot(t *rapid.T) oSlot {
	s := oSlot{session: rapid.SampledFrom(p.sessions).Draw(t, "session").name}
	s.at = rapid.SampledFrom([]string{"", "", "07:30", "18:30"}).Draw(t, "at")
	if rapid.IntRange(0, 3).Draw(t, "only") == 0 {
		s.only = rapid.SliceOfNDistinct(rapid.IntRange(1, p.weeks), 1, p.weeks, rapid.ID).Draw(t, "weeks")
	}
	return s
}

func drawSession(t *rapid.T, name string) oSession {
	s := oSession{name: name}
	for i := range rapid.IntRange(1, 3).Draw(t, "blocks") {
		b := oBlock{title: fmt.Sprintf("B%d", i/2), part: rapid.SampledFrom([]string{"main", "main", "warm-up"}).Draw(t, "part"),
			rounds: rapid.Int64Range(1, 6).Draw(t, "rounds")}
		if b.rounds > 1 || rapid.Bool().Draw(t, "has rest") {
			b.rest = drawTime(t, "rest", 0)
		}
		if rapid.Bool().Draw(t, "has rest_after") {
			b.restAfter = drawTime(t, "rest_after", 0)
		}
		for j := range rapid.IntRange(1, 3).Draw(t, "exercises") {
			e := oExercise{name: fmt.Sprintf("E%d", j%2), key: rapid.SampledFrom([]string{"reps", "reps_per_side", "time", "time_per_side"}).Draw(t, "key")}
			if strings.HasPrefix(e.key, "reps") {
				e.v = big.NewRat(rapid.Int64Range(1, 20).Draw(t, "reps"), 1)
			} else {
				e.v = drawTime(t, "time", 1)
			}
			b.exercises = append(b.exercises, e)
		}
		s.blocks = append(s.blocks, b)
	}
	return s
}

// drawTime draws seconds, whole or with tenths.
func drawTime(t *rapid.T, name string, least int64) *big.Rat {
	if rapid.IntRange(0, 3).Draw(t, name+" in tenths") == 0 {
		return big.NewRat(rapid.Int64Range(max(least, 1), 400).Draw(t, name), 10)
	}
	return big.NewRat(rapid.Int64Range(least, 90).Draw(t, name), 1)
}

func (p *oPlan) drawGrow(t *rapid.T) oGrow {
	s := rapid.SampledFrom(p.sessions).Draw(t, "in")
	g := oGrow{in: s.name, what: rapid.SampledFrom([]string{"reps", "time", "rounds", "rest"}).Draw(t, "what")}
	if rapid.IntRange(0, 2).Draw(t, "by block") == 0 {
		g.blocks = []string{rapid.SampledFrom(s.blocks).Draw(t, "block").title}
	}
	if rapid.IntRange(0, 2).Draw(t, "by name") == 0 && (g.what == "reps" || g.what == "time") {
		g.exercises = []string{"E0"}
	}
	if rapid.IntRange(0, 2).Draw(t, "has from") == 0 {
		g.from = p.week(t)
	}
	if rapid.IntRange(0, 3).Draw(t, "has each") != 0 {
		p.drawBy(t, &g)
		return g
	}
	least := int64(1)
	if g.what == "rest" {
		least = 0
	}
	for range rapid.IntRange(1, 5).Draw(t, "values") {
		g.each = append(g.each, g.drawAmount(t, "value", least))
	}
	return g
}

// drawAmount draws a value or a change of an entry.
func (g oGrow) drawAmount(t *rapid.T, name string, least int64) *big.Rat {
	switch g.what {
	case "rounds":
		return big.NewRat(rapid.Int64Range(max(least, 1), 5).Draw(t, name), 1)
	case "reps":
		return big.NewRat(rapid.Int64Range(max(least, 1), 20).Draw(t, name), 1)
	}
	return drawTime(t, name, least)
}

// drawBy draws what is added at a time, and when.
func (p *oPlan) drawBy(t *rapid.T, g *oGrow) {
	g.by = g.drawAmount(t, "by", 1)
	if rapid.IntRange(0, 2).Draw(t, "is percent") == 0 {
		g.percent, g.by = true, big.NewRat(rapid.Int64Range(1, 300).Draw(t, "percent"), rapid.SampledFrom([]int64{1, 2, 10}).Draw(t, "parts"))
	}
	if rapid.IntRange(0, 2).Draw(t, "less") == 0 {
		g.by.Neg(g.by)
	}
	if rapid.IntRange(0, 2).Draw(t, "has every") == 0 {
		g.every = rapid.IntRange(1, 4).Draw(t, "every")
	}
	if from := max(g.from, 2); rapid.IntRange(0, 2).Draw(t, "has until") == 0 && from <= p.weeks && g.from > 0 {
		g.until = rapid.IntRange(from, p.weeks).Draw(t, "until")
	}
	if rapid.IntRange(0, 2).Draw(t, "has limit") == 0 {
		g.limit = g.drawAmount(t, "limit", 1)
	}
}

// write writes the plan as a file, every entry that can be wrong on a line of
// its own, and returns where they stand.
func (p *oPlan) write() (src string, growAt, lighterAt map[int]int, moveAt map[time.Time]int) {
	growAt, lighterAt, moveAt = map[int]int{}, map[int]int{}, map[time.Time]int{}
	var lines []string
	say := func(format string, args ...any) { lines = append(lines, fmt.Sprintf(format, args...)) }
	say("coldfloor: 1\ntitle: Random\nstarts: %s\nweeks: %d\ndays:", p.starts.Format(oDate), p.weeks)
	lines = strings.Split(strings.Join(lines, "\n"), "\n")
	for _, day := range oWeekdays {
		if len(p.days[day]) > 0 {
			say("  %s: [%s]", day, strings.Join(each(p.days[day], oSlot.String), ", "))
		}
	}
	for i, g := range p.grow {
		if i == 0 {
			say("grow:")
		}
		say("- {%s}", g)
		growAt[i] = len(lines)
	}
	for i, w := range sortedKeys(p.lighter) {
		if i == 0 {
			say("lighter:")
		}
		say("- {week: %d, keep: %d%%}", w, p.lighter[w])
		lighterAt[w] = len(lines)
	}
	if len(p.hold) > 0 {
		say("hold: [%s]", strings.Join(each(p.hold, func(w int) string { return fmt.Sprint(w) }), ", "))
	}
	if len(p.away) > 0 {
		say("away: [%s]", strings.Join(each(p.away, func(r [2]time.Time) string { return r[0].Format(oDate) + ".." + r[1].Format(oDate) }), ", "))
	}
	first := true
	for from, to := range p.move {
		if first {
			say("move:")
		}
		first = false
		say("  %s: %s", from.Format(oDate), to.Format(oDate))
		moveAt[from] = len(lines)
	}
	return strings.Join(lines, "\n") + "\n", growAt, lighterAt, moveAt
}

func each[T any](list []T, f func(T) string) []string {
	var out []string
	for _, v := range list {
		out = append(out, f(v))
	}
	return out
}

func sortedKeys(m map[int]int64) []int {
	var keys []int
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

func (s oSlot) String() string {
	text := "{session: " + s.session
	if s.at != "" {
		text += `, at: "` + s.at + `"`
	}
	if s.only != nil {
		text += ", only: [" + strings.Join(each(s.only, func(w int) string { return fmt.Sprint(w) }), ", ") + "]"
	}
	return text + "}"
}

func (g oGrow) String() string {
	parts := []string{"in: " + g.in, "what: " + g.what}
	unit := "s"
	if g.what == "reps" || g.what == "rounds" {
		unit = ""
	}
	if g.blocks != nil {
		parts = append(parts, "block: "+g.blocks[0])
	}
	if g.exercises != nil {
		parts = append(parts, "exercise: "+g.exercises[0])
	}
	for _, k := range []struct {
		key string
		n   int
	}{{"every", g.every}, {"from", g.from}, {"until", g.until}} {
		if k.n > 0 {
			parts = append(parts, fmt.Sprintf("%s: %d", k.key, k.n))
		}
	}
	if g.each != nil {
		return strings.Join(append(parts, "each: ["+strings.Join(each(g.each, func(v *big.Rat) string { return decimal(v) + unit }), ", ")+"]"), ", ")
	}
	if g.limit != nil {
		parts = append(parts, "limit: "+decimal(g.limit)+unit)
	}
	if g.percent {
		unit = "%"
	}
	return strings.Join(append(parts, "by: "+decimal(g.by)+unit), ", ")
}

// decimal writes a number without a needless point.
func decimal(r *big.Rat) string {
	if r.IsInt() {
		return r.Num().String()
	}
	return strings.TrimRight(r.FloatString(9), "0")
}

// String writes the session as a file.
func (s oSession) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "coldfloor: 1\ntitle: %s # kept\nblocks:\n", strings.TrimSuffix(s.name, ".yaml"))
	for _, bl := range s.blocks {
		fmt.Fprintf(&b, "- title: %s\n  part: %s\n", bl.title, bl.part)
		if bl.rounds > 1 {
			fmt.Fprintf(&b, "  rounds: %d # of them\n", bl.rounds)
		}
		if bl.rest != nil {
			fmt.Fprintf(&b, "  rest: %ss\n", decimal(bl.rest))
		}
		if bl.restAfter != nil {
			fmt.Fprintf(&b, "  rest_after: %ss\n", decimal(bl.restAfter))
		}
		fmt.Fprintf(&b, "  exercises:\n")
		for _, e := range bl.exercises {
			unit := "s"
			if strings.HasPrefix(e.key, "reps") {
				unit = ""
			}
			fmt.Fprintf(&b, "  - name: %s\n    # how much\n    %s: %s%s\n    contacts: 1\n", e.name, e.key, decimal(e.v), unit)
		}
	}
	return b.String()
}
