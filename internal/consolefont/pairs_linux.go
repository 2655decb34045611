package consolefont

import (
	"errors"
	"os"
	"unsafe"

	"golang.org/x/sys/unix"
)

// getTable is the request GIO_UNIMAP of linux/kd.h.
const getTable = 0x4b66

// table is struct unimapdesc of linux/kd.h.
type table struct {
	count   uint16
	entries *pair
}

// usual is room for more pairs than most fonts have.
const usual = 4096

// pairs returns the table of the console's font, none where f is no console.
func pairs(f *os.File) []pair {
	for room := usual; ; {
		got := make([]pair, room)
		t := table{uint16(room), &got[0]}
		_, _, err := unix.Syscall(unix.SYS_IOCTL, f.Fd(), getTable, uintptr(unsafe.Pointer(&t)))
		switch {
		case err == 0:
			return got[:min(room, int(t.count))]
		case !errors.Is(err, unix.ENOMEM), int(t.count) <= room: // it tells how many there are
			return nil
		}
		room = int(t.count)
	}
}
