package weeks

import (
	"reflect"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// layout returns a changed file laid out as its coach laid it out: blank lines,
// spaces and line breaks are those of src wherever nothing was changed. Written
// is src written again without the change, and changed with it, both by the
// encoder, whose own layout stands where the coach's cannot be kept.
func layout(src, written, changed []byte) []byte {
	s, a, b := lines(src), lines(written), lines(changed)
	toS, toB := matches(a, s, spaced), matches(a, b, strings.Clone)
	var out []string
	d := depths{0: 0}
	i0, s0, b0 := 0, 0, 0
	for i := range len(a) + 1 {
		sEnd, bEnd := len(s), len(b)
		if i < len(a) {
			if sEnd, bEnd = toS[i], toB[i]; sEnd < 0 || bEnd < 0 {
				continue
			}
		}
		out = append(out, d.between(a[i0:i], s[s0:sEnd], b[b0:bEnd], toS[i0:i], s0)...)
		if i < len(a) {
			out = append(out, s[sEnd])
			d[indent(a[i])] = indent(s[sEnd])
		}
		i0, s0, b0 = i+1, sEnd+1, bEnd+1
	}
	text := []byte(strings.Join(out, "\n") + "\n")
	if !same(text, changed) {
		return changed
	}
	return text
}

// depths are how far the coach indents what the encoder indents so far, as seen
// in the lines before.
type depths map[int]int

// between returns the lines between two that all three texts have: the coach's,
// s, if nothing was changed there, otherwise those of the changed text, b, as the
// coach indents, between the coach's blank lines. What is only added is put
// behind what is there, or before it. The line of s that each of a stands for is
// in to, counted from s0 lines before.
func (d depths) between(a, s, b []string, to []int, s0 int) []string {
	for k := range min(len(a), len(b)) {
		if a[k] != b[k] {
			break
		}
		if at := k + 1; at < len(a) && to[at] >= 0 { // s is cut there too
			return slices.Concat(s[:to[at]-s0], d.between(a[at:], s[to[at]-s0:], b[at:], to[at:], to[at]))
		}
	}
	if slices.Equal(a, b) {
		return s
	}
	a, b, first, last := trimmed(a), trimmed(b), 0, 0
	if t := trimmed(s); len(t) > 0 {
		first = slices.IndexFunc(s, notBlank)
		last = first + len(t)
	}
	switch n := len(a); {
	case len(b) > n && slices.Equal(a, b[:n]):
		return slices.Concat(s[:last], d.indented(b[n:]), s[last:])
	case len(b) > n && slices.Equal(a, b[len(b)-n:]):
		return slices.Concat(s[:first], d.indented(b[:len(b)-n]), s[first:])
	}
	return slices.Concat(s[:first], d.indented(b), s[last:])
}

// trimmed returns lines without the blank ones at either end.
func trimmed(lines []string) []string {
	for len(lines) > 0 && !notBlank(lines[0]) {
		lines = lines[1:]
	}
	for len(lines) > 0 && !notBlank(lines[len(lines)-1]) {
		lines = lines[:len(lines)-1]
	}
	return lines
}

// indented returns lines of the encoder as the coach indents.
func (d depths) indented(lines []string) []string {
	var out []string
	for _, line := range lines {
		deep := indent(line)
		known := deep
		for _, ok := d[known]; !ok; _, ok = d[known] {
			known--
		}
		out = append(out, strings.Repeat(" ", max(d[known]+deep-known, 0))+line[deep:])
	}
	return out
}

func indent(line string) int { return len(line) - len(strings.TrimLeft(line, " ")) }

func notBlank(line string) bool { return strings.TrimSpace(line) != "" }

// spaced returns a line without what is layout alone.
func spaced(line string) string { return strings.Join(strings.Fields(line), " ") }

func lines(text []byte) []string {
	return strings.Split(strings.TrimRight(strings.ReplaceAll(string(text), "\r\n", "\n"), "\n"), "\n")
}

// most bounds the comparison of two texts, in pairs of lines. Longer ones keep
// the encoder's layout.
const most = 4 << 20

// matches returns for each line of a the one of b that it stands for, or -1: the
// longest sequence of lines that both have, not blank, and that are alike once key
// has taken from them what does not count.
func matches(a, b []string, key func(string) string) []int {
	to := slices.Repeat([]int{-1}, len(a))
	if len(a)*len(b) > most {
		return to
	}
	x, y := make([]string, len(a)), make([]string, len(b))
	for i := range a {
		x[i] = key(a[i])
	}
	for j := range b {
		y[j] = key(b[j])
	}
	width := len(b) + 1
	length := make([]int32, (len(a)+1)*width) // of the sequence from i and j on
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			if x[i] == y[j] && x[i] != "" {
				length[i*width+j] = 1 + length[(i+1)*width+j+1]
			} else {
				length[i*width+j] = max(length[(i+1)*width+j], length[i*width+j+1])
			}
		}
	}
	for i, j := 0, 0; i < len(a) && j < len(b); {
		switch {
		case x[i] == y[j] && x[i] != "":
			to[i] = j
			i, j = i+1, j+1
		case length[(i+1)*width+j] >= length[i*width+j+1]:
			i++
		default:
			j++
		}
	}
	return to
}

// same reports whether two texts say the same.
func same(a, b []byte) bool {
	var x, y any
	return yaml.Unmarshal(a, &x) == nil && yaml.Unmarshal(b, &y) == nil && reflect.DeepEqual(x, y)
}
