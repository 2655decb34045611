package main

import (
	"fmt"
	"io"
	"time"
)

// progress tells how far a long reading or writing has come, on the error stream: in place
// on a terminal, now and then a line elsewhere. What takes less than a second
// goes without.
type progress struct {
	w        io.Writer
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
	return &progress{w: stderr, doing: doing, terminal: isTerminal(stderr), next: time.Now().Add(firstTelling)}
}

// tell says how much of all is done.
func (p *progress) tell(done, total int64) {
	now := time.Now()
	if now.Before(p.next) || total == 0 {
		return
	}
	p.told = true
	percent := done * 100 / total
	if p.terminal {
		p.next = now.Add(terminalTelling)
		fmt.Fprintf(p.w, "\r%s, %d %%", p.doing, percent)
		return
	}
	p.next = now.Add(lineTelling)
	fmt.Fprintf(p.w, "coldfloor: %s, %d %%\n", p.doing, percent)
}

// end wipes the line on a terminal.
func (p *progress) end() {
	if p.told && p.terminal {
		fmt.Fprintf(p.w, "\r%40s\r", "")
	}
}
