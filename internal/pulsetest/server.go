// Package pulsetest lets tests hear what a program plays: a PulseAudio server
// of their own with a sink that leads nowhere, recorded from its monitor. It
// needs pulseaudio and parec, so tests that use it carry the build tag e2e.
package pulsetest

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"time"
)

// Rate is the sample rate of the sink and of every recording.
const Rate = 44100

// sink is the name of the sink.
const sink = "floor"

// Server is a PulseAudio server with one null sink.
type Server struct {
	dir string
	cmd *exec.Cmd
	log bytes.Buffer
}

// Start starts a server whose files are in dir, which must be short enough for
// a socket's path, and waits until it answers.
func Start(dir string) (*Server, error) {
	s := &Server{dir: dir}
	if err := s.Restart(); err != nil {
		return nil, err
	}
	return s, nil
}

// Restart starts a server that was stopped again, at the same place, and waits
// until it answers.
func (s *Server) Restart() error {
	s.cmd = exec.Command("pulseaudio", "-n", "--daemonize=no", "--use-pid-file=no", "--exit-idle-time=-1",
		"-L", "module-native-protocol-unix auth-anonymous=1 socket="+s.socket(),
		"-L", fmt.Sprintf("module-null-sink sink_name=%s rate=%d channels=2 format=s16le", sink, Rate))
	s.cmd.Env = append(os.Environ(), s.Env()...)
	s.cmd.Stdout, s.cmd.Stderr = &s.log, &s.log
	if err := s.cmd.Start(); err != nil {
		return err
	}
	for deadline := time.Now().Add(20 * time.Second); time.Now().Before(deadline); time.Sleep(20 * time.Millisecond) {
		if s.tool("pactl", "list", "short", "sinks").Run() == nil {
			return nil
		}
	}
	s.Stop()
	return fmt.Errorf("pulseaudio does not answer: %s", s.log.String())
}

func (s *Server) socket() string { return filepath.Join(s.dir, "native") }

// Env returns what a program's environment must hold to play to the server.
func (s *Server) Env() []string {
	return []string{"XDG_RUNTIME_DIR=" + s.dir, "HOME=" + s.dir, "PULSE_SERVER=unix:" + s.socket()}
}

// tool returns a client of the server.
func (s *Server) tool(name string, args ...string) *exec.Cmd {
	c := exec.Command(name, args...)
	c.Env = append(os.Environ(), s.Env()...)
	return c
}

// Stop kills the server, as if its device went away for good.
func (s *Server) Stop() {
	s.cmd.Process.Kill()
	s.cmd.Wait()
}

// Suspend stops the sink, as when its device is gone for a while, or has it go on.
func (s *Server) Suspend(stands bool) error {
	return s.tool("pactl", "suspend-sink", sink, strconv.FormatBool(stands)).Run()
}
