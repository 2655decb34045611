package tui

import (
	"errors"
	"os"

	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/tui/onscreen"
)

// Run shows the program on the terminal until it ends, and says what there is
// to say after it, once the flow was closed. Signals sends what arrives from
// outside: Interrupt stops the run; anything else leaves it as it stands.
func Run(o Options, signals <-chan os.Signal) (closing string, err error) {
	p := onscreen.New(New(o), o.Look, true, tea.WithoutSignalHandler())
	done := make(chan struct{})
	defer close(done)
	go func() {
		select {
		case s := <-signals:
			if s == os.Interrupt {
				p.Send(Interrupt())
				return
			}
			p.Quit()
		case <-done:
		}
	}()
	last, err := p.Run()
	app, ok := last.(App)
	if !ok {
		return "", err
	}
	if app.form.active != nil {
		err = errors.Join(err, app.keepTyped())
	}
	if app.underWay() && o.Flow.Logged() && app.run.run.Written() == nil { // what is not is told when the log is closed
		app.closing = app.opts.Flow.Language().Step.Kept
	}
	if r := o.Flow.PutOff(); r != nil && app.closing == "" {
		app.closing = app.unrated(r)
	}
	return app.Closing(), errors.Join(err, app.Err())
}
