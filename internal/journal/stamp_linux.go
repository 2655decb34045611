package journal

import (
	"os"
	"syscall"
)

// identity returns when anything of the file was changed last, which no program
// can set, and which file it is.
func identity(info os.FileInfo) (changed, node uint64) {
	if s, ok := info.Sys().(*syscall.Stat_t); ok {
		return uint64(s.Ctim.Nano()), s.Ino
	}
	return 0, 0
}
