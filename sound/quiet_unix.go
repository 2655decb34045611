//go:build linux || freebsd || netbsd || openbsd

package sound

import (
	"os"
	"runtime/debug"
	"sync"

	"golang.org/x/sys/unix"
)

// stderr is where standard error leads while it is quiet.
var stderr struct {
	sync.Mutex
	kept *os.File
	std  *os.File
}

// quiet keeps what C libraries print, ALSA's and JACK's dozens of lines where
// there is no device, from standard error. Go's own crash reports and os.Stderr
// still lead there.
func quiet() {
	stderr.Lock()
	defer stderr.Unlock()
	if stderr.kept != nil {
		return
	}
	fd, err := unix.FcntlInt(2, unix.F_DUPFD_CLOEXEC, 3)
	if err != nil {
		return
	}
	null, err := os.OpenFile(os.DevNull, os.O_WRONLY, 0)
	if err != nil {
		unix.Close(fd)
		return
	}
	defer null.Close()
	kept := os.NewFile(uintptr(fd), "/dev/stderr")
	if err := unix.Dup2(int(null.Fd()), 2); err != nil {
		kept.Close()
		return
	}
	debug.SetCrashOutput(kept, debug.CrashOptions{})
	stderr.kept, stderr.std, os.Stderr = kept, os.Stderr, kept
}

// loudly undoes quiet; it does nothing where there is nothing to undo.
func loudly() {
	stderr.Lock()
	defer stderr.Unlock()
	if stderr.kept == nil {
		return
	}
	unix.Dup2(int(stderr.kept.Fd()), 2)
	debug.SetCrashOutput(nil, debug.CrashOptions{})
	os.Stderr = stderr.std
	stderr.kept.Close()
	stderr.kept = nil
}
