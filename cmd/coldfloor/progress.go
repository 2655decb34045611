package main

import (
	"fmt"
	"io"
	"time"
)

// progress tells how far a long reading has come, on the error stream: in place
// on a terminal, now and then a line elsewhere. What takes less than a second
// goes without.
type progress struct {
	w        io.Writer
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

func newProgress(stderr io.Writer) *progress {
	return &progress{w: stderr, terminal: isTerminal(stderr), next: time.Now().Add(firstTelling)}
}

// tell says how many of all bytes are read.
func (p *progress) tell(read, total int64) {
	now := time.Now()
	if now.Before(p.next) || total == 0 {
		return
	}
	p.told = true
	percent := read * 100 / total
	if p.terminal {
		p.next = now.Add(terminalTelling)
		fmt.Fprintf(p.w, "\rreading the journals, %d %%", percent)
		return
	}
	p.next = now.Add(lineTelling)
	fmt.Fprintf(p.w, "coldfloor: reading the journals, %d %%\n", percent)
}

// end wipes the line on a terminal.
func (p *progress) end() {
	if p.told && p.terminal {
		fmt.Fprintf(p.w, "\r%40s\r", "")
	}
}
