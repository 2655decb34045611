//go:build linux || freebsd || netbsd || openbsd

package live

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"testing"

	"golang.org/x/sys/unix"
)

// init lets this binary stand for a program whose C library is noisy.
func init() {
	if os.Getenv("COLDFLOOR_TEST_NOISE") == "" {
		return
	}
	noise := func(text string) { unix.Write(2, []byte(text)) }
	noise("before ")
	quiet()
	quiet()
	noise("ALSA lib pcm.c: no such device\n")
	fmt.Fprint(os.Stderr, "ours ")
	if os.Getenv("COLDFLOOR_TEST_NOISE") == "crash" {
		done := make(chan bool)
		go func() { panic("a crash") }()
		<-done
	}
	loudly()
	loudly()
	noise("after ")
	fmt.Fprint(os.Stderr, "ours again")
	os.Exit(0)
}

// noisy runs this binary as that program and returns its standard error.
func noisy(t *testing.T, how string) []byte {
	t.Helper()
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), "COLDFLOOR_TEST_NOISE="+how)
	var stderr bytes.Buffer
	c.Stderr = &stderr
	err := c.Run()
	if (err != nil) != (how == "crash") {
		t.Fatalf("%v: %s", err, stderr.Bytes())
	}
	return stderr.Bytes()
}

func TestQuietKeepsLibrariesFromStandardError(t *testing.T) {
	if got := string(noisy(t, "noise")); got != "before ours after ours again" {
		t.Errorf("standard error is %q", got)
	}
}

func TestCrashesAreSeenThroughTheQuiet(t *testing.T) {
	got := noisy(t, "crash")
	if !bytes.Contains(got, []byte("panic: a crash")) || !bytes.Contains(got, []byte("goroutine ")) || bytes.Contains(got, []byte("ALSA")) {
		t.Errorf("standard error is %q", got)
	}
}
