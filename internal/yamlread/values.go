package yamlread

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"coldfloor/internal/nearest"
	"coldfloor/internal/units"

	"gopkg.in/yaml.v3"
)

// wrong notes that the value n of key is not what it must be.
func (m *Mapping) wrong(key string, n *yaml.Node, must, hint string) {
	m.f.add(place(n), quote(key)+" must be "+must+", not "+describe(n), hint)
}

// Text reads a text of 1 to most characters. Line breaks, tabs and runs of
// spaces in it count as one space, so the text is a single line.
func (m *Mapping) Text(key string, most int) string {
	n := m.value(key)
	if n == nil {
		return ""
	}
	return m.text(key, n, most)
}

// text reads n, the value of key or an item of it, as a text.
func (m *Mapping) text(key string, n *yaml.Node, most int) string {
	switch {
	case n.Kind == yaml.ScalarNode && n.Tag == "!!str":
	case n.Kind == yaml.ScalarNode:
		m.wrong(key, n, "text", "put it in quotes")
		return ""
	default:
		m.wrong(key, n, "text", "")
		return ""
	}
	s := collapse(n.Value)
	if s == "" {
		m.f.add(place(n), quote(key)+" is empty", "write one, or take the key out")
	}
	if count := utf8.RuneCountInString(n.Value); count > most {
		m.f.add(place(n), fmt.Sprintf("%q is too long: %d characters, at most %d", key, count, most), "")
		return ""
	}
	if i := strings.IndexFunc(s, isControl); i >= 0 {
		r, _ := utf8.DecodeRuneInString(s[i:])
		m.f.unreadable(place(n), r)
		return ""
	}
	return s
}

// collapse makes one line of s.
func collapse(s string) string {
	if !strings.ContainsAny(s, "\t\r\n") && !strings.Contains(s, "  ") && strings.Trim(s, " ") == s {
		return s
	}
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" \t\r\n", r) }), " ")
}

// Texts reads a list of 1 to most texts, each of 1 to each characters. One
// text alone, with no comma in it, is a list of one.
func (m *Mapping) Texts(key string, most, each int) []string {
	if n := m.value(key); n != nil && n.Kind == yaml.ScalarNode && n.Tag == "!!str" && !strings.Contains(n.Value, ",") {
		if s := m.text(key, n, each); s != "" {
			return []string{s}
		}
		return nil
	}
	items := m.items(key, most)
	if items == nil {
		return nil
	}
	texts := make([]string, len(items))
	for i, n := range items {
		texts[i] = m.text(key, follow(n), each)
	}
	return texts
}

// Mappings reads a list of 1 to most mappings with the given keys. Messages
// call one of them what, as in "an exercise". Items that are no mapping are
// left out.
func (m *Mapping) Mappings(key string, most int, what string, keys ...string) []*Mapping {
	var list []*Mapping
	for _, n := range m.items(key, most) {
		if sub := m.f.mapping(n, what, keys); sub != nil {
			list = append(list, sub)
		}
	}
	return list
}

// items reads a list of 1 to most values.
func (m *Mapping) items(key string, most int) []*yaml.Node {
	n := m.value(key)
	switch {
	case n == nil:
	case n.Kind == yaml.ScalarNode:
		m.wrong(key, n, "a list", "write [first, second], or lines that begin with -")
	case n.Kind != yaml.SequenceNode:
		m.wrong(key, n, "a list", "begin each item with -")
	case len(n.Content) == 0:
		m.f.add(place(n), quote(key)+" is an empty list", "write at least one item, or take the key out")
	case len(n.Content) > most:
		m.f.add(place(n), fmt.Sprintf("%q is a list of %d, at most %d", key, len(n.Content), most), "")
	default:
		return n.Content
	}
	return nil
}

// Mapping reads a mapping with the given keys within this one, or returns nil.
func (m *Mapping) Mapping(key string, keys ...string) *Mapping {
	n := m.value(key)
	if n == nil {
		return nil
	}
	return m.f.mapping(n, quote(key), keys)
}

// Int reads a whole number from least to most, and returns def if there is
// none. It must be typed in plain decimal digits. A hint for what is not one
// may be given.
func (m *Mapping) Int(key string, least, most, def int, hint ...string) int {
	n := m.value(key)
	if n == nil {
		return def
	}
	must := fmt.Sprintf("a whole number from %d to %d", least, most)
	v, err := strconv.Atoi(n.Value)
	switch {
	case n.Kind == yaml.ScalarNode && n.Tag == "!!str" && err == nil:
		m.wrong(key, n, must, "take the quotes away")
		return def
	case n.Kind != yaml.ScalarNode || n.Tag != "!!int" || err != nil || strconv.Itoa(v) != n.Value || v < least || v > most:
		m.wrong(key, n, must, strings.Join(hint, ""))
		return def
	}
	return v
}

// Plain returns the value of key as it is typed, if it is a plain value, and
// else nothing.
func (m *Mapping) Plain(key string) string {
	if n := m.value(key); n != nil && n.Kind == yaml.ScalarNode {
		return n.Value
	}
	return ""
}

// Number reads a number from least to most, and returns def if there is
// none.
func (m *Mapping) Number(key string, least, most, def float64) float64 {
	n := m.value(key)
	if n == nil {
		return def
	}
	v, err := strconv.ParseFloat(n.Value, 64)
	// The comparison is false for not-a-number.
	if number := n.Tag == "!!int" || n.Tag == "!!float"; !number || err != nil || !(v >= least && v <= most) {
		m.wrong(key, n, fmt.Sprintf("a number from %v to %v", least, most), "")
		return def
	}
	return v
}

// Enum reads one of the words allowed, and returns def if there is none.
func (m *Mapping) Enum(key, def string, allowed ...string) string {
	n := m.value(key)
	if n == nil {
		return def
	}
	if n.Kind == yaml.ScalarNode && n.Tag == "!!str" && slices.Contains(allowed, n.Value) {
		return n.Value
	}
	hint := "write " + allowed[0]
	if last := len(allowed) - 1; last > 0 {
		hint = "write " + strings.Join(allowed[:last], ", ") + " or " + allowed[last]
	}
	if near := nearest.Word(n.Value, allowed); near != "" {
		hint = "did you mean " + near + "?"
	}
	what := describe(n)
	if n.Kind == yaml.ScalarNode {
		what = quote(n.Value)
	}
	m.f.add(place(n), quote(key)+" cannot be "+what, hint)
	return def
}

// Duration reads a duration of 0 or more, as units.ParseDuration does, and
// returns def if there is none.
func (m *Mapping) Duration(key string, def time.Duration) time.Duration {
	d := def
	m.Scalar(key, units.DurationHint, func(text string) (err error) {
		d, err = units.ParseDuration(text)
		return err
	})
	return d
}

// PositiveDuration reads a duration as Duration does, and refuses 0.
func (m *Mapping) PositiveDuration(key string, def time.Duration) time.Duration {
	d := def
	m.Scalar(key, units.DurationHint, func(text string) (err error) {
		if d, err = units.ParseDuration(text); err == nil && d == 0 {
			err = errors.New("is no time at all")
		}
		return err
	})
	return d
}

// Length reads a length from least to most, as units.ParseLength does, and
// returns def if there is none.
func (m *Mapping) Length(key string, least, most, def units.Length) units.Length {
	l := def
	m.Scalar(key, units.LengthHint, func(text string) error {
		v, err := units.ParseLength(text)
		if err == nil && (v < least || v > most) {
			err = fmt.Errorf("is not between %v and %v", least, most)
		}
		if err == nil {
			l = v
		}
		return err
	})
	return l
}

// Scalar hands the text of a plain value to parse, whose error reads on from
// the value, as in `"2"` + " has no unit". The hint says how to write it.
func (m *Mapping) Scalar(key, hint string, parse func(text string) error) {
	n := m.value(key)
	if n == nil {
		return
	}
	if n.Kind != yaml.ScalarNode {
		m.f.add(place(n), quote(key)+" cannot be "+describe(n), hint)
		return
	}
	if err := parse(n.Value); err != nil {
		m.f.add(place(n), quote(key)+": "+quote(n.Value)+" "+err.Error(), hint)
	}
}
