package keyline

import (
	"testing"

	"github.com/charmbracelet/bubbles/help"
	"github.com/charmbracelet/bubbles/key"
)

// TestFit shows keys whole or not at all, and a sign for those that are not
// shown where no key says as much.
func TestFit(t *testing.T) {
	bind := func(k, what string) key.Binding { return key.NewBinding(key.WithKeys(k), key.WithHelp(k, what)) }
	h := help.New()
	h.ShortSeparator = "  "
	plain := []key.Binding{bind("a", "one"), bind("b", "two"), bind("c", "three")}
	listed := []key.Binding{bind("a", "one"), bind("?", "keys"), bind("c", "three")}
	for _, c := range []struct {
		keys  []key.Binding
		width int
		want  string
		shown int
	}{
		{plain, 21, "a one  b two  c three", 3},
		{plain, 20, "a one  b two …", 2},
		{plain, 14, "a one  b two …", 2},
		{plain, 13, "a one …", 1},
		{plain, 6, "", 0},
		{listed, 15, "a one  ? keys …", 2},
		{listed, 14, "a one  ? keys", 2},
		{listed, 12, "a one …", 1},
	} {
		if line, n := Fit(h, c.keys, c.width); line != c.want || n != c.shown {
			t.Errorf("in %d cells %q of %d keys, want %q of %d", c.width, line, n, c.want, c.shown)
		}
	}
}
