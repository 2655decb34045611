package yamlread

import (
	"fmt"

	"gopkg.in/yaml.v3"
)

// Value is one value of a file together with its place, for shapes that the
// readers of a Mapping do not know: one thing or a list of them, a text or a
// mapping, a mapping whose keys the file chooses. Messages call it by the key
// it belongs to.
type Value struct {
	f   *File
	n   *yaml.Node
	key string
}

// Pair is one key of a mapping whose keys the file chooses, and its value.
type Pair struct{ Key, Value Value }

// Value returns the value of key, and false if the file gives none.
func (m *Mapping) Value(key string) (Value, bool) {
	n := m.value(key)
	return Value{m.f, n, key}, n != nil
}

// Pos returns where the value begins.
func (v Value) Pos() Pos { return place(v.n) }

// IsMapping reports whether the value is a mapping.
func (v Value) IsMapping() bool { return v.n.Kind == yaml.MappingNode }

// IsList reports whether the value is a list.
func (v Value) IsList() bool { return v.n.Kind == yaml.SequenceNode }

// Problem notes a problem of the caller's own at the value.
func (v Value) Problem(message, hint string) { v.f.add(v.Pos(), message, hint) }

// Quoted returns what the file says, fit to stand in a message.
func (v Value) Quoted() string {
	if v.n.Kind != yaml.ScalarNode {
		return describe(v.n)
	}
	return quote(v.n.Value)
}

// Word returns the value as it is typed, or nothing if it is a list or a
// mapping.
func (v Value) Word() string {
	if v.n.Kind != yaml.ScalarNode {
		return ""
	}
	return v.n.Value
}

// OneOrMore returns the items of a list of 1 to most, or the value itself
// if it is no list.
func (v Value) OneOrMore(most int) []Value {
	if !v.IsList() {
		return []Value{v}
	}
	return v.Items(most)
}

// Items returns the items of a list of 1 to most values; it notes a problem
// and returns none if the value is no such list.
func (v Value) Items(most int) []Value {
	switch {
	case !v.IsList():
		v.Problem(quote(v.key)+" must be a list, not "+describe(v.n), "write [first, second], or lines that begin with -")
		return nil
	case len(v.n.Content) == 0:
		v.Problem(quote(v.key)+" is an empty list", "write at least one item, or take the key out")
		return nil
	case len(v.n.Content) > most:
		v.Problem(fmt.Sprintf("%q is a list of %d, at most %d", v.key, len(v.n.Content), most), "")
		return nil
	}
	list := make([]Value, len(v.n.Content))
	for i, n := range v.n.Content {
		list[i] = Value{v.f, follow(n), v.key}
	}
	return list
}

// Pairs returns the keys of a mapping and their values, in the order of the
// file; it notes a problem if the value is none, has more than most keys or
// a key without a value.
func (v Value) Pairs(most int, hint string) []Pair {
	switch {
	case !v.IsMapping():
		v.Problem(quote(v.key)+" must be a mapping, not "+describe(v.n), hint)
		return nil
	case len(v.n.Content) == 0:
		v.Problem(quote(v.key)+" is empty", hint)
		return nil
	case len(v.n.Content) > 2*most:
		v.Problem(fmt.Sprintf("%q has %d keys, at most %d", v.key, len(v.n.Content)/2, most), "")
		return nil
	}
	var pairs []Pair
	for i := 0; i+1 < len(v.n.Content); i += 2 {
		key, value := follow(v.n.Content[i]), follow(v.n.Content[i+1])
		p := Pair{Value{v.f, key, v.key}, Value{v.f, value, key.Value}}
		switch {
		case key.Kind != yaml.ScalarNode || key.Tag == "!!merge":
			p.Key.Problem("a key must be a word, not "+describe(key), hint)
		case value.Kind == yaml.ScalarNode && value.Tag == "!!null":
			p.Key.Problem(quote(key.Value)+" has no value", "write one, or take the key out")
		default:
			pairs = append(pairs, p)
		}
	}
	return pairs
}

// Mapping reads the value as a mapping with the given keys, or returns nil.
func (v Value) Mapping(keys ...string) *Mapping { return v.f.mapping(v.n, quote(v.key), keys) }

// Text reads the value as Mapping.Text does.
func (v Value) Text(most int) string { return (&Mapping{f: v.f}).text(v.key, v.n, most) }

// Scalar hands the text of a plain value to parse, as Mapping.Scalar does, and
// reports whether it could be read.
func (v Value) Scalar(hint string, parse func(text string) error) bool {
	if v.n.Kind != yaml.ScalarNode {
		v.Problem(quote(v.key)+" cannot be "+describe(v.n), hint)
		return false
	}
	if err := parse(v.n.Value); err != nil {
		v.Problem(quote(v.key)+": "+quote(v.n.Value)+" "+err.Error(), hint)
		return false
	}
	return true
}
