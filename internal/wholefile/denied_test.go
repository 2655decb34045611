//go:build !windows

package wholefile

import (
	"io/fs"
	"testing"
)

// TestDenied: a folder that may not be written in is what the hint is about; that
// another program has the file open keeps nobody from replacing it here.
func TestDenied(t *testing.T) {
	const want = "cannot write \"a\": permission denied\nhint: name a folder that you can write in"
	if got := text(failed("a", &fs.PathError{Op: "open", Path: "a", Err: fs.ErrPermission})); got != want {
		t.Errorf("says %s, want %s", got, want)
	}
}
