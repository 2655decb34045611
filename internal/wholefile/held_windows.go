package wholefile

import (
	"errors"
	"io/fs"

	"golang.org/x/sys/windows"
)

// replaceable reports why the file at place, if there is one, cannot be replaced:
// another program that has it open may not share that. A second name of such a
// file could not be taken away again.
func replaceable(place string) error {
	name, err := windows.UTF16PtrFromString(place)
	if err != nil {
		return err
	}
	h, err := windows.CreateFile(name, windows.DELETE, windows.FILE_SHARE_READ|windows.FILE_SHARE_WRITE|windows.FILE_SHARE_DELETE, nil,
		windows.OPEN_EXISTING, windows.FILE_ATTRIBUTE_NORMAL, 0)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	}
	return windows.CloseHandle(h)
}
