package safetext

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Ellipsis ends text that was cut. It is one cell wide.
const Ellipsis = "…"

// Fit returns s cleaned and cut to at most n cells, ending in an ellipsis
// if something was cut. It is empty for n < 1.
func Fit(s string, n int) string {
	s = Clean(s)
	if n < 1 {
		return ""
	}
	if ansi.StringWidth(s) <= n {
		return s
	}
	cut := ansi.Truncate(s, n-1, "")
	return strings.TrimRight(cut, " ") + Ellipsis
}

// Pad returns Fit(s, n) followed by spaces up to exactly n cells.
func Pad(s string, n int) string {
	s = Fit(s, n)
	return s + spaces(n-ansi.StringWidth(s))
}

// Centre returns Fit(s, n) with spaces on both sides up to exactly n cells;
// an odd one goes to the right.
func Centre(s string, n int) string {
	s = Fit(s, n)
	gap := max(n-ansi.StringWidth(s), 0)
	return spaces(gap/2) + s + spaces(gap-gap/2)
}

// spaces returns n spaces, none for n < 0.
func spaces(n int) string { return strings.Repeat(" ", max(n, 0)) }

// Wrap returns s cleaned and broken between words, but not between a number and its
// unit, into at most maxLines lines of at most width cells. A word longer than a line is broken where the line
// ends. If the lines do not suffice the last one ends in an ellipsis.
// There are no lines for empty text, width < 1 or maxLines < 1.
func Wrap(s string, width, maxLines int) []string {
	words := strings.Fields(Clean(s))
	if width < 1 || maxLines < 1 {
		return nil
	}
	var lines []string
	for len(words) > 0 {
		if len(lines) == maxLines-1 {
			return append(lines, Fit(strings.Join(words, " "), width))
		}
		var line string
		line, words = takeLine(words, width)
		lines = append(lines, line)
	}
	return lines
}

// takeLine returns as many of the words as fit into width cells, at least a
// part of one, and the words that are left.
func takeLine(words []string, width int) (line string, rest []string) {
	line = words[0]
	used := ansi.StringWidth(line)
	if used > width {
		return breakWord(words, width)
	}
	n := 1
	for ; n < len(words); n++ {
		used += 1 + ansi.StringWidth(words[n])
		if used > width {
			break
		}
	}
	if n > 1 && n < len(words) && figure(words[n-1], words[n]) {
		n--
	}
	return strings.Join(words[:n], " "), words[n:]
}

// figure reports whether two words are a number and its unit, between which no line
// ends.
func figure(number, unit string) bool {
	switch strings.TrimRight(unit, ".,;:)") {
	case "s", "min", "h", "mm", "cm", "m", "kg", "%":
		last := number[len(number)-1]
		return '0' <= last && last <= '9'
	}
	return false
}

// breakWord returns as much of the first word as fits into width cells. A
// character wider than the line gives way to an ellipsis.
func breakWord(words []string, width int) (line string, rest []string) {
	line = ansi.Truncate(words[0], width, "")
	if line == "" {
		first, _ := ansi.FirstGraphemeCluster(words[0], ansi.GraphemeWidth)
		line, words[0] = Ellipsis, words[0][len(first):]
	} else {
		words[0] = words[0][len(line):]
	}
	if words[0] == "" {
		words = words[1:]
	}
	return line, words
}

// WrapParts returns parts cleaned, a comma after each but the last, and broken
// between them into lines of at most width cells. A part longer than a line is
// broken as Wrap does.
func WrapParts(parts []string, width int) []string {
	var lines []string
	line := ""
	for i, part := range parts {
		if part = Clean(part); i < len(parts)-1 {
			part += ","
		}
		longer := strings.TrimLeft(line+" "+part, " ")
		if line != "" && ansi.StringWidth(longer) > width {
			lines, longer = append(lines, Wrap(line, width, len(line))...), part
		}
		line = longer
	}
	return append(lines, Wrap(line, width, len(line))...)
}
