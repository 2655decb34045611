//go:build !windows

package wholefile

import (
	"errors"
	"io/fs"
	"syscall"
)

// isFull reports whether err says that there is no room left.
func isFull(err error) bool { return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) }

// isHeld reports whether err says that the file may not be replaced.
func isHeld(err error) bool { return errors.Is(err, fs.ErrPermission) }
