package main

import (
	"bytes"
	"testing"
	"time"
)

// What takes less than a second goes without; from then on it is told how far
// it is, and about how long the rest takes.
func TestProgressEstimates(t *testing.T) {
	var out bytes.Buffer
	p := newProgress(&out, "reading the journals")
	began := p.began
	at := func(after time.Duration, done int64) {
		p.now = func() time.Time { return began.Add(after) }
		p.tell(done, 1000)
	}
	at(500*time.Millisecond, 10)
	at(time.Second, 0)
	at(6*time.Second, 20)
	at(7*time.Second, 30) // too soon after the last
	at(12*time.Second, 500)
	at(24*time.Second, 999)
	p.end()
	const want = "coldfloor: reading the journals, 0 %\n" +
		"coldfloor: reading the journals, 2 %, about 5 min to go\n" +
		"coldfloor: reading the journals, 50 %, about 12 s to go\n" +
		"coldfloor: reading the journals, 99 %, about 1 s to go\n"
	if out.String() != want {
		t.Errorf("told\n%swant\n%s", &out, want)
	}
}
