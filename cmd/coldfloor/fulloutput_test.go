package main

import (
	"bytes"
	"io/fs"
	"os"
	"syscall"
	"testing"

	"coldfloor/internal/wholefile"
)

// A full disk under standard output is reported as that, not by a name that the
// system has for it.
func TestStandardOutputIsCalledThat(t *testing.T) {
	full := error(syscall.ENOSPC)
	var out bytes.Buffer
	code := report(&fs.PathError{Op: "write", Path: os.Stdout.Name(), Err: full}, &out)
	want := "coldfloor: cannot write to standard output: " + full.Error() + "\nhint: "
	if code != exitProblems || !bytes.HasPrefix(out.Bytes(), []byte(want)) {
		t.Errorf("code %d, %q, want %q", code, out.String(), want)
	}
	if wholefile.IsFull(full) && !bytes.Contains(out.Bytes(), []byte("free some room")) {
		t.Errorf("no hint of what helps: %q", out.String())
	}
}
