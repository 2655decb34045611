//go:build unix

package pulsetest

import "syscall"

// Hang stops the server in the middle of whatever it does, until GoOn.
func (s *Server) Hang() error { return s.cmd.Process.Signal(syscall.SIGSTOP) }

// GoOn lets a server that hangs go on.
func (s *Server) GoOn() error { return s.cmd.Process.Signal(syscall.SIGCONT) }
