//go:build unix

package journal

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"github.com/adrg/xdg"
)

// By whatever name a journal is opened, a run of it is claimed once, and its
// lines are appended under one lock.
func TestNamesOfOneJournal(t *testing.T) {
	t.Cleanup(xdg.Reload)
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	xdg.Reload()
	for name, other := range map[string]func(t *testing.T, file string) string{
		"a link": func(t *testing.T, file string) string {
			link := filepath.Join(t.TempDir(), "link.jsonl")
			must(t, os.Symlink(file, link))
			return link
		},
		"a link to a link that is relative": func(t *testing.T, file string) string {
			link := filepath.Join(t.TempDir(), "link.jsonl")
			must(t, os.Symlink(file, link), os.Symlink("link.jsonl", link+"2"))
			return link + "2"
		},
		"a linked folder": func(t *testing.T, file string) string {
			link := filepath.Join(t.TempDir(), "folder")
			must(t, os.Symlink(filepath.Dir(file), link))
			return filepath.Join(link, filepath.Base(file))
		},
		"a hard link": func(t *testing.T, file string) string {
			must(t, os.WriteFile(file, nil, 0o600))
			link := file + "2"
			must(t, os.Link(file, link))
			return link
		},
	} {
		t.Run(name, func(t *testing.T) {
			file := filepath.Join(t.TempDir(), "journal.jsonl") // it does not exist yet
			link := other(t, file)
			a, err := Open(link)
			must(t, err)
			b, err := Open(file)
			must(t, err)
			held, err := a.Claim("RUN")
			must(t, err)
			if _, err := b.Claim("RUN"); !errors.Is(err, ErrLive) {
				t.Errorf("claimed by two: %v", err)
			}
			held.Release()
			if a.lockName() != b.lockName() {
				t.Errorf("two locks: %s and %s", a.lockName(), b.lockName())
			}
		})
	}
}

func must(t *testing.T, errs ...error) {
	t.Helper()
	if err := errors.Join(errs...); err != nil {
		t.Fatal(err)
	}
}
