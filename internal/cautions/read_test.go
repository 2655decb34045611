package cautions

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/adrg/xdg"
)

// Each player reads the cautions once; a name with a line break or a quote in it
// is one name, and no file that cannot be read counts as read.
func TestEachPlayerReadsOnce(t *testing.T) {
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	xdg.Reload()
	t.Cleanup(xdg.Reload)
	names := []string{"", "Player One", "Two\nLines", `"quoted"`}
	for i, name := range names {
		if WereRead(name) {
			t.Errorf("%q has read them already", name)
		}
		for range 2 {
			if err := Remember(name); err != nil {
				t.Fatal(err)
			}
		}
		if !WereRead(name) {
			t.Errorf("that %q has read them is forgotten", name)
		}
		if text, _ := os.ReadFile(readFile()); strings.Count(string(text), "\n") != i+1 {
			t.Errorf("after %q the file holds\n%s", name, text)
		}
	}
	if WereRead("Two") || WereRead("Lines") {
		t.Error("half a name counts as a whole")
	}
}

func TestRememberSaysWhatFails(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	t.Setenv("XDG_STATE_HOME", file) // no folder
	xdg.Reload()
	t.Cleanup(xdg.Reload)
	if err := Remember("Player One"); err == nil {
		t.Error("nothing was kept, and nothing said")
	}
	if WereRead("Player One") {
		t.Error("what cannot be kept counts as read")
	}
}
