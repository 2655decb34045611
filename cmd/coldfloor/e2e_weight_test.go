//go:build e2e

package main

import (
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// TestNothingCallsMethodsByName holds off what makes every run of the program
// larger: a template calls the methods of what it is given by their names, so
// that Go's linker must keep every exported method of every type. Measured, that
// was a sixth of the program and 2.7 MB of each session's memory.
func TestNothingCallsMethodsByName(t *testing.T) {
	link := exec.Command("go", "build", "-ldflags=-dumpdep", "-o", filepath.Join(t.TempDir(), "coldfloor"), ".")
	out, err := link.CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out[max(0, len(out)-2000):])
	}
	told := false
	for l := range strings.Lines(string(out)) {
		from, to, depends := strings.Cut(strings.TrimSpace(l), " -> ")
		told = told || depends
		if strings.Contains(to, "text/template.(*Template).Execute") {
			t.Fatalf("%s runs a template, for which the linker keeps every method of every type; write pages as internal/sheet does, and set no template of a command", from)
		}
	}
	if !told {
		t.Error("the linker did not tell what depends on what")
	}
}
