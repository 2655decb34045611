package pulsetest

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"slices"
	"sync"
	"time"
)

// Recording is what the sink plays from the moment it was begun.
type Recording struct {
	cmd  *exec.Cmd
	file *os.File // written by the recorder itself, which costs the test no time

	placed chan struct{} // closed when begun is known
	begun  time.Time
	ended  chan struct{} // closed when the recording ends
	marks  []mark        // of a timed one, one a second
}

// mark is a moment and how many samples had been recorded by it.
type mark struct {
	at      time.Time
	samples int64
}

// early returns the moment of the first sample, had it come as early as m.
func (m mark) early() time.Time { return m.at.Add(-time.Duration(m.samples) * time.Second / Rate) }

// watched is how long the beginning of a recording is watched to place it.
const watched = 10 * time.Second

// Begun returns the moment at which the server had its first sample ready: the
// earliest that goes together with what had been recorded by the moments of the
// first ten seconds, of which it waits for the end.
func (r *Recording) Begun() time.Time {
	<-r.placed
	return r.begun
}

// watch finds begun, and the marks of a timed recording. The server hands its samples
// over in blocks, each as it is ready; a busy machine makes some late and none early.
func (r *Recording) watch(timed bool) {
	known := sync.OnceFunc(func() { close(r.placed) })
	defer known()
	tick := time.NewTicker(2 * time.Millisecond)
	defer tick.Stop()
	for start := time.Now(); timed || time.Since(start) < watched; {
		select {
		case <-r.ended:
			return
		case <-tick.C:
		}
		info, err := r.file.Stat()
		if err != nil {
			return
		}
		r.note(mark{time.Now(), info.Size() / 2}, int(time.Since(start)/time.Second))
		if time.Since(start) >= watched {
			known()
		}
	}
}

// note takes in how far the recording is in a second of it.
func (r *Recording) note(m mark, second int) {
	if m.samples == 0 {
		return
	}
	if second < int(watched/time.Second) && (r.begun.IsZero() || m.early().Before(r.begun)) {
		r.begun = m.early()
	}
	for len(r.marks) <= second {
		r.marks = append(r.marks, m)
	}
	if m.early().Before(r.marks[second].early()) {
		r.marks[second] = m
	}
}

// Speed returns how fast the server's clock ran by the host's in a recording that
// has ended: above 1 if it was faster. Make the recording with RecordTimed.
func (r *Recording) Speed() float64 {
	earliest := func(list []mark) mark {
		return slices.MinFunc(list, func(a, b mark) int { return a.early().Compare(b.early()) })
	}
	third := len(r.marks) / 3
	a, b := earliest(r.marks[:third]), earliest(r.marks[2*third:])
	return float64(b.samples-a.samples) / Rate / b.at.Sub(a.at).Seconds()
}

// Record begins to record.
func (s *Server) Record() (*Recording, error) { return s.record(200, false) }

// RecordTimed begins to record in small pieces and to watch the server's clock.
func (s *Server) RecordTimed() (*Recording, error) { return s.record(10, true) }

// record records in pieces of so many milliseconds.
func (s *Server) record(piece int, timed bool) (*Recording, error) {
	f, err := os.CreateTemp(s.dir, "recording")
	if err != nil {
		return nil, err
	}
	r := &Recording{file: f, placed: make(chan struct{}), ended: make(chan struct{}), cmd: s.tool("parec", "--device="+sink+".monitor", "--raw", "--format=s16le",
		fmt.Sprintf("--rate=%d", Rate), "--channels=1", fmt.Sprintf("--latency-msec=%d", piece))}
	r.cmd.Stdout = f
	if err := r.cmd.Start(); err != nil {
		return nil, err
	}
	go r.watch(timed)
	return r, nil
}

// Stop ends the recording and returns its samples, from -1 to 1.
func (r *Recording) Stop(ctx context.Context) ([]float32, error) {
	r.cmd.Process.Signal(os.Interrupt)
	ended := make(chan error, 1)
	go func() { ended <- r.cmd.Wait() }()
	select {
	case <-ended:
	case <-ctx.Done():
		r.cmd.Process.Kill()
		return nil, errors.New("parec does not end")
	}
	close(r.ended)
	<-r.placed
	defer r.file.Close()
	b, err := os.ReadFile(r.file.Name())
	if err != nil {
		return nil, err
	}
	samples := make([]float32, len(b)/2)
	for i := range samples {
		samples[i] = float32(int16(uint16(b[2*i])|uint16(b[2*i+1])<<8)) / (1 << 15)
	}
	return samples, nil
}
