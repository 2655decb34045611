package fault

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"testing"
)

func TestText(t *testing.T) {
	full := New("free some room", "cannot write %s: %w", "a.pdf", fs.ErrPermission)
	for _, c := range []struct {
		err  error
		want string
	}{
		{errors.New("it is broken"), "it is broken"},
		{full, "cannot write a.pdf: permission denied\nhint: free some room"},
		{fmt.Errorf("the sheet: %w", full), "the sheet: cannot write a.pdf: permission denied\nhint: free some room"},
		{At("a.yaml", full), "a.yaml: cannot write a.pdf: permission denied\nhint: free some room"},
		{With("run without a log", full), "cannot write a.pdf: permission denied\nhint: run without a log"},
		{errors.Join(errors.New("first"), full), "first\ncannot write a.pdf: permission denied\nhint: free some room"},
		{New("", "no more"), "no more"},
	} {
		if got := Text(c.err); got != c.want {
			t.Errorf("Text = %q, want %q", got, c.want)
		}
	}
	if !errors.Is(At("x", full), fs.ErrPermission) {
		t.Error("the error behind is lost")
	}
	if With("x", nil) != nil || At("x", nil) != nil || Hint(nil) != "" {
		t.Error("nil is not nil")
	}
}

// A file's name may hold anything; none of it moves the cursor.
func TestPrintIsSafe(t *testing.T) {
	var b strings.Builder
	Print(&b, New("look\x1b[2Jhere", "open \x1b[31mred\x1b[0m.yaml: \u202ecod"))
	if got, want := b.String(), "coldfloor: open \uFFFD[31mred\uFFFD[0m.yaml: cod\nhint: look\uFFFD[2Jhere\n"; got != want {
		t.Errorf("Print wrote %q, want %q", got, want)
	}
}
