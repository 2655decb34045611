//go:build !linux

package wholefile

import (
	"errors"
	"io/fs"
	"os"
)

// nameless returns nil: the system has no files without a name.
func nameless(string, fs.FileMode) *os.File { return nil }

// christen is never called if nameless returns nil.
func christen(*os.File, string) error { return errors.ErrUnsupported }
