package settings

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
)

// Range is a published or chosen range, ends included: in plain numbers, or
// seconds, or metres, as its Limit says.
type Range struct{ Low, High float64 }

// Within reports whether v is in the range.
func (r Range) Within(v float64) bool { return v >= r.Low && v <= r.High }

// Unit is what the ends of a range are counted in.
type Unit string

// The units of a range.
const (
	Count  Unit = "count"  // plain numbers
	Time   Unit = "time"   // seconds
	Metres Unit = "metres" // metres
)

// Limit is one range that check and next go by, and that a coach can change.
type Limit struct {
	Key     string // under limits in the settings file
	Unit    Unit
	Default Range
	Meaning string
	Source  string // of the default, with how sure it is
}

// Sources that several limits share: who, and how sure it is. The full titles
// are in the explanations of the rules.
const (
	nsca     = "NSCA Essentials, from memory"
	nscaSeen = "NSCA Essentials, second-hand"
	practice = "common practice, no source"

	returning = "Caterisano et al. (CSCCa and NSCA), Strength Cond J 2019;41(3):1–23, second-hand"
)

// AllLimits is every limit, in the order in which they are shown.
var AllLimits = []Limit{
	{"contacts_beginner", Count, Range{80, 100}, "foot contacts of one session, beginner", nsca},
	{"contacts_intermediate", Count, Range{100, 120}, "foot contacts of one session, intermediate", nsca},
	{"contacts_advanced", Count, Range{120, 140}, "foot contacts of one session, advanced", nsca},
	{"week_contacts_beginner", Count, Range{160, 200}, "foot contacts of one week, beginner", "two sessions a week, " + nsca},
	{"week_contacts_intermediate", Count, Range{200, 240}, "foot contacts of one week, intermediate", "two sessions a week, " + nsca},
	{"week_contacts_advanced", Count, Range{240, 280}, "foot contacts of one week, advanced", "two sessions a week, " + nsca},
	{"session_rise", Count, Range{10, 100}, "percent that a session has more contacts than the largest of the 30 days before", "Frandsen et al., Br J Sports Med 2025;59:1203–1210, seen; the analogy is ours"},
	{"lighter_after", Count, Range{6, 6}, "weeks in a row without a lighter one", "Rogerson et al., Sports Med Open 2024;10:26, seen: every 5.6 ± 2.3 weeks"},
	{"jump_interval", Time, hours(48, 72), "from one session with foot contacts to the next", nsca},
	{"jump_days", Count, Range{1, 3}, "sessions with foot contacts in seven days", nsca},
	{"jump_rest_ratio", Count, Range{5, 10}, "work to rest as 1:N, plyometric work", nsca},
	{"power_rest_ratio", Count, Range{12, 20}, "work to rest as 1:N, at 90–100 % of maximal power", nscaSeen},
	{"short_rest_ratio", Count, Range{3, 5}, "work to rest as 1:N, conditioning efforts up to 30 s", nsca},
	{"medium_rest_ratio", Count, Range{3, 4}, "work to rest as 1:N, conditioning efforts up to 3 min", nsca},
	{"long_rest_ratio", Count, Range{1, 3}, "work to rest as 1:N, conditioning efforts over 3 min", nsca},
	{"power_effort", Time, Range{5, 10}, "one effort at 90–100 % of maximal power", nscaSeen},
	{"power_reps", Count, Range{3, 8}, "reps of a power set, or reps a side", practice},
	{"round_rest", Time, Range{60, 90}, "between rounds of a power superset, about 90 s; check warns below the lower end", practice},
	{"strength_rest", Time, Range{120, 300}, "between sets, strength", nscaSeen},
	{"assistance_rest", Time, Range{60, 120}, "between sets, assistance exercises", "ACSM, Med Sci Sports Exerc 2009;41:687–708, second-hand"},
	{"size_rest", Time, Range{30, 90}, "between sets, muscle size", nscaSeen},
	{"endurance_rest", Time, Range{0, 30}, "between sets, muscular endurance", nscaSeen},
	{"warm_up", Time, Range{300, 600}, "of warm-up before the first jump; check warns below the lower end", "common practice, no source; its least after Jeffreys, RAMP, 2007, second-hand"},
	{"headroom", Metres, Range{0.1, 0.1}, "to spare between the fingertips and the ceiling", "our own, no source"},
	{"next_rounds", Count, Range{90, 90}, "percent of a week's rounds below which the next week adds nothing", practice},
	{"next_rests_cut", Count, Range{20, 20}, "percent of the rests cut short above which the next week adds nothing", practice},
	{"next_effort", Count, Range{2, 2}, "points of effort above the usual for a session from which the next week adds nothing", practice},
	{"next_ratings", Count, Range{3, 3}, "earlier ratings of a session that make a usual effort", practice},
	{"next_missed", Count, Range{50, 50}, "percent of a week's sessions missed from which the next week adds nothing", practice},
	{"next_stop_pain", Count, Range{6, 6}, "pain of 10 from which a licensed practitioner comes first", "Silbernagel et al., Am J Sports Med 2007;35:897–906, second-hand: at most 5 in a known tendon trouble"},
	{"next_pain_keep", Count, Range{50, 50}, "percent kept in the week after pain", practice},
	{"next_break", Count, Range{14, 14}, "days without training that count as a break", returning},
	{"next_return_1", Count, Range{50, 50}, "percent kept in the first week after a break", returning},
	{"next_return_2", Count, Range{70, 70}, "percent kept in the second week after a break", returning},
	{"next_return_3", Count, Range{80, 80}, "percent kept in the third week after a break", returning},
	{"next_return_4", Count, Range{90, 90}, "percent kept in the fourth week after a break", returning},
}

func hours(low, high float64) Range { return Range{low * 3600, high * 3600} }

// Limits holds the range of every limit by its key.
type Limits map[string]Range

// defaultLimits returns the published and customary ranges.
func defaultLimits() Limits {
	l := make(Limits, len(AllLimits))
	for _, d := range AllLimits {
		l[d.Key] = d.Default
	}
	return l
}

// LimitByKey returns the limit of that key; it panics if there is none.
func LimitByKey(key string) Limit {
	for _, d := range AllLimits {
		if d.Key == key {
			return d
		}
	}
	panic("settings: no limit " + key)
}

func limitKeys() []string {
	names := make([]string, len(AllLimits))
	for i, d := range AllLimits {
		names[i] = d.Key
	}
	return names
}

// read takes over the limits that a file gives.
func (l Limits) read(m *yamlread.Mapping) {
	for _, d := range AllLimits {
		m.Scalar(d.Key, d.hint(), func(text string) error {
			r, err := d.parse(text)
			if err == nil {
				l[d.Key] = r
			}
			return err
		})
	}
}

// hint says how to write the limit.
func (d Limit) hint() string {
	return "write it as " + d.Format(d.Default) + ", or as one value"
}

// parse reads a range, or one value that is both its ends.
func (d Limit) parse(text string) (Range, error) {
	low, high, two := strings.Cut(strings.ReplaceAll(text, "–", "-"), "-")
	if !two {
		high = low
	} else if d.Unit != Count && strings.Trim(low, "0123456789. ") == "" {
		low += strings.TrimLeft(high, "0123456789. ") // 3-5m is 3m-5m
	}
	var r Range
	var err error
	if r.Low, err = d.value(low); err != nil {
		return r, err
	}
	if r.High, err = d.value(high); err != nil {
		return r, err
	}
	if r.Low > r.High {
		return r, errors.New("begins above its end")
	}
	return r, nil
}

// value reads one end of a range.
func (d Limit) value(text string) (float64, error) {
	text = strings.TrimSpace(text)
	switch d.Unit {
	case Time:
		v, err := units.ParseDuration(text)
		return v.Seconds(), err
	case Metres:
		v, err := units.ParseLength(text)
		return v.Metres(), err
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || !(v >= 0 && v <= 1e6) {
		return 0, errors.New("is not a number or a range of numbers")
	}
	return v, nil
}

// Changed reports whether the coach has changed the limit of that key.
func (l Limits) Changed(key string) bool { return l[key] != LimitByKey(key).Default }

// Format writes a range of the limit so that the settings file reads it back.
func (d Limit) Format(r Range) string {
	if r.Low == r.High {
		return d.end(r.Low)
	}
	return fmt.Sprintf("%s-%s", d.end(r.Low), d.end(r.High))
}

func (d Limit) end(v float64) string {
	switch d.Unit {
	case Time:
		return units.FormatDuration(time.Duration(v * float64(time.Second)))
	case Metres:
		return units.Length(math.Round(v * float64(units.Metre))).String()
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
