//go:build unix

package journal

import (
	"fmt"
	"os"
	"syscall"
)

// fileID returns what tells the file at path from all others of this machine,
// and whether it has several names.
func fileID(path string) (id string, several bool) {
	info, err := os.Stat(path)
	if err != nil {
		return "", false
	}
	s, ok := info.Sys().(*syscall.Stat_t)
	if !ok || s.Nlink < 2 {
		return "", false
	}
	return fmt.Sprintf("%x-%x", s.Dev, s.Ino), true
}
