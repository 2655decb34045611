//go:build linux || freebsd || netbsd || openbsd

package live

import (
	"encoding/binary"
	"errors"
	"io"
	"math"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	"github.com/jfreymuth/pulse/proto"

	"coldfloor/sound"
)

// pulseStream is a stream on a PulseAudio server, or on one that speaks its
// protocol. It is spoken to here rather than through oto for what oto does not
// offer: what the server has not played can be thrown away, so that a cue that a
// key calls for is heard soon though the buffer is long; silence that nobody
// supplied counts as played, so that the stream never parts from the device's
// clock; and a server that went away is found again when it is back.
type pulseStream struct {
	source source
	client *proto.Client
	conn   io.Closer
	index  uint32
	target int // samples that the server wants to have ahead

	uncorked atomic.Bool // the server's clock for this stream has begun to run again

	mu      sync.Mutex // never held while the server is asked for something
	more    *sync.Cond // one of the following changed
	wanted  int        // samples asked for and to be sent
	owed    int        // more that were asked for and would be too many at once
	sent    int64      // samples since the stream began
	halted  bool
	corked  bool
	busy    bool    // samples are being made and sent
	stands  bool    // the device has stopped for the time being
	sink    float64 // samples that the device takes ahead of its time
	failure error
}

// What the server holds ahead. The device takes sinkAhead of it and never gives
// it back, so that a key's cue waits that long; the rest can be thrown away and
// bridges the time in which a busy machine keeps this process from its samples:
// never less than supplyEvery, after which more is asked for. With a tenth of a
// second in all, cues were torn at a load of a dozen, and with half a second now and
// then when four compilers ran besides on two cores.
const (
	sinkAhead   = 20 * time.Millisecond
	supplyEvery = time.Second
)

// answersWithin is how long a server may take to answer before it is given up:
// nobody who presses a key waits longer.
const answersWithin = 500 * time.Millisecond

// errServerLost is the failure of a stream whose server has gone.
var errServerLost = errors.New("the sound server has gone")

// newPulseStream begins a stream on the system's sound server.
func newPulseStream(s source) (*pulseStream, error) {
	client, conn, err := proto.Connect("")
	if err != nil {
		return nil, err
	}
	p := &pulseStream{source: s, client: client, conn: conn}
	p.more = sync.NewCond(&p.mu)
	client.Callback = p.told
	if err := p.begin(); err != nil {
		conn.Close()
		return nil, err
	}
	client.SetTimeout(answersWithin)
	go p.supply()
	go p.keepTime(s)
	return p, nil
}

// begin has the server make the stream.
func (p *pulseStream) begin() error {
	name := proto.PropListString("coldfloor")
	if err := p.client.Request(&proto.SetClientName{Props: proto.PropList{"application.name": name}}, &proto.SetClientNameReply{}); err != nil {
		return err
	}
	// The server halves for the device what is left of the target without two
	// requests (PulseAudio, fix_playback_buffer_attr).
	want := uint32(sound.Position(2*sinkAhead+2*supplyEvery) * sampleSize)
	request := proto.CreatePlaybackStream{
		SampleSpec: proto.SampleSpec{Format: proto.FormatInt16LE, Channels: 1, Rate: uint32(sound.SampleRate)},
		ChannelMap: proto.ChannelMap{proto.ChannelMono}, ChannelVolumes: proto.ChannelVolumes{proto.VolumeNorm},
		SinkIndex: proto.Undefined, BufferMaxLength: 4 * want, BufferTargetLength: want,
		BufferPrebufferLength: 0, // the stream runs from the start, supplied or not
		BufferMinimumRequest:  uint32(sound.Position(supplyEvery) * sampleSize), AdjustLatency: true,
		Properties: proto.PropList{"media.name": name},
	}
	var reply proto.CreatePlaybackStreamReply
	if err := p.client.Request(&request, &reply); err != nil {
		return err
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	p.index, p.sink = reply.StreamIndex, sinkLatency(reply.SinkLatency)
	p.target = int(reply.BufferTargetLength) / sampleSize
	p.wanted += int(reply.Missing) / sampleSize
	return nil
}

// told takes what the server says of its own accord. It must not ask it for
// anything.
func (p *pulseStream) told(message any) {
	p.mu.Lock()
	defer p.mu.Unlock()
	switch m := message.(type) {
	case *proto.Request:
		p.wanted += int(m.Length) / sampleSize
	case *proto.PlaybackStreamMoved:
		p.sink = sinkLatency(m.SinkLatency)
	case *proto.PlaybackBufferAttrChanged:
		p.sink = sinkLatency(m.SinkLatency)
	case *proto.PlaybackStreamSuspended:
		if p.stands = m.Suspended; p.stands {
			go p.source.stands()
		} else {
			p.uncorked.Store(true)
		}
		return
	case *proto.ConnectionClosed, *proto.PlaybackStreamKilled:
		p.failure = errServerLost
	default:
		return
	}
	p.more.Broadcast()
}

// pieceSamples is how many samples are made at once.
const pieceSamples = 4096

// sampleSize is how many bytes a sample takes on its way: it is sent in 16 bits,
// for what is held ahead is most of the memory that sound takes.
const sampleSize = 2

// supply makes and sends the samples that the server asks for, until the stream
// fails. All that it asks for goes in one packet: a server plays in blocks, and one
// that counts its time in whole microseconds runs fast by what it drops at each end
// of a packet that falls within a block. Recorded from a null sink, packets of
// pieceSamples made that 10 parts in a million.
func (p *pulseStream) supply() {
	piece := make([]float32, pieceSamples)
	var packet []byte
	for {
		n, ok := p.await()
		if !ok {
			return
		}
		packet = slices.Grow(packet[:0], n*sampleSize)
		for left := n; left > 0; left -= pieceSamples {
			made := piece[:min(left, pieceSamples)]
			p.source.fill(made)
			for _, v := range made {
				packet = binary.LittleEndian.AppendUint16(packet, uint16(int16(math.Round(float64(v)*math.MaxInt16))))
			}
		}
		p.done(n, p.client.Send(p.index, packet))
	}
}

// await waits until samples may be sent, and returns how many.
func (p *pulseStream) await() (n int, ok bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	for p.failure == nil && (p.halted || p.wanted <= 0) {
		p.more.Wait()
	}
	if p.failure != nil {
		return 0, false
	}
	p.busy = true
	return p.wanted, true
}

// done books samples that were sent, or that could not be.
func (p *pulseStream) done(n int, err error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.busy = false
	p.wanted -= n
	p.sent += int64(n)
	if err != nil {
		p.failure = err
	}
	p.more.Broadcast()
}

// halt stops sending, has the server throw away what it has not played, and
// returns how many samples that is; it asks for as many again. The stream runs
// on meanwhile.
func (p *pulseStream) halt() int {
	p.mu.Lock()
	p.halted = true
	for p.busy {
		p.more.Wait()
	}
	p.mu.Unlock()
	var at proto.GetPlaybackLatencyReply
	err := p.client.Request(&proto.FlushPlaybackStream{StreamIndex: p.index}, nil)
	if err == nil {
		err = p.client.Request(&proto.GetPlaybackLatency{StreamIndex: p.index}, &at)
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	if err != nil {
		p.failure = err
		return 0
	}
	kept := at.WriteIndex / sampleSize // where the server goes on to write
	thrown := int(p.sent - kept)
	p.sent = kept
	// What a process that was stopped owes for that time would now stand before
	// what comes next. The server waits for it all the same, and asks for nothing
	// until it has come: topUp sends it bit by bit.
	asked := p.wanted + p.owed
	p.wanted = min(asked, p.target)
	p.owed = asked - p.wanted
	return thrown
}

// topUp sends of what is owed as much as the server has played of what it had
// ahead, given how far it has played.
func (p *pulseStream) topUp(played int64) {
	if n := min(p.owed, p.target-int(p.sent-played)-p.wanted); n > 0 {
		p.owed -= n
		p.wanted += n
		p.more.Broadcast()
	}
}

// goOn sends again.
func (p *pulseStream) goOn() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.halted = false
	p.more.Broadcast()
}

// cork lets the server's clock for this stream stand, or run again.
func (p *pulseStream) cork(corked bool) error {
	p.mu.Lock()
	p.corked = corked
	p.more.Broadcast()
	p.mu.Unlock()
	if !corked {
		p.uncorked.Store(true)
	}
	return p.client.Request(&proto.CorkPlaybackStream{StreamIndex: p.index, Corked: corked}, nil)
}

// err returns why the stream plays no more, nil while it does.
func (p *pulseStream) err() error {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.failure
}

// close ends the stream.
func (p *pulseStream) close() {
	p.mu.Lock()
	if p.failure == nil {
		p.failure = errServerLost
	}
	p.more.Broadcast()
	p.mu.Unlock()
	p.conn.Close()
}
