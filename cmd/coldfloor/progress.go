package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/runs"
	"coldfloor/internal/units"
)

// errInterrupted ends what takes long when the user has had enough of it.
var errInterrupted = errors.New("interrupted")

// longReading returns how to read journals, of which there may be many: how far
// it has come is told as what is being done, and Ctrl-C ends it so that nothing
// is left behind. The reading of the files takes that part of the time. End is
// to be called when all is done.
func longReading(c *cobra.Command, doing string, part float64) (o runs.Options, end func()) {
	progress := newProgress(c.ErrOrStderr(), doing)
	ctx, stop := signal.NotifyContext(c.Context(), os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	o = runs.Options{Progress: progress.tell, Stop: func() error {
		if ctx.Err() != nil {
			return errInterrupted
		}
		return nil
	}}
	return o.Telling(part), func() { stop(); progress.end() }
}

// progress tells how far a long reading or writing has come, on the error
// stream: in place on a terminal, now and then a line elsewhere. What takes less
// than a second goes without.
type progress struct {
	w        io.Writer
	now      func() time.Time
	began    time.Time
	doing    string
	terminal bool
	next     time.Time
	told     bool
}

// Between two tellings, and before the first.
const (
	firstTelling    = time.Second
	terminalTelling = 200 * time.Millisecond
	lineTelling     = 5 * time.Second
)

// newProgress returns a progress of what is being done, as "reading the journals".
func newProgress(stderr io.Writer, doing string) *progress {
	began := time.Now()
	return &progress{w: stderr, now: time.Now, began: began, doing: doing, terminal: isTerminal(stderr), next: began.Add(firstTelling)}
}

// tell says how much of all is done, and about how long the rest takes if it
// goes on as fast.
func (p *progress) tell(done, total int64) {
	now := p.now()
	if now.Before(p.next) || total == 0 {
		return
	}
	p.told = true
	far := fmt.Sprintf("%s, %d %%", p.doing, done*100/total)
	if done > 0 {
		left := time.Duration(float64(now.Sub(p.began)) * float64(total-done) / float64(done))
		far += fmt.Sprintf(", about %s to go", units.Sentence(roughly(left)))
	}
	if p.terminal {
		p.next = now.Add(terminalTelling)
		fmt.Fprintf(p.w, "\r%-*s", progressWidth, far)
		return
	}
	p.next = now.Add(lineTelling)
	fmt.Fprintf(p.w, "coldfloor: %s\n", far)
}

// roughly rounds a time that is left to what can be said of it.
func roughly(left time.Duration) time.Duration {
	if left < time.Minute {
		return max(time.Second, left.Round(time.Second))
	}
	return left.Round(time.Minute)
}

// progressWidth is of the line on a terminal: what is longer than it is not
// wiped.
const progressWidth = 60

// end wipes the line on a terminal.
func (p *progress) end() {
	if p.told && p.terminal {
		fmt.Fprintf(p.w, "\r%*s\r", progressWidth, "")
	}
	p.told = false
}
