//go:build linux || freebsd || netbsd || openbsd

package live

import (
	"os"
	"runtime/debug"
	"sync"

	"golang.org/x/sys/unix"
)

// stderr is what became of standard error.
var stderr struct {
	sync.Mutex
	own   *os.File // leads where descriptor 2 led; nil before OwnStderr
	quiet bool     // descriptor 2 leads nowhere
}

// OwnStderr gives os.Stderr a descriptor of its own beside 2, so that it still
// leads where it did while C libraries are kept from 2. A program calls it
// before it hands os.Stderr on; where it cannot be done nothing changes.
func OwnStderr() {
	stderr.Lock()
	defer stderr.Unlock()
	own()
}

// own is OwnStderr with the lock held.
func own() bool {
	if stderr.own != nil {
		return true
	}
	fd, err := unix.FcntlInt(2, unix.F_DUPFD_CLOEXEC, 3)
	if err != nil {
		return false
	}
	stderr.own = os.NewFile(uintptr(fd), "/dev/stderr")
	os.Stderr = stderr.own
	return true
}

// quiet keeps what C libraries print, ALSA's and JACK's dozens of lines where
// there is no device, from standard error. Go's crash reports still lead there.
func quiet() {
	stderr.Lock()
	defer stderr.Unlock()
	if stderr.quiet || !own() {
		return
	}
	null, err := os.OpenFile(os.DevNull, os.O_WRONLY, 0)
	if err != nil {
		return
	}
	defer null.Close()
	if unix.Dup2(int(null.Fd()), 2) != nil {
		return
	}
	stderr.quiet = true
	_ = debug.SetCrashOutput(stderr.own, debug.CrashOptions{})
}

// loudly undoes quiet; it does nothing where there is nothing to undo.
func loudly() {
	stderr.Lock()
	defer stderr.Unlock()
	if stderr.quiet && unix.Dup2(int(stderr.own.Fd()), 2) == nil {
		stderr.quiet = false
		_ = debug.SetCrashOutput(nil, debug.CrashOptions{})
	}
}
