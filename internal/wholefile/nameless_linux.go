package wholefile

import (
	"fmt"
	"io/fs"
	"os"

	"golang.org/x/sys/unix"
)

// nameless opens a file in the folder that has no name and so is gone if the
// process is, however it ends; nil if the file system has no such files.
func nameless(folder string, mode fs.FileMode) *os.File {
	if _, err := os.Stat("/proc/self/fd"); err != nil {
		return nil // no way to name it later
	}
	fd, err := unix.Open(folder, unix.O_TMPFILE|unix.O_RDWR|unix.O_CLOEXEC, uint32(mode.Perm()))
	if err != nil {
		return nil
	}
	return os.NewFile(uintptr(fd), folder)
}

// christen gives a nameless file a name, which no file has yet.
func christen(f *os.File, name string) error {
	proc := fmt.Sprintf("/proc/self/fd/%d", f.Fd())
	if err := unix.Linkat(unix.AT_FDCWD, proc, unix.AT_FDCWD, name, unix.AT_SYMLINK_FOLLOW); err != nil {
		return &fs.PathError{Op: "link", Path: name, Err: err}
	}
	return nil
}
