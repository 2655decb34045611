package main

import (
	"io/fs"
	"strings"
	"syscall"
	"testing"
)

// gone is an output whose reader has left.
type gone struct{}

func (gone) Write([]byte) (int, error) {
	return 0, &fs.PathError{Op: "write", Path: "|1", Err: syscall.EPIPE}
}

// A reader that has read enough is no error.
func TestClosedPipe(t *testing.T) {
	for _, args := range [][]string{{"schema"}, {"sessions", "show", "first-hops"}, {"preview", "first-hops"}, {"check", "--sarif", "first-hops"}} {
		var stderr strings.Builder
		if code := execute(args, strings.NewReader(""), gone{}, &stderr); code == exitUsage || stderr.Len() > 0 {
			t.Errorf("%q: exit code %d, %q", args, code, stderr.String())
		}
	}
}

func TestVersion(t *testing.T) {
	var stdout, stderr strings.Builder
	if code := execute([]string{"--version"}, strings.NewReader(""), &stdout, &stderr); code != exitFine || !strings.HasPrefix(stdout.String(), "coldfloor ") {
		t.Errorf("exit code %d, %q, %q", code, stdout.String(), stderr.String())
	}
}
