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
func (p Program) mindJobs() (end func()) {
	stop, goOn := make(chan os.Signal, 1), make(chan os.Signal, 1)
	signal.Notify(stop, syscall.SIGTSTP)
	signal.Notify(goOn, syscall.SIGCONT)
	done := make(chan struct{})
	go func() {
		given := false // the terminal has been given back: given back twice, Bubble Tea would not take it again
		giveBack := func() {
			if !given {
				_ = p.ReleaseTerminal()
			}
			given = true
		}
		for {
			select {
			case <-stop:
				giveBack()
				drop(goOn)
				halt()
			case <-goOn: // after the stop above, or one that gives no notice
				giveBack()
				p.takeBack()
				given = false
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

// halt stops the whole job, as the key does. A signal that Go has handed over once
// no longer stops the process; this one always does, but may take a moment: what
// is to be done after it waits for the signal to go on. Tests put another in its
// place.
var halt = func() { _ = syscall.Kill(0, syscall.SIGSTOP) }

// drop takes what is left in a channel of signals.
func drop(signals <-chan os.Signal) {
	select {
	case <-signals:
	default:
	}
}

// takeBack sets the terminal up again, which the shell has meanwhile set up as it
// likes it, and has the whole picture drawn. Bubble Tea by itself would not ask for
// clicks again.
func (p Program) takeBack() {
	_ = p.RestoreTerminal()
	if p.clicks {
		p.Send(tea.EnableMouseCellMotion())
	}
	p.Send(tea.ResumeMsg{})
}
