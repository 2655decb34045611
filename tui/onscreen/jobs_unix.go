//go:build unix

package onscreen

import (
	"os"
	"os/signal"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
)

// Suspend is the command that stops the program as the shell's key for it
// does, after the terminal was given back.
func Suspend() tea.Msg {
	_ = syscall.Kill(syscall.Getpid(), syscall.SIGTSTP)
	return nil
}

// mindJobs has the program give the terminal back before it stops, and take it
// again when it goes on, however it was stopped. The function that is returned
// ends that.
func mindJobs(p *tea.Program) (end func()) {
	stop, goOn := make(chan os.Signal, 1), make(chan os.Signal, 1)
	signal.Notify(stop, syscall.SIGTSTP)
	signal.Notify(goOn, syscall.SIGCONT)
	done := make(chan struct{})
	go func() {
		for {
			select {
			case <-stop:
				_ = p.ReleaseTerminal()
				// The whole job, as the key does. A signal that Go has once handed
				// over does not stop its process any more; this one always does.
				_ = syscall.Kill(0, syscall.SIGSTOP)
				takeBack(p)
			case <-goOn: // after a stop that gives no notice, or the one above
				takeBack(p)
			case <-done:
				return
			}
		}
	}()
	return func() {
		signal.Stop(stop)
		signal.Stop(goOn)
		close(done)
	}
}

// takeBack sets the terminal up again, for a shell has set it as it likes it, and
// has the picture drawn whole.
func takeBack(p *tea.Program) {
	_ = p.ReleaseTerminal()
	_ = p.RestoreTerminal()
	p.Send(tea.ResumeMsg{})
}
