package ground

import (
	"os"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// TestColoursOfTerminalsThatDoNotTell: names without a number of colours in
// them, as these terminals set them.
func TestColoursOfTerminalsThatDoNotTell(t *testing.T) {
	for term, want := range map[string]termenv.Profile{
		"rxvt-unicode": termenv.ANSI, "mlterm": termenv.ANSI, "screen": termenv.ANSI, "putty": termenv.ANSI, "tmux": termenv.ANSI256,
		"foot": termenv.ANSI256, "konsole": termenv.ANSI256, "st": termenv.ANSI256, "dumb": termenv.Ascii, "vt100": termenv.Ascii, "": termenv.Ascii,
	} {
		r := lipgloss.DefaultRenderer()
		r.SetColorProfile(termenv.Ascii)
		getenv := func(name string) string { return map[string]string{"TERM": term}[name] }
		if got := Look("auto", getenv).ColorProfile(); got != want {
			t.Errorf("TERM=%s has profile %v, want %v", term, got, want)
		}
		r.SetColorProfile(termenv.Ascii)
		drab := func(name string) string { return map[string]string{"TERM": term, "NO_COLOR": "1"}[name] }
		if got := Look("auto", drab).ColorProfile(); got != termenv.Ascii {
			t.Errorf("TERM=%s with NO_COLOR has profile %v", term, got)
		}
	}
	if got := colours("screen", true); got != termenv.ANSI256 {
		t.Errorf("screen in tmux has profile %v", got)
	}
}

func TestBackgroundSaid(t *testing.T) {
	defer func() { settled = false }()
	for said, dark := range map[string]bool{"light": false, "dark": true} {
		if r := Look(said, os.Getenv); r.HasDarkBackground() != dark || !settled {
			t.Errorf("%s is taken for dark: %v", said, r.HasDarkBackground())
		}
	}
	term := func(name string) func(string) string {
		return func(k string) string { return map[string]string{"TERM": name}[k] }
	}
	if Look("auto", term("xterm")); settled {
		t.Error("auto is taken for said")
	}
	if Look("auto", term("linux")); !settled {
		t.Error("the Linux console is asked")
	}
}
