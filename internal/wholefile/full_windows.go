package wholefile

import (
	"errors"
	"io/fs"

	"golang.org/x/sys/windows"
)

// IsFull reports whether err says that there is no room left on the disk, or in what
// its user may take of it.
func IsFull(err error) bool {
	return errors.Is(err, windows.ERROR_DISK_FULL) || errors.Is(err, windows.ERROR_HANDLE_DISK_FULL)
}

// isHeld reports whether err may say that another program has the file open: the
// system often reports that as if the user were not allowed to replace the file.
func isHeld(err error) bool {
	return errors.Is(err, fs.ErrPermission) || errors.Is(err, windows.ERROR_SHARING_VIOLATION)
}
