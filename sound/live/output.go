package live

import (
	"encoding/binary"
	"errors"
	"math"
	"sync"
	"time"

	"github.com/ebitengine/oto/v3"

	"coldfloor/sound"
)

// The buffers between the scheduler and a device that is spoken to through oto.
// The driver's is how late a cue is heard, and how long a withdrawn one still
// is: what is in the player's is thrown away then. The player's must hold whatever the driver takes at once,
// which is half the driver's where ALSA is spoken to directly. Smaller ones
// cost more processor time and run dry sooner on a busy machine: measured
// against PulseAudio, an open stream took 1.7 % of a core at 60 ms, 0.9 % at
// 100 ms, 0.4 % at 200 ms.
const (
	driverBuffer = 120 * time.Millisecond
	playerBuffer = driverBuffer / 2
)

// output is a sound device that pulls samples at its own pace.
type output interface {
	// open starts the device and lets it call s from then on. It returns once
	// samples may flow. It may be called again after err was not nil.
	open(s source) error
	halt() int // stops calling fill and throws away what was not yet taken; returns how many samples that is
	goOn()     // calls fill again
	suspend() error
	resume() error
	steady() bool // silence that nobody supplied in time counts as taken, so that no time is lost on the way
	err() error   // why no more samples will be taken, nil while they are
	close()
}

// otoOutput is the system's default device. It speaks to oto rather than to
// beep's speaker, which does not tell of a failed start, always runs two
// channels, and hides how much of its buffer is unplayed.
type otoOutput struct {
	context *oto.Context
	player  *oto.Player
}

// process is the one context that oto allows in a process.
var process = sync.OnceValues(func() (*oto.Context, error) {
	c, ready, err := oto.NewContext(&oto.NewContextOptions{
		SampleRate:      int(sound.SampleRate),
		ChannelCount:    1,
		Format:          oto.FormatFloat32LE,
		BufferSize:      driverBuffer,
		ApplicationName: "coldfloor",
	})
	if err != nil {
		return nil, err
	}
	<-ready
	return c, c.Err()
})

func (o *otoOutput) open(s source) error {
	if o.player != nil {
		return errors.New("the sound device does not come back to a process that had it")
	}
	c, err := process()
	if err != nil {
		return err
	}
	if err := c.Resume(); err != nil {
		return err
	}
	r := &otoReader{source: s}
	r.player = c.NewPlayer(r)
	r.player.SetBufferSize(sound.Position(playerBuffer) * bytesPerSample)
	o.context, o.player = c, r.player
	o.player.Play()
	return nil
}

func (o *otoOutput) halt() int {
	o.player.PauseAndStopReading()
	n := o.player.BufferedSize() / bytesPerSample
	o.player.Reset() //lint:ignore SA1019 nothing else throws away what is buffered of a stream that cannot seek
	return n
}

func (o *otoOutput) goOn() { o.player.Play() }

func (o *otoOutput) steady() bool { return false }

func (o *otoOutput) suspend() error { return o.context.Suspend() }
func (o *otoOutput) resume() error  { return o.context.Resume() }

func (o *otoOutput) err() error {
	if o.context == nil {
		return nil
	}
	if err := o.context.Err(); err != nil {
		return err
	}
	return o.player.Err()
}

func (o *otoOutput) close() {
	if o.player != nil {
		o.player.Pause()
		o.context.Suspend()
	}
}

// bytesPerSample is the size of a 32-bit float.
const bytesPerSample = 4

// otoReader is the bytes that a player reads.
type otoReader struct {
	player *oto.Player
	source source
	buf    []float32
}

// Read implements io.Reader; len(b) is a whole number of samples.
func (r *otoReader) Read(b []byte) (int, error) {
	n := len(b) / bytesPerSample
	if cap(r.buf) < n {
		r.buf = make([]float32, n)
	}
	out := r.buf[:n]
	r.source.took(time.Now(), float64(r.player.BufferedSize()/bytesPerSample))
	r.source.fill(out)
	for i, v := range out {
		binary.LittleEndian.PutUint32(b[bytesPerSample*i:], math.Float32bits(v))
	}
	return n * bytesPerSample, nil
}
