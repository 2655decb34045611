package journal

import (
	"os"
	"path/filepath"

	"github.com/adrg/xdg"
)

// mostLinks bounds the links that are followed, as systems do.
const mostLinks = 40

// resolved returns the one name of what path stands for: links are followed,
// also one whose target does not exist yet.
func resolved(path string) string {
	for range mostLinks {
		if real, err := filepath.EvalSymlinks(path); err == nil {
			return real
		}
		target, err := os.Readlink(path)
		if err != nil { // no link: a file that does not exist yet
			break
		}
		if !filepath.IsAbs(target) {
			target = filepath.Join(filepath.Dir(path), target)
		}
		path = target
	}
	if folder, err := filepath.EvalSymlinks(filepath.Dir(path)); err == nil {
		return filepath.Join(folder, filepath.Base(path))
	}
	return path
}

// lockName returns the name that the journal's locks begin with, which is the
// same by whatever name it is opened: its own path, or, if the file has several
// names on the disk, one in the state folder for the file itself.
func (j *Journal) lockName() string {
	id, several := fileID(j.path)
	if !several {
		return j.path
	}
	folder := filepath.Join(xdg.StateHome, "coldfloor", "locks")
	if os.MkdirAll(folder, 0o700) != nil {
		return j.path
	}
	return filepath.Join(folder, id)
}
