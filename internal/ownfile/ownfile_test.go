package ownfile

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coldfloor/internal/fault"
)

func TestReplaceable(t *testing.T) {
	k := Kind{Mode: 0o600, Foreign: errors.New("is foreign"), Marks: []string{"<made here>"}}
	dir := t.TempDir()
	far := strings.Repeat("x", ends+1)
	for name, c := range map[string]struct {
		content string
		own     bool
	}{
		"begins": {"<made here>" + far, true}, "ends": {far + "<made here>", true}, "within": {far + "<made here>" + far, false}, "empty": {"", false},
	} {
		file := filepath.Join(dir, name)
		if err := k.Replaceable(file, false); err != nil {
			t.Errorf("%s, not there: %v", name, err)
		}
		if err := k.Write(file, []byte(c.content)); err != nil {
			t.Fatal(err)
		}
		if err := k.Replaceable(file, false); (err == nil) != c.own || err != nil && !errors.Is(err, k.Foreign) {
			t.Errorf("%s: %v", name, err)
		}
		if err := k.Replaceable(file, true); err != nil {
			t.Errorf("%s, by force: %v", name, err)
		}
	}
	if err := k.Replaceable(dir, true); err == nil {
		t.Error("a folder may be replaced")
	}
	if err := k.Write(filepath.Join(dir, "none", "f"), nil); err == nil || !strings.Contains(fault.Text(err), "hint: ") {
		t.Errorf("no folder: %v", err)
	}
	if info, err := os.Stat(filepath.Join(dir, "ends")); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode: %v %v", info.Mode(), err)
	}
}
