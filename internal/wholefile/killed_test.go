//go:build unix

package wholefile

import (
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
)

// A process that is killed while it writes leaves nothing behind.
func TestKilled(t *testing.T) {
	if dir := os.Getenv("WHOLEFILE_KILLED"); dir != "" {
		var b Batch
		f, err := b.Create(filepath.Join(dir, "a"), Options{Mode: 0o600})
		if err != nil {
			t.Fatal(err)
		}
		f.Write([]byte("half"))
		syscall.Kill(os.Getpid(), syscall.SIGKILL)
	}
	dir := t.TempDir()
	if f := nameless(dir, 0o600); f == nil {
		t.Skip("no nameless files here")
	} else {
		f.Close()
	}
	cmd := exec.Command(os.Args[0], "-test.run", "TestKilled")
	cmd.Env = append(os.Environ(), "WHOLEFILE_KILLED="+dir)
	if err := cmd.Run(); err == nil {
		t.Fatal("it was not killed")
	}
	left, err := os.ReadDir(dir)
	if err != nil || len(left) > 0 {
		t.Errorf("left behind: %v, %v", left, err)
	}
}
