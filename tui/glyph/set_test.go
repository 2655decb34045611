package glyph

import (
	"strconv"
	"strings"
	"testing"

	"golang.org/x/text/unicode/runenames"

	"coldfloor/internal/safetext"
)

// lit returns the parts that a character lights, as its Unicode name says.
func lit(t *testing.T, set Set, r rune) int {
	t.Helper()
	name := runenames.Name(r)
	switch {
	case r == ' ':
		return 0
	case name == "FULL BLOCK" || r == '#':
		across, down := set.parts()
		return 1<<(across*down) - 1
	case strings.HasPrefix(name, "BLOCK SEXTANT-"):
		n := 0
		for _, digit := range strings.TrimPrefix(name, "BLOCK SEXTANT-") {
			part, err := strconv.Atoi(string(digit))
			if err != nil {
				t.Fatal(name)
			}
			n |= 1 << (part - 1)
		}
		return n
	}
	return litHalves(t, set, name)
}

// litHalves reads the names of the older blocks.
func litHalves(t *testing.T, set Set, name string) int {
	t.Helper()
	across, down := set.parts()
	n := 0
	light := func(column, row int) {
		for i := range across * down {
			if (column < 0 || i%across == column) && (row < 0 || i/across == row) {
				n |= 1 << i
			}
		}
	}
	switch name {
	case "UPPER HALF BLOCK":
		light(-1, 0)
	case "LOWER HALF BLOCK":
		light(-1, 1)
	case "LEFT HALF BLOCK":
		light(0, -1)
	case "RIGHT HALF BLOCK":
		light(1, -1)
	default:
		quarters := strings.TrimPrefix(name, "QUADRANT ")
		if quarters == name {
			t.Fatalf("no block: %q", name)
		}
		for _, q := range strings.Split(quarters, " AND ") {
			column, row := 0, 0
			if strings.HasSuffix(q, "RIGHT") {
				column = 1
			}
			if strings.HasPrefix(q, "LOWER") {
				row = 1
			}
			light(column, row)
		}
	}
	return n
}

// TestChars holds every character against its name in the Unicode Character
// Database.
func TestChars(t *testing.T) {
	for _, set := range []Set{Plain, Full, Half, Quadrant, Sextant} {
		across, down := set.parts()
		for want := range 1 << (across * down) {
			if r := set.char(want); lit(t, set, r) != want {
				t.Errorf("set %d: %06b is drawn as %c, %s", set, want, r, runenames.Name(r))
			}
		}
	}
}

func TestBest(t *testing.T) {
	for _, c := range []struct {
		name, goos string
		env        map[string]string
		want       Set
	}{
		{"a common terminal", "linux", map[string]string{"TERM": "xterm-256color", "LANG": "en_GB.UTF-8"}, Quadrant},
		{"macOS", "darwin", map[string]string{"TERM": "xterm-256color", "LC_CTYPE": "UTF-8"}, Quadrant},
		{"no locale", "linux", map[string]string{"TERM": "xterm-256color"}, Plain},
		{"the C locale", "linux", map[string]string{"TERM": "xterm-256color", "LANG": "C"}, Plain},
		{"LC_ALL goes before LANG", "linux", map[string]string{"TERM": "xterm", "LANG": "en_GB.UTF-8", "LC_ALL": "C"}, Plain},
		{"C with UTF-8", "linux", map[string]string{"TERM": "xterm", "LC_ALL": "C.utf8"}, Quadrant},
		{"Linux console", "linux", map[string]string{"TERM": "linux", "LANG": "de_DE.UTF-8"}, Half},
		{"Linux console in the C locale", "linux", map[string]string{"TERM": "linux", "LANG": "C"}, Plain},
		{"dumb", "linux", map[string]string{"TERM": "dumb", "LANG": "en_GB.UTF-8"}, Plain},
		{"one that draws sextants", "linux", map[string]string{"TERM": "foot", "LANG": "en_GB.UTF-8"}, Sextant},
		{"the same within tmux", "linux", map[string]string{"TERM": "foot", "TMUX": "/tmp/t,1,0", "LANG": "en_GB.UTF-8"}, Quadrant},
		{"the same without UTF-8", "linux", map[string]string{"TERM": "foot"}, Plain},
		{"tmux", "linux", map[string]string{"TERM": "tmux-256color", "TMUX": "/tmp/t,1,0", "LANG": "en_GB.UTF-8"}, Quadrant},
		{"Windows Terminal", "windows", map[string]string{"WT_SESSION": "1"}, Quadrant},
		{"old Windows console", "windows", nil, Half},
	} {
		if got := Best(func(k string) string { return c.env[k] }, c.goos, nil); got != c.want {
			t.Errorf("%s: set %d, want %d", c.name, got, c.want)
		}
	}
}

// TestBestOfAFont: what the console's font has is drawn with, if the locale is
// UTF-8.
func TestBestOfAFont(t *testing.T) {
	font := func(chars string) safetext.Repertoire {
		r := safetext.Repertoire{'↑': 1, '▲': 1}
		for i, c := range []rune(chars) {
			r[c] = uint16(i + 2)
		}
		return r
	}
	for chars, want := range map[string]Set{"": Plain, "█": Full, "█▀": Full, "▀▄█": Half, string(quadrants[1:]): Quadrant} {
		env := map[string]string{"TERM": "linux", "LANG": "C.UTF-8"}
		getenv := func(k string) string { return env[k] }
		if got := Best(getenv, "linux", font(chars)); got != want {
			t.Errorf("a font with %q: set %d, want %d", chars, got, want)
		}
		if env["LANG"] = "C"; Best(getenv, "linux", font(chars)) != Plain {
			t.Errorf("a font with %q, without UTF-8: not Plain", chars)
		}
	}
}
