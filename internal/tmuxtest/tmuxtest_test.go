//go:build e2e

package tmuxtest

import "testing"

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
	x := Start(t, 40, 12, nil, "kill -9 $$")
	if code := x.WaitExit(); code != -1 {
		t.Errorf("exit code %d, want -1", code)
	}
}
