//go:build e2e && linux

package live

import (
	"sync/atomic"
	"testing"
	"time"

	"coldfloor/sound"
)

// asked is a source of silence that counts how often the server was asked how far
// it has played, and keeps how far that was.
type asked struct {
	times, made atomic.Int64
	heard       atomic.Int64 // samples
}

func (a *asked) fill(out []float32) {
	clear(out)
	a.made.Add(int64(len(out)))
}

func (a *asked) took(_ time.Time, untaken float64) {
	a.times.Add(1)
	a.heard.Store(a.made.Load() - int64(untaken))
}

func (a *asked) stands() {}

// await waits until the server has played so much more.
func (a *asked) await(t *testing.T, more time.Duration) {
	t.Helper()
	want := a.heard.Load() + int64(sound.Position(more))
	for end := time.Now().Add(more + 20*time.Second); a.heard.Load() < want; time.Sleep(20 * ms) {
		if time.Now().After(end) {
			t.Fatal("the server does not play")
		}
	}
}

// TestServerIsSeldomAsked: the server is left alone while it is owed what a stopped
// process did not send, which lasts as long as the stop did, and while its clock
// for the stream stands.
func TestServerIsSeldomAsked(t *testing.T) {
	a := &asked{}
	p, err := newPulseStream(a)
	if err != nil {
		t.Fatal(err)
	}
	defer p.close()
	a.await(t, 3*time.Second)
	p.mu.Lock()
	p.owed = sound.Position(time.Minute)
	p.mu.Unlock()
	const long = 5 * time.Second
	before := a.times.Load()
	a.await(t, long)
	if n, often := a.times.Load()-before, int64(long/askAtFirst); n > often/2 {
		t.Errorf("asked %d times in %v while samples are owed", n, long)
	}
	if err := p.cork(true); err != nil {
		t.Fatal(err)
	}
	time.Sleep(2 * askEvery) // the last question is under way
	before = a.times.Load()
	time.Sleep(6 * askEvery)
	if n := a.times.Load() - before; n > 0 {
		t.Errorf("asked %d times while the clock stands", n)
	}
	if err := p.cork(false); err != nil {
		t.Fatal(err)
	}
	a.await(t, 2*time.Second)
}
