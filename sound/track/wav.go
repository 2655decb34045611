package track

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"io"

	"coldfloor/internal/plan"
	"coldfloor/sound"
)

// wavEncoder writes a RIFF WAVE file of 16-bit PCM whose length is known
// beforehand, and which ends with a cue point and a label for each block.
type wavEncoder struct {
	w     *bufio.Writer
	bytes [trackBlock * sampleBytes]byte
	marks []byte
}

// sampleBytes is the size of one 16-bit mono sample.
const sampleBytes = 2

func newWAVEncoder(w io.Writer, length int, p *plan.Plan) (*wavEncoder, error) {
	e := &wavEncoder{w: bufio.NewWriterSize(w, 1<<16), marks: cuePoints(p)}
	data := uint32(length * sampleBytes)
	format := chunk("fmt ", le(uint16(1), uint16(1), uint32(sound.SampleRate), uint32(sound.SampleRate)*sampleBytes, uint16(sampleBytes), uint16(8*sampleBytes)))
	e.w.WriteString("RIFF")
	e.w.Write(le(uint32(4+len(format)+8) + data + uint32(len(e.marks))))
	e.w.WriteString("WAVE")
	e.w.Write(format)
	e.w.WriteString("data")
	_, err := e.w.Write(le(data))
	return e, err
}

func (e *wavEncoder) silence(n int) error {
	clear(e.bytes[:n*sampleBytes])
	_, err := e.w.Write(e.bytes[:n*sampleBytes])
	return err
}

func (e *wavEncoder) write(samples []int32) error {
	for i, v := range samples {
		binary.LittleEndian.PutUint16(e.bytes[i*sampleBytes:], uint16(v))
	}
	_, err := e.w.Write(e.bytes[:len(samples)*sampleBytes])
	return err
}

func (e *wavEncoder) finish() error {
	if _, err := e.w.Write(e.marks); err != nil {
		return err
	}
	return e.w.Flush()
}

// cuePoints returns a cue chunk with a point at each block's start, and a list
// of their labels.
func cuePoints(p *plan.Plan) []byte {
	points := le(uint32(len(p.Blocks)))
	labels := []byte("adtl")
	for i, b := range p.Blocks {
		id, at := uint32(i+1), uint32(sound.Position(b.Start))
		points = append(points, le(id, at)...)
		points = append(points, "data"...)
		points = append(points, le(uint32(0), uint32(0), at)...)
		labels = append(labels, chunk("labl", append(le(id), b.Title+"\x00"...))...)
	}
	return append(chunk("cue ", points), chunk("LIST", labels)...)
}

// chunk returns a RIFF chunk, padded to an even length.
func chunk(id string, body []byte) []byte {
	c := append([]byte(id), le(uint32(len(body)))...)
	c = append(c, body...)
	if len(body)%2 == 1 {
		c = append(c, 0)
	}
	return c
}

// le returns numbers of fixed size as little-endian bytes.
func le(numbers ...any) []byte {
	var b bytes.Buffer
	for _, n := range numbers {
		binary.Write(&b, binary.LittleEndian, n)
	}
	return b.Bytes()
}
