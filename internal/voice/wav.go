package voice

import (
	"encoding/binary"
	"errors"
	"fmt"

	"github.com/gopxl/beep/v2"

	"coldfloor/sound"
)

// Bounds of the sample rates that are taken for those of speech, in Hz.
const lowestRate, highestRate = 4000, 192_000

var errNoWAV = errors.New("what the speech program wrote is not a WAV file")

// pcm is sound as a WAV file holds it (Microsoft and IBM, "Multimedia
// Programming Interface and Data Specifications 1.0", 1991).
type pcm struct {
	rate     int // in Hz
	channels int
	bytes    int // of one sample: 1, without a sign, or 2 or 3
	data     []byte
}

// decode returns the samples of a WAV file, its channels mixed, at
// sound.SampleRate. A length that is not true, as a program writes that cannot
// go back to put it right, is taken for all that is there.
func decode(src []byte) ([]float32, error) {
	p, err := parseWAV(src)
	if err != nil {
		return nil, err
	}
	samples := p.samples()
	if p.rate == int(sound.SampleRate) {
		return samples, nil
	}
	clip := sound.NewClip("", sound.Word, samples)
	return mono(beep.Resample(4, beep.SampleRate(p.rate), sound.SampleRate, clip.Streamer())), nil
}

// parseWAV finds the format and the data among the chunks of a WAV file.
func parseWAV(src []byte) (p pcm, err error) {
	if len(src) < 12 || string(src[:4]) != "RIFF" || string(src[8:12]) != "WAVE" {
		return p, errNoWAV
	}
	for rest := src[12:]; len(rest) >= 8; {
		name, size := string(rest[:4]), uint64(binary.LittleEndian.Uint32(rest[4:]))
		rest = rest[8:]
		body := rest[:min(size, uint64(len(rest)))]
		switch name {
		case "fmt ":
			if err := p.format(body); err != nil {
				return p, err
			}
		case "data":
			if p.data = body; p.rate == 0 {
				return p, errNoWAV
			}
			return p, nil
		}
		rest = rest[min(size+size%2, uint64(len(rest))):]
	}
	return p, errNoWAV
}

// format takes over the format chunk.
func (p *pcm) format(b []byte) error {
	const plain, extensible = 1, 0xfffe
	if len(b) < 16 {
		return errNoWAV
	}
	u16 := binary.LittleEndian.Uint16
	tag, bits := u16(b), u16(b[14:])
	p.channels, p.rate, p.bytes = int(u16(b[2:])), int(binary.LittleEndian.Uint32(b[4:])), int(bits/8)
	switch {
	case tag != plain && tag != extensible, p.channels < 1, p.channels > 2, bits != 8 && bits != 16 && bits != 24:
		return fmt.Errorf("the speech program wrote sound of form %d with %d channels of %d bits, which is not read here", tag, p.channels, bits)
	case p.rate < lowestRate, p.rate > highestRate:
		return fmt.Errorf("the speech program wrote sound of %d Hz, which is not between %d and %d", p.rate, lowestRate, highestRate)
	}
	return nil
}

// samples returns the sound with its channels mixed, from -1 to 1.
func (p *pcm) samples() []float32 {
	out := make([]float32, len(p.data)/(p.bytes*p.channels))
	for i := range out {
		for c := range p.channels {
			out[i] += p.sample((i*p.channels+c)*p.bytes) / float32(p.channels)
		}
	}
	return out
}

// sample returns the sample that stands at a place.
func (p *pcm) sample(at int) float32 {
	b := p.data[at:]
	switch p.bytes {
	case 1:
		return float32(int(b[0])-128) / 128
	case 2:
		return float32(int16(binary.LittleEndian.Uint16(b))) / (1 << 15)
	}
	return float32(int32(uint32(b[0])<<8|uint32(b[1])<<16|uint32(b[2])<<24)) / (1 << 31)
}
