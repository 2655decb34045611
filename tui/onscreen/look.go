package onscreen

import (
	"strconv"
	"strings"
)

// look is how characters are written: what SGR sequences set (ECMA-48, 8.3.117;
// the 256 and 16 million colours as in ISO 8613-6). The zero look is the
// terminal's own.
type look struct {
	fg, bg string // the parameters of the colours, such as "38;5;214"; empty: the terminal's own
	attrs  attrs
}

// attrs are the attributes of a look, the bit 1<<n for the one that SGR's
// parameter n turns on.
type attrs uint16

const (
	bold       attrs = 1 << 1
	faint      attrs = 1 << 2
	underlined attrs = 1 << 4
	reversed   attrs = 1 << 7
	struck     attrs = 1 << 9

	// seenOnBlank are those that show where there is no character.
	seenOnBlank = underlined | reversed | struck
)

// with returns the look after an SGR sequence. What is neither a colour nor one
// of the attributes changes nothing.
func (l look) with(seq string) look {
	params := strings.Split(strings.TrimSuffix(strings.TrimPrefix(seq, "\x1b["), "m"), ";")
	for i := 0; i < len(params); i++ {
		n, err := strconv.Atoi(params[i])
		switch {
		case params[i] == "" || err == nil && n == 0:
			l = look{}
		case err != nil:
		case n < 10:
			l.attrs |= 1 << n
		case n == 22:
			l.attrs &^= bold | faint
		case n > 22 && n < 30:
			l.attrs &^= 1 << (n - 20)
		case n == 38, n == 48:
			end := min(len(params), i+colourParams(params[i+1:])+1)
			l.paint(n == 48, strings.Join(params[i:end], ";"))
			i = end - 1
		case n == 39, n == 49:
			l.paint(n == 49, "")
		case n >= 30 && n < 50, n >= 90 && n < 108:
			l.paint(n/10 == 4 || n/10 == 10, params[i])
		}
	}
	return l
}

// colourParams returns how many parameters after 38 or 48 belong to it.
func colourParams(params []string) int {
	if len(params) > 0 && params[0] == "5" {
		return 2
	}
	return 4
}

func (l *look) paint(ground bool, colour string) {
	if ground {
		l.bg = colour
		return
	}
	l.fg = colour
}

// onConsole returns what a look is to the Linux console (csi_m and build_attr of
// drivers/tty/vt/vt.c). There a bright colour is the darker one in bold, which
// lasts when another colour is set; no ground is bright; and bold brightens the
// characters of reversed text too, which makes black ones as grey as their
// ground nearly is.
func (l look) onConsole() look {
	if n, err := strconv.Atoi(l.fg); err == nil && n >= 90 {
		l.fg = strconv.Itoa(n - 60)
		l.attrs |= bold
	}
	if n, err := strconv.Atoi(l.bg); err == nil && n >= 100 {
		l.bg = strconv.Itoa(n - 60)
	}
	if l.attrs&reversed != 0 {
		l.attrs &^= bold
	}
	return l
}

// asGround returns the parameters that make a colour of characters that of
// their ground.
func asGround(fg string) string { return shifted(fg, 10) }

// asInk is the reverse of asGround.
func asInk(bg string) string { return shifted(bg, -10) }

// shifted adds to the first parameter of a colour.
func shifted(colour string, by int) string {
	first, rest, more := strings.Cut(colour, ";")
	n, _ := strconv.Atoi(first)
	first = strconv.Itoa(n + by)
	if more {
		return first + ";" + rest
	}
	return first
}

// to returns the shortest sequence that makes this look another one; none where
// it is that already.
func (l look) to(next look) string {
	switch {
	case l == next:
		return ""
	case next == look{}:
		return "\x1b[m"
	}
	kept := look{l.fg, l.bg, l.attrs & next.attrs}
	if l.attrs&^next.attrs&(bold|faint) != 0 { // one is not ended without the other
		kept.attrs &^= bold | faint
	}
	changed := append(l.ends(next), next.adds(kept)...)
	step := "\x1b[" + strings.Join(changed, ";") + "m"
	anew := "\x1b[" + strings.Join(append([]string{""}, next.adds(look{})...), ";") + "m" // no number is 0, which resets
	if len(anew) < len(step) {
		return anew
	}
	return step
}

// ends returns the parameters that end what the next look does not have.
func (l look) ends(next look) (params []string) {
	gone := l.attrs &^ next.attrs
	if gone&(bold|faint) != 0 {
		params = append(params, "22")
		gone &^= bold | faint
	}
	for n := range 10 {
		if gone&(1<<n) != 0 {
			params = append(params, strconv.Itoa(20+n))
		}
	}
	if l.fg != "" && next.fg == "" {
		params = append(params, "39")
	}
	if l.bg != "" && next.bg == "" {
		params = append(params, "49")
	}
	return params
}

// adds returns the parameters that set what the look before does not have.
func (l look) adds(before look) (params []string) {
	for n := range 10 {
		if l.attrs&(1<<n) != 0 && before.attrs&(1<<n) == 0 {
			params = append(params, strconv.Itoa(n))
		}
	}
	if l.fg != "" && l.fg != before.fg {
		params = append(params, l.fg)
	}
	if l.bg != "" && l.bg != before.bg {
		params = append(params, l.bg)
	}
	return params
}
