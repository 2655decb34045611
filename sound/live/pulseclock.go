//go:build linux || freebsd || netbsd || openbsd

package live

import (
	"time"

	"github.com/jfreymuth/pulse/proto"

	"coldfloor/sound"
)

// How often the server is asked how far it has played: often while the pace of
// a stream that begins to run is not known yet, then rarely, for each answer wakes
// the process and costs processor time. Samples that are owed go out at each answer,
// for as long as the process was stopped; askOwing leaves the server more ahead than
// its own requests do.
const (
	askAtFirst  = 25 * time.Millisecond
	askOwing    = 200 * time.Millisecond
	askEvery    = 500 * time.Millisecond
	timesAtOnce = 24
)

// heldUp is by how much a wait between two questions is too long for a process
// that runs: the machine or the process was stopped.
const heldUp = 250 * time.Millisecond

// keepTime asks the server how far it has played, again and again until the
// stream fails. What the server says is taken where it plays, so that a busy
// machine that holds this process up tells nothing wrong, as the moments at which
// the server asks for more would.
func (p *pulseStream) keepTime(to source) {
	for quick := timesAtOnce; p.runs(); {
		wait := askEvery
		switch {
		case quick > 0:
			quick, wait = quick-1, askAtFirst
		case p.owes():
			wait = askOwing
		}
		asleep := time.Now().Round(0) // by the wall's clock, which goes on while the machine sleeps
		time.Sleep(wait)
		stopped := time.Since(asleep) > wait+heldUp
		if p.uncorked.Swap(false) || !p.ask(to) || stopped {
			quick = timesAtOnce
		}
	}
}

// runs waits while the server's clock for the stream stands, and reports whether
// the stream has not failed.
func (p *pulseStream) runs() bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	for p.corked && p.failure == nil {
		p.more.Wait()
	}
	return p.failure == nil
}

// ask asks the server once, and reports whether it answered.
func (p *pulseStream) ask(to source) bool {
	var now proto.GetPlaybackLatencyReply
	asked := time.Now()
	err := p.client.Request(&proto.GetPlaybackLatency{StreamIndex: p.index}, &now)
	if err != nil {
		return false
	}
	at := answered(asked, time.Now(), now.ReplyTime)
	p.mu.Lock()
	defer p.mu.Unlock()
	for p.busy {
		p.more.Wait()
	}
	if p.halted || p.stands || p.failure != nil {
		return p.failure == nil
	}
	p.topUp(now.ReadIndex / sampleSize)
	heard := float64(now.ReadIndex)/sampleSize - samplesIn(time.Duration(now.Latency)*time.Microsecond)
	to.took(at, float64(p.sent)-heard-p.sink)
	return true
}

// owes reports whether the server waits for samples that are sent bit by bit.
func (p *pulseStream) owes() bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.owed > 0
}

// answered returns the moment of the server's answer, which by its own clock, the
// wall's, was at reply. That of a server on another machine tells nothing: the
// answer came between the two moments at which it was asked for and had.
func answered(asked, had time.Time, reply proto.Time) time.Time {
	wall := time.Unix(int64(reply.Seconds), int64(reply.Microseconds)*1000)
	at := had.Add(wall.Sub(had.Round(0)))
	if at.Before(asked) || at.After(had) {
		return had
	}
	return at
}

// sinkLatency returns how many samples a sink holds that it has taken and not
// played.
func sinkLatency(l proto.Microseconds) float64 {
	return float64(l) * float64(sound.SampleRate) / 1e6
}
