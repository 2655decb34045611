//go:build !windows

package wholefile

import (
	"errors"
	"io/fs"
	"syscall"
)

// IsFull reports whether err says that there is no room left on the disk, or in what
// its user may take of it.
func IsFull(err error) bool { return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) }

// isHeld reports whether err says that the file may not be replaced.
func isHeld(err error) bool { return errors.Is(err, fs.ErrPermission) }
