//go:build unix

package termshot

import (
	"fmt"
	"image/color"
	"io"
	"os"
	"os/exec"
	"strings"
	"sync"
	"time"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// patience bounds every wait.
const patience = 60 * time.Second

// Session is a program in a terminal of its own.
type Session struct {
	mu     sync.Mutex
	screen *vt.Emulator
	tty    *os.File
	cmd    *exec.Cmd
	dark   bool // the ground
	bytes  int  // written by the program
}

// Start runs a command in a terminal of cols × rows cells, on a dark ground or a
// light one, which the terminal tells when it is asked.
func Start(cols, rows int, dark bool, cmd *exec.Cmd) (*Session, error) {
	tty, err := pty.StartWithSize(cmd, &pty.Winsize{Cols: uint16(cols), Rows: uint16(rows)})
	if err != nil {
		return nil, err
	}
	s := &Session{screen: vt.NewEmulator(cols, rows), tty: tty, cmd: cmd, dark: dark}
	ground := color.White
	if dark {
		ground = color.Black
	}
	s.screen.SetDefaultBackgroundColor(ground)
	go s.follow()
	go func() { _, _ = io.Copy(tty, s.screen) }() // the terminal's answers
	return s, nil
}

// follow draws what the program writes.
func (s *Session) follow() {
	buf := make([]byte, 1<<16)
	screen := Repeating(s.screen)
	for {
		n, err := s.tty.Read(buf)
		s.mu.Lock()
		_, _ = screen.Write(buf[:n])
		s.bytes += n
		s.mu.Unlock()
		if err != nil {
			return
		}
	}
}

// Type types keys as a terminal sends them.
func (s *Session) Type(keys string) error {
	_, err := io.WriteString(s.tty, keys)
	return err
}

// Await waits until every one of the texts is on the screen.
func (s *Session) Await(texts ...string) error {
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		if s.shows(texts) {
			return nil
		}
	}
	return fmt.Errorf("the screen does not show %q but\n%s", texts, s.Text())
}

// shows reports whether every text is on the screen.
func (s *Session) shows(texts []string) bool {
	screen := s.Text()
	for _, t := range texts {
		if !strings.Contains(screen, t) {
			return false
		}
	}
	return true
}

// Text returns the screen as text.
func (s *Session) Text() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.screen.String()
}

// SVG draws the screen.
func (s *Session) SVG() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return SVG(s.screen, s.dark)
}

// Bytes returns how much the program has written so far.
func (s *Session) Bytes() int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.bytes
}

// Close ends the program.
func (s *Session) Close() {
	_ = s.cmd.Process.Kill()
	_ = s.cmd.Wait()
	s.tty.Close()
}
