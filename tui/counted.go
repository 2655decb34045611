package tui

import (
	"slices"
	"strings"
)

// counted is what a scene counts: the largest figure, and what is to be seen
// with it.
type counted struct {
	before string // what is said before the figure
	figure string // time left, the rep in hand, or words
	widest string // text as wide as the figure gets in this step
	beside []aside
}

// aside is a text beside the largest figure. The first one of several matters
// most.
type aside struct{ text, widest string }

// folded returns the count with what is said before the figure said with the
// first thing beside it.
func (c counted) folded() counted {
	n := len(c.beside)
	if c.before == "" || n == 0 {
		return c
	}
	said := c.before + ", "
	c.beside = append(slices.Clone(c.beside[:n-1]), aside{said + c.beside[n-1].text, said + c.beside[n-1].widest})
	c.before = ""
	return c
}

// plain returns the count as text.
func (c counted) plain() string {
	parts := []string{c.figure}
	if c.before != "" {
		parts = []string{c.before, c.figure}
	}
	for i := len(c.beside) - 1; i >= 0; i-- { // "3 of 10" reads on
		parts = append(parts, c.beside[i].text)
	}
	return strings.Join(parts, " ")
}

// figure returns a count of one figure alone.
func figure(text string) counted { return counted{figure: text, widest: widest(text)} }

// widest returns text with every figure the widest there is; one of one figure
// has room for two.
func widest(text string) string {
	wide := strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return '0'
		}
		return r
	}, text)
	if wide == "0" {
		return "00"
	}
	return wide
}

// beside returns an aside with figures in it.
func beside(text string) aside { return aside{text, widest(text)} }
