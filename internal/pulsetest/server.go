// Package pulsetest lets tests hear what a program plays: a PulseAudio server
// of their own with a sink that leads nowhere, recorded from its monitor. It
// needs pulseaudio and parec, so tests that use it carry the build tag e2e.
package pulsetest

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
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

// Hang stops the server in the middle of whatever it does, until GoOn.
func (s *Server) Hang() error { return s.cmd.Process.Signal(syscall.SIGSTOP) }

// GoOn lets a server that hangs go on.
func (s *Server) GoOn() error { return s.cmd.Process.Signal(syscall.SIGCONT) }

// Recording is what the sink plays from the moment it was begun.
type Recording struct {
	cmd  *exec.Cmd
	file *os.File // written by the recorder itself, which costs the test no time

	placed chan struct{} // closed when begun is known
	begun  time.Time
}

// watched is how long the beginning of a recording is watched to place it.
const watched = 10 * time.Second

// Begun returns the moment at which the server had its first sample ready: the
// earliest that goes together with what had been recorded by the moments of the
// first ten seconds, of which it waits for the end.
func (r *Recording) Begun() time.Time {
	<-r.placed
	return r.begun
}

// place finds begun. The server hands its samples over in blocks, each as it is
// ready; a busy machine makes some late and none early.
func (r *Recording) place() {
	defer close(r.placed)
	for start := time.Now(); time.Since(start) < watched; time.Sleep(2 * time.Millisecond) {
		info, err := r.file.Stat()
		now := time.Now()
		if err != nil {
			return // it has ended
		}
		at := now.Add(-time.Duration(info.Size()/2) * time.Second / Rate)
		if info.Size() > 0 && (r.begun.IsZero() || at.Before(r.begun)) {
			r.begun = at
		}
	}
}

// Record begins to record.
func (s *Server) Record() (*Recording, error) {
	f, err := os.CreateTemp(s.dir, "recording")
	if err != nil {
		return nil, err
	}
	r := &Recording{file: f, placed: make(chan struct{}), cmd: s.tool("parec", "--device="+sink+".monitor", "--raw", "--format=s16le",
		fmt.Sprintf("--rate=%d", Rate), "--channels=1", "--latency-msec=200")}
	r.cmd.Stdout = f
	if err := r.cmd.Start(); err != nil {
		return nil, err
	}
	go r.place()
	return r, nil
}

// Stop ends the recording and returns its samples, from -1 to 1.
func (r *Recording) Stop(ctx context.Context) ([]float32, error) {
	r.cmd.Process.Signal(os.Interrupt)
	ended := make(chan error, 1)
	go func() { ended <- r.cmd.Wait() }()
	select {
	case <-ended:
	case <-ctx.Done():
		r.cmd.Process.Kill()
		return nil, errors.New("parec does not end")
	}
	defer r.file.Close()
	b, err := os.ReadFile(r.file.Name())
	if err != nil {
		return nil, err
	}
	samples := make([]float32, len(b)/2)
	for i := range samples {
		samples[i] = float32(int16(uint16(b[2*i])|uint16(b[2*i+1])<<8)) / (1 << 15)
	}
	return samples, nil
}
