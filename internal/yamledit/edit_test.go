package yamledit

import (
	"strings"
	"testing"

	"gopkg.in/yaml.v3"
)

// get returns what stands at a path of keys and indexes.
func get(n *yaml.Node, path ...any) *yaml.Node {
	for _, p := range path {
		switch p := p.(type) {
		case string:
			n = n.Content[pairOf(n, p)+1]
		case int:
			n = n.Content[p]
		}
	}
	return n
}

func scalar(value, tag string) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Tag: tag, Value: value}
}

// set gives a scalar another value.
func set(value string, path ...any) func(*yaml.Node) {
	return func(root *yaml.Node) { get(root, path...).Value = value }
}

// all makes several changes.
func all(changes ...func(*yaml.Node)) func(*yaml.Node) {
	return func(root *yaml.Node) {
		for _, c := range changes {
			c(root)
		}
	}
}

// pair adds a pair at the end of a mapping.
func pair(key string, value *yaml.Node, path ...any) func(*yaml.Node) {
	return func(root *yaml.Node) {
		n := get(root, path...)
		n.Content = append(n.Content, scalar(key, "!!str"), value)
	}
}

// item adds an item to a list before the one at an index.
func item(at int, value *yaml.Node, path ...any) func(*yaml.Node) {
	return func(root *yaml.Node) {
		n := get(root, path...)
		n.Content = append(n.Content[:at:at], append([]*yaml.Node{value}, n.Content[at:]...)...)
	}
}

// drop takes a pair out of a mapping.
func drop(key string, path ...any) func(*yaml.Node) {
	return func(root *yaml.Node) {
		n := get(root, path...)
		i := pairOf(n, key)
		n.Content = append(n.Content[:i:i], n.Content[i+2:]...)
	}
}

// TestChange: all else stays as it was typed.
func TestChange(t *testing.T) {
	for name, c := range map[string]struct {
		was    string
		change func(*yaml.Node)
		is     string
	}{
		"nothing":         {"\n# a\n\na:   1  # b\n\n\n", all(), "\n# a\n\na:   1  # b\n\n\n"},
		"no last line":    {"a: 1\nb: 2 # c", set("3", "b"), "a: 1\nb: 3 # c"},
		"plain":           {"a:  x  y\n   z   # c\nb: 1\n", set("new", "a"), "a:  new   # c\nb: 1\n"},
		"quoted":          {`a: "x \" # y"  # c`, set("new", "a"), `a: "new"  # c`},
		"single quotes":   {`a: 'it''s # y'  # c`, set("it's", "a"), `a: 'it''s'  # c`},
		"needs quotes":    {"a: x # c\n", set("x: y #1", "a"), "a: 'x: y #1' # c\n"},
		"in brackets":     {"a: [x,  # c\n    {b: y,\n     c: z}]\n", set("y, z", "a", 1, "b"), "a: [x,  # c\n    {b: 'y, z',\n     c: z}]\n"},
		"literal":         {"a: |\n  x\n\n  y\n\n# c\nb: 1\n", all(func(r *yaml.Node) { get(r, "a").Style = yaml.DoubleQuotedStyle }, set("new", "a")), "a: \"new\"\n\n# c\nb: 1\n"},
		"after literal":   {"a: |\n  x\n\n\n# c\nb: 1\n", pair("c", scalar("2", "!!int")), "a: |\n  x\n\n\n# c\nb: 1\nc: 2\n"},
		"no literal end":  {"a:\n  - b: |\n      x", pair("c", scalar("2", "!!int"), "a", 0), "a:\n  - b: |\n      x\n    c: 2"},
		"wide characters": {"ä: {ö: 跳, ü: 跳} # ß\n", set("x", "ä", "ü"), "ä: {ö: 跳, ü: x} # ß\n"},
		"tagged":          {"a: !!str 1 # c\n", set("2", "a"), "a: !!str 2 # c\n"},
		"CRLF":            {"# a\r\n\r\na: 1 # b\r\nb:\r\n  - x # c\r\n", all(set("2", "a"), item(1, scalar("y", "!!str"), "b"), pair("c", scalar("3", "!!int"))), "# a\r\n\r\na: 2 # b\r\nb:\r\n  - x # c\r\n  - y\r\nc: 3\r\n"},
		"CR":              {"# a\ra: 1 # b\r", pair("c", scalar("3", "!!int")), "# a\ra: 1 # b\rc: 3\r"},
		"byte order mark": {"\ufeffa: 1\nb: 2\n", set("3", "a"), "\ufeffa: 3\nb: 2\n"},
		"version":         {"%YAML 1.2\n---\na: 1\n...\n", set("3", "a"), "%YAML 1.2\n---\na: 3\n...\n"},
		"JSON":            {"{\"a\": 1,\n \"b\": [\n  {\"c\": \"x\"}\n ]\n}\n", set("y", "b", 0, "c"), "{\"a\": 1,\n \"b\": [\n  {\"c\": \"y\"}\n ]\n}\n"},
		"pair in a list":  {"a:\n    -   b: 1   # x\n\n        # y\n        c: 2\n", pair("d", scalar("3", "!!int"), "a", 0), "a:\n    -   b: 1   # x\n\n        # y\n        c: 2\n        d: 3\n"},
		"pair in braces":  {"a: {b: 1, # x\n    c: [2] }\n", pair("d", scalar("3", "!!int"), "a"), "a: {b: 1, # x\n    c: [2], d: 3 }\n"},
		"in empty ones":   {"a: { }\nb: [] # c\n", all(pair("d", scalar("3", "!!int"), "a"), item(0, scalar("x", "!!str"), "b")), "a: {d: 3 }\nb: [x] # c\n"},
		"first item":      {"a: # x\n  # y\n  - b # z\n", item(0, scalar("c", "!!str"), "a"), "a: # x\n  - c\n  # y\n  - b # z\n"},
		"first in a row":  {"a: [b, c]\n", item(0, scalar("d", "!!str"), "a"), "a: [d, b, c]\n"},
		"item with keys":  {"a:\n- b: 1 # x\n\n  c: 2\n\n- b: 3\n", item(1, &yaml.Node{Kind: yaml.MappingNode, Content: []*yaml.Node{scalar("b", "!!str"), scalar("9", "!!int"), scalar("c", "!!str"), scalar("8", "!!int")}}, "a"), "a:\n- b: 1 # x\n\n  c: 2\n- b: 9\n  c: 8\n\n- b: 3\n"},
		"dropped":         {"a:\n  - b: 1 # x\n    c: {d: 2,\n        e: 3} # y\n\n    f: 4\n", drop("c", "a", 0), "a:\n  - b: 1 # x\n\n    f: 4\n"},
		"dropped first":   {"a:\n  - b: 1 # x\n    f: 4\n", drop("b", "a", 0), "a:\n  - f: 4\n"},
		"dropped in row":  {"{a: 1, b: 2, c: 3, d: 4}\n", all(drop("b"), drop("c"), pair("e", scalar("5", "!!int"))), "{a: 1, d: 4, e: 5}\n"},

		"both the same":         {"a: &x 1 # c\nb: *x # d\n", all(set("2", "a"), set("2", "b")), "a: &x 2 # c\nb: *x # d\n"},
		"the anchor alone":      {"a: &x 1 # c\nb: *x # d\n", set("2", "a"), "a: &x 2 # c\nb: 1 # d\n"},
		"the alias alone":       {"a: &x 1 # c\nb: *x # d\nc: *x\n", set("2", "b"), "a: &x 1 # c\nb: 2 # d\nc: *x\n"},
		"an anchor in brackets": {"a: [&x {b: 1,  c: 2}, *x, *x]\n", set("3", "a", 1, "c"), "a: [&x {b: 1,  c: 2}, {b: 1, c: 3}, *x]\n"},
		"keys of an alias":      {"a: &x\n    b: 1 # c\n\n    d: 2\ne: *x   # f\ng: 3\n", set("4", "e", "d"), "a: &x\n    b: 1 # c\n\n    d: 2\ne:   # f\n    b: 1 # c\n    d: 4\ng: 3\n"},
		"items of an alias":     {"a:\n  - &x\n    b: 1 # c\n    d: {e: 2}\n  - *x # f\n  - *x\n", set("4", "a", 1, "d", "e"), "a:\n  - &x\n    b: 1 # c\n    d: {e: 2}\n  - b: 1 # c # f\n    d: {e: 4}\n  - *x\n"},
		"an anchor dropped":     {"a: 1\nb: &x {c: 1}\nd: *x # e\n", drop("b"), "a: 1\nd: {c: 1} # e\n"},
		"an anchor given anew":  {"a: &x 1\nb: &x 2\nc: *x\n", drop("b"), "a: &x 1\nc: 2\n"},
		"an alias within":       {"a: &x 1\nb: &y [*x, 2]\nc: *y\nd: *x\n", set("3", "c", 1), "a: &x 1\nb: &y [*x, 2]\nc: [1, 3]\nd: *x\n"},
		"an anchored list":      {"a: &x\n- b\n- c\nd: *x\n", all(item(2, scalar("e", "!!str"), "a"), item(2, scalar("e", "!!str"), "d")), "a: &x\n- b\n- c\n- e\nd: *x\n"},
	} {
		got, err := Change([]byte(c.was), c.change)
		if err != nil || string(got) != c.is {
			t.Errorf("%s: %v\n%s\nbecame\n%s\nwant\n%s", name, err, c.was, shown(got), shown([]byte(c.is)))
		}
	}
}

// shown makes line ends visible.
func shown(text []byte) string { return strings.ReplaceAll(string(text), "\r", "␍") }
