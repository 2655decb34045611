//go:build e2e

package main

import (
	"context"
	"os/exec"
	"testing"
	"time"

	"coldfloor/internal/tmuxtest"
)

// TestWindowsRecorded records what the Windows build plays through Wine and holds
// it against its log. Wine hands samples on from ordinary threads: on a busy
// machine the sound has holes whoever plays it, which says nothing of the program.
func TestWindowsRecorded(t *testing.T) {
	w := newWindows(t)
	server := soundServer(t)
	w.write("react.yaml", reacting)
	w.env = append(w.env, server.Env()...)
	w.env = append(w.env, "SSH_CONNECTION=")
	rec, err := server.RecordTimed()
	if err != nil {
		t.Fatal(err)
	}
	w.must(exec.Command("wine", w.exe, "run", "--plain", "react.yaml", "--journal", "j.jsonl"))
	time.Sleep(500 * time.Millisecond)
	samples, err := rec.Stop(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("the sink's clock runs %.0f parts in a million fast", 1e6*(rec.Speed()-1))
	holdLog(t, samples, rec.Speed(), w.runs()[0])
}

// TestWindowsWithoutASoundDevice runs on a Windows that has no driver for sound:
// the player is told, and the run goes on to its end. (Wine's console swallows the
// bell itself.)
func TestWindowsWithoutASoundDevice(t *testing.T) {
	w := newWindows(t)
	w.must(exec.Command("wine", "reg", "add", `HKCU\Software\Wine\Drivers`, "/v", "Audio", "/d", "", "/f"))
	env := append(w.env, "SSH_CONNECTION=", "PULSE_SERVER=unix:/nonexistent", "XDG_RUNTIME_DIR="+t.TempDir())
	x := tmuxtest.Start(t, 80, 24, env, "cd '"+w.dir+"' && exec wine '"+w.exe+"' run session.yaml --plain --no-log")
	for _, question := range []string{"I have read this", "Enter: start", "Enter starts"} {
		x.WaitFor(question)
		x.Keys("Enter")
	}
	x.WaitFor("notice no sound device: terminal bell instead")
	x.WaitFor("finish, done")
	x.WaitExit()
}
