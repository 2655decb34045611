package palette

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"coldfloor/internal/plan"
	"coldfloor/tui/glyph"
)

func hex(t *testing.T, s string) rgb {
	t.Helper()
	c, err := parseHex(s)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestContrastFormula holds the formula against ratios that are published for
// WCAG 2.x: #767676 is the lightest grey that passes on white.
func TestContrastFormula(t *testing.T) {
	for _, c := range []struct {
		a, b       string
		want, near float64
	}{
		{"#767676", "#ffffff", 4.54, 0.005},
		{"#000000", "#ffffff", 21, 1e-9},
		{"#0000ff", "#ffffff", 8.592, 0.0005},
		{"#ffffff", "#ffffff", 1, 1e-9},
		// Okabe and Ito's colours on black, worked out from the formula.
		{"#e69f00", "#000000", 9.32, 0.005},
		{"#56b4e9", "#000000", 9.10, 0.005},
		{"#009e73", "#000000", 6.14, 0.005},
		{"#f0e442", "#000000", 15.88, 0.005},
		{"#0072b2", "#000000", 4.05, 0.005},
		{"#d55e00", "#000000", 5.43, 0.005},
		{"#cc79a7", "#000000", 6.86, 0.005},
	} {
		for _, got := range []float64{contrast(hex(t, c.a), hex(t, c.b)), contrast(hex(t, c.b), hex(t, c.a))} {
			if math.Abs(got-c.want) > c.near {
				t.Errorf("contrast of %s and %s is %.4f, want %v", c.a, c.b, got, c.want)
			}
		}
	}
}

// Backgrounds in common use: the ends, and greys and tints of popular themes.
var (
	darks  = []string{"#000000", "#1e1e1e", "#282c34"}
	lights = []string{"#ffffff", "#f5f5f5", "#fdf6e3"}
)

// The 16 colours of two terminals, from memory: xterm's as it is delivered,
// and those of the PC text mode that the Linux console kept.
var sixteen = [][]string{
	{"#000000", "#cd0000", "#00cd00", "#cdcd00", "#0000ee", "#cd00cd", "#00cdcd", "#e5e5e5",
		"#7f7f7f", "#ff0000", "#00ff00", "#ffff00", "#5c5cff", "#ff00ff", "#00ffff", "#ffffff"},
	{"#000000", "#aa0000", "#00aa00", "#aa5500", "#0000aa", "#aa00aa", "#00aaaa", "#aaaaaa",
		"#555555", "#ff5555", "#55ff55", "#ffff55", "#5555ff", "#ff55ff", "#55ffff", "#ffffff"},
}

func enough(t *testing.T, what, fg, bg string) {
	t.Helper()
	if c := contrast(hex(t, fg), hex(t, bg)); c < 4.5 {
		t.Errorf("%s: %s on %s has a contrast of %.2f, want 4.5", what, fg, bg, c)
	}
}

// of256 returns a colour of the 256 as the terminals define them.
func of256(t *testing.T, index string) string {
	t.Helper()
	n, err := strconv.Atoi(index)
	if err != nil || n < 16 || n > 255 {
		t.Fatalf("%q is not a fixed colour of the 256", index)
	}
	return termenv.ConvertToRGB(termenv.ANSI256Color(n)).Hex()
}

func TestEveryColourStandsOutOnDarkAndLight(t *testing.T) {
	colours := map[string]lipgloss.CompleteAdaptiveColor{"muted": grey}
	for p := range Done + 1 {
		colours[string(p.Look().Shape)] = p.Look().Colour
	}
	for name, c := range colours {
		check(t, name+" on dark", c.Dark, ink.Dark, darks, "0")
		check(t, name+" on light", c.Light, ink.Light, lights, "15")
	}
}

// check holds one colour against the backgrounds, and the ink against it.
func check(t *testing.T, what string, c, ink lipgloss.CompleteColor, backgrounds []string, background16 string) {
	t.Helper()
	for _, bg := range backgrounds {
		enough(t, what, c.TrueColor, bg)
		enough(t, what+", 256 colours", of256(t, c.ANSI256), bg)
	}
	enough(t, what+", filled", ink.TrueColor, c.TrueColor)
	enough(t, what+", filled, 256 colours", of256(t, ink.ANSI256), of256(t, c.ANSI256))
	for _, tints := range sixteen {
		enough(t, what+", 16 colours", tint(t, tints, c.ANSI), tint(t, tints, background16))
		enough(t, what+", filled, 16 colours", tint(t, tints, ink.ANSI), tint(t, tints, c.ANSI))
	}
}

func tint(t *testing.T, tints []string, index string) string {
	t.Helper()
	n, err := strconv.Atoi(index)
	if err != nil || n < 0 || n > 15 {
		t.Fatalf("%q is not one of 16 colours", index)
	}
	return tints[n]
}

// TestHues holds each colour to the hue of the one it was made from.
func TestHues(t *testing.T) {
	for base, c := range map[string]lipgloss.CompleteAdaptiveColor{
		"#e69f00": orange, "#56b4e9": blue, "#cc79a7": purple, "#009e73": green, "#f0e442": yellow,
	} {
		want := hue(hex(t, base))
		for _, is := range []string{c.Dark.TrueColor, c.Light.TrueColor} {
			if got := hue(hex(t, is)); math.Abs(got-want) > 10 {
				t.Errorf("%s has hue %.0f, %s has %.0f", is, got, base, want)
			}
		}
	}
}

func TestNoTwoPhasesLookAlike(t *testing.T) {
	shapes, plain := map[rune]bool{}, map[rune]bool{}
	for p := range Done + 1 {
		l := p.Look()
		shapes[l.Shape], plain[l.ASCII] = true, true
		if ansi.StringWidth(string(l.Shape)) != 1 || l.ASCII >= 0x80 {
			t.Errorf("%+v", l)
		}
		if !glyph.Has(string(l.Shape)) {
			t.Errorf("%c cannot be drawn large", l.Shape)
		}
	}
	for _, n := range []int{len(shapes), len(plain)} {
		if n != len(looks) {
			t.Errorf("%d looks for %d phases", n, len(looks))
		}
	}
}

func TestOfKind(t *testing.T) {
	for want, k := range map[Phase]plan.Kind{
		GetReady: plan.LeadIn, Work: plan.Work, SideChange: plan.Switch, NextExercise: plan.Change, Rest: plan.Rest,
	} {
		if got := OfKind(k); got != want {
			t.Errorf("OfKind(%v) = %v, want %v", k, got, want)
		}
	}
}

// environ is an environment as termenv reads it.
type environ map[string]string

func (e environ) Getenv(k string) string { return e[k] }
func (e environ) Environ() (all []string) {
	for k, v := range e {
		all = append(all, k+"="+v)
	}
	return all
}

func TestColoursFollowTheTerminal(t *testing.T) {
	for _, c := range []struct {
		name string
		env  environ
		dark bool
		want string
	}{
		{"16 million colours", environ{"TERM": "xterm-256color", "COLORTERM": "truecolor"}, true, "\x1b[38;2;230;159;0mx\x1b[0m"},
		{"the same on light", environ{"TERM": "xterm-256color", "COLORTERM": "truecolor"}, false, "\x1b[38;2;157;97;0mx\x1b[0m"}, // the library cuts the 98 down
		{"256 colours", environ{"TERM": "xterm-256color"}, true, "\x1b[38;5;214mx\x1b[0m"},
		{"16 colours", environ{"TERM": "xterm"}, true, "\x1b[93mx\x1b[0m"},
		{"16 colours on light", environ{"TERM": "xterm"}, false, "\x1b[31mx\x1b[0m"},
		{"no colour asked for", environ{"TERM": "xterm-256color", "NO_COLOR": "1"}, true, "x"},
		{"no colour to be had", environ{"TERM": "dumb"}, true, "x"},
	} {
		r := lipgloss.NewRenderer(io.Discard, termenv.WithEnvironment(c.env), termenv.WithTTY(true))
		r.SetHasDarkBackground(c.dark)
		if got := New(r).Text(Work).Render("x"); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// The Linux console's own colours, by their numbers (drivers/tty/vt/vt.c,
// default_red and so on); its grounds are those of 0 to 7 alone.
var vga = []string{"#000000", "#aa0000", "#00aa00", "#aa5500", "#0000aa", "#aa00aa", "#00aaaa", "#aaaaaa", "#555555", "#ff5555", "#55ff55", "#ffff55", "#5555ff", "#ff55ff", "#55ffff", "#ffffff"}

func TestFillsOnTheLinuxConsole(t *testing.T) {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(termenv.ANSI)
	r.SetHasDarkBackground(true)
	for ph := range Done + 1 {
		var text, ground int
		if _, err := fmt.Sscanf(New(r).Dull().Fill(ph).Render("x"), "\x1b[%d;%dm", &text, &ground); err != nil {
			t.Fatal(err)
		}
		ink, on := text%10, ground%10 // 40 to 47; and 100 to 107, which are no brighter
		if text >= 90 {
			ink += 8
		}
		if got := contrast(hex(t, vga[ink]), hex(t, vga[on])); got < 4.5 {
			t.Errorf("phase %d: %.1f to 1", ph, got)
		}
	}
}
