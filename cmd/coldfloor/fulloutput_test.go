package main

import (
	"bytes"
	"io/fs"
	"os"
	"strings"
	"syscall"
	"testing"

	"github.com/spf13/cobra"

	"coldfloor/internal/wholefile"
)

// A full disk under standard output is reported as that, not by a name that the
// system has for it.
func TestStandardOutputIsCalledThat(t *testing.T) {
	full := error(syscall.ENOSPC)
	var out bytes.Buffer
	code := report(&fs.PathError{Op: "write", Path: os.Stdout.Name(), Err: full}, &out)
	want := "coldfloor: cannot write to standard output: " + full.Error() + "\nhint: "
	if code != exitProblems || !bytes.HasPrefix(out.Bytes(), []byte(want)) {
		t.Errorf("code %d, %q, want %q", code, out.String(), want)
	}
	if wholefile.IsFull(full) && !bytes.Contains(out.Bytes(), []byte("free some room")) {
		t.Errorf("no hint of what helps: %q", out.String())
	}
}

// fullDisk takes nothing in.
type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) {
	return 0, &fs.PathError{Op: "write", Path: os.Stdout.Name(), Err: syscall.ENOSPC}
}

// Help that cannot be written is an error, as any other output is.
func TestHelpOnAFullDisk(t *testing.T) {
	all := [][]string{{}, {"--version"}, {"help"}, {"help", "run"}, {"sounds", "--mute"}}
	each(newRoot(), func(c *cobra.Command) {
		all = append(all, append(strings.Fields(c.CommandPath())[1:], "--help"))
	})
	ownFolders(t)
	for _, args := range all {
		var said bytes.Buffer
		if code := execute(args, strings.NewReader(""), fullDisk{}, &said); code != exitProblems || !strings.HasPrefix(said.String(), "coldfloor: cannot write to standard output: ") {
			t.Errorf("%q: code %d, %q", args, code, said.String())
		}
	}
}
