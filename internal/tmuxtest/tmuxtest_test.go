//go:build e2e

package tmuxtest

import (
	"syscall"
	"testing"
)

func TestTerminal(t *testing.T) {
	x := Start(t, 40, 12, []string{"GREETING=hello"}, `echo "$GREETING"; read line; echo "got $line"; exit 3`)
	x.WaitFor("hello")
	x.Type("some text")
	x.Keys("Enter")
	x.WaitFor("got some text")
	if code := x.WaitExit(); code != 3 {
		t.Errorf("exit code %d, want 3", code)
	}
}

func TestKilled(t *testing.T) {
	x := Start(t, 40, 12, nil, "echo here; exec sleep 100")
	x.WaitFor("here")
	if err := syscall.Kill(x.PID(), syscall.SIGKILL); err != nil {
		t.Fatal(err)
	}
	if code := x.WaitExit(); code != 128+9 {
		t.Errorf("exit code %d, want 137", code)
	}
}
