package yamlread

import (
	"fmt"
	"slices"
	"strings"

	"coldfloor/internal/nearest"

	"gopkg.in/yaml.v3"
)

// Mapping is one mapping of a file. Its methods read the value of a key; each
// notes what is wrong with the value and returns the zero value or the given
// default, so that reading goes on and everything wrong is reported at once.
// A key that is not there is wrong only if Need asks for it.
type Mapping struct {
	f       *File
	at      Pos
	entries []entry
}

// entry is a key and its value; the value is nil if the file gives none.
type entry struct {
	key   string
	at    Pos
	value *yaml.Node
}

// mapping reads n, which messages call what, as a mapping with the given
// keys. It returns nil if n is none.
func (f *File) mapping(n *yaml.Node, what string, keys []string) *Mapping {
	n = follow(n)
	if n.Kind != yaml.MappingNode {
		f.add(place(n), what+" must be a mapping, not "+describe(n), "write lines of key: value")
		return nil
	}
	m := &Mapping{f: f, at: place(n), entries: make([]entry, 0, len(n.Content)/2)}
	var unknown []int // read last: which key one stands for depends on those that are given
	for i := 0; i+1 < len(n.Content); i += 2 {
		if name := follow(n.Content[i]); isWord(name) && !slices.Contains(keys, name.Value) {
			unknown = append(unknown, i)
			continue
		}
		m.entry(n.Content[i], follow(n.Content[i+1]), keys)
	}
	for _, i := range unknown {
		m.unknown(n.Content[i], follow(n.Content[i+1]), keys)
	}
	return m
}

// isWord reports whether a key is a word, and no number, list or <<.
func isWord(key *yaml.Node) bool { return key.Kind == yaml.ScalarNode && key.Tag == "!!str" }

// otherWords are the words that people use for some keys, close in meaning but not
// in spelling. The first of the keys that the mapping may have is meant.
var otherWords = map[string][]string{
	"repetition":  {"reps"},
	"repetitions": {"reps"},
	"repeats":     {"reps", "rounds"},
	"duration":    {"time"},
	"seconds":     {"time"},
	"length":      {"time"},
	"sets":        {"rounds"},
	"series":      {"rounds"},
	"pause":       {"rest"},
	"break":       {"rest"},
	"name":        {"title"},
	"title":       {"name"},
	"drills":      {"exercises"},
	"movements":   {"exercises"},
	"description": {"how"},
	"tips":        {"cues"},
	"weight":      {"load", "mass"},
}

// meant returns the one of keys that somebody who wrote word most likely meant,
// or "".
func meant(word string, keys []string) string {
	for _, k := range otherWords[strings.ToLower(word)] {
		if slices.Contains(keys, k) {
			return k
		}
	}
	return nearest.Word(word, keys)
}

// unknown notes a key that is not one of keys. If one that the file does not give
// was most likely meant, it stands for that one from here on, so that a slip of the
// finger is not told a second time as something missing. What it holds is read
// if it has lines of its own; a plain value may be meant for another key.
func (m *Mapping) unknown(key, value *yaml.Node, keys []string) {
	if m.f.full() {
		return // the search for what is near takes time
	}
	at, name := place(key), follow(key).Value
	open := slices.DeleteFunc(slices.Clone(keys), m.Has)
	near := meant(name, open)
	if near != "" {
		if value.Kind == yaml.ScalarNode {
			value = nil
		}
		m.entries = append(m.entries, entry{near, at, value})
	} else {
		near = meant(name, keys)
	}
	hint := known(keys)
	if near != "" {
		hint = "did you mean " + near + "?"
	}
	m.f.add(at, "unknown key "+quote(name), hint)
}

// entry takes in one of keys and its value.
func (m *Mapping) entry(key, value *yaml.Node, keys []string) {
	at, name := place(key), follow(key)
	switch {
	case name.Tag == "!!merge":
		m.f.add(at, `"<<" does not merge mappings here`, "write the keys out, or share a whole value with &NAME and *NAME")
		return
	case !isWord(name):
		m.f.add(at, "a key must be a word, not "+describe(name), known(keys))
		return
	}
	if first := m.find(name.Value); first != nil {
		m.f.add(at, quote(name.Value)+" is given twice", fmt.Sprintf("it is in line %d already; keep one of them", first.at.Line))
		return
	}
	if value.Kind == yaml.ScalarNode && value.Tag == "!!null" {
		m.f.add(at, quote(name.Value)+" has no value", "write one, or take the key out")
		value = nil
	}
	m.entries = append(m.entries, entry{name.Value, at, value})
}

func known(keys []string) string { return "known here: " + strings.Join(keys, ", ") }

// find returns the entry of key, or nil.
func (m *Mapping) find(key string) *entry {
	for i := range m.entries {
		if m.entries[i].key == key {
			return &m.entries[i]
		}
	}
	return nil
}

// value returns the value of key, or nil if there is none.
func (m *Mapping) value(key string) *yaml.Node {
	if e := m.find(key); e != nil {
		return e.value
	}
	return nil
}

// Has reports whether the file gives key, be it with a wrong value.
func (m *Mapping) Has(key string) bool { return m.find(key) != nil }

// IsMapping reports whether the value of key is a mapping.
func (m *Mapping) IsMapping(key string) bool {
	n := m.value(key)
	return n != nil && n.Kind == yaml.MappingNode
}

// Marks returns where the mapping and its keys stand.
func (m *Mapping) Marks() Marks {
	marks := make(Marks, len(m.entries)+1)
	marks[""] = m.at
	for _, e := range m.entries {
		marks[e.key] = e.at
	}
	return marks
}

// Need notes every one of the keys that is not there.
func (m *Mapping) Need(keys ...string) {
	for _, k := range keys {
		if !m.Has(k) {
			m.f.add(m.at, quote(k)+" is missing", "")
		}
	}
}

// Problem notes a problem of the caller's own at key, or at the mapping's
// start if key is not there.
func (m *Mapping) Problem(key, message, hint string) {
	at := m.at
	if e := m.find(key); e != nil {
		at = e.at
	}
	m.f.add(at, message, hint)
}

// follow returns what an alias stands for, and any other node as it is.
func follow(n *yaml.Node) *yaml.Node {
	for n.Kind == yaml.AliasNode {
		n = n.Alias
	}
	return n
}

// describe says what kind of value n is.
func describe(n *yaml.Node) string {
	switch n.ShortTag() {
	case "!!seq":
		return "a list"
	case "!!map":
		return "a mapping"
	case "!!str":
		return "the text " + quote(n.Value)
	case "!!null":
		return "empty"
	case "!!int", "!!float", "!!bool":
		return n.Value
	case "!!timestamp":
		return "the date " + n.Value
	}
	return "a value tagged " + quote(n.Tag)
}

// ProblemAt notes a problem of the caller's own at another place of the file.
func (m *Mapping) ProblemAt(at Pos, message, hint string) { m.f.add(at, message, hint) }
