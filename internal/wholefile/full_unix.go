//go:build !windows

package wholefile

import (
	"errors"
	"syscall"
)

// IsFull reports whether err says that there is no room left on the disk, or in what
// its user may take of it.
func IsFull(err error) bool { return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) }

// isHeld reports whether err may say that another program has the file open: here
// such a file can be replaced all the same.
func isHeld(error) bool { return false }
