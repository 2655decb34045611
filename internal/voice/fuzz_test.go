package voice

import (
	"bytes"
	"encoding/binary"
	"math"
	"testing"

	"github.com/gopxl/beep/v2"
	"github.com/gopxl/beep/v2/wav"

	"coldfloor/internal/mutate"
	"coldfloor/sound"
)

// spoken returns a WAV file of n frames, as speech programs write them.
func spoken(rate uint32, channels, bits uint16, n int) []byte {
	data := make([]byte, n*int(channels)*int(bits/8))
	for i := range data {
		data[i] = byte(i * 37)
	}
	var b bytes.Buffer
	b.WriteString("RIFF")
	_ = binary.Write(&b, binary.LittleEndian, uint32(36+len(data)))
	b.WriteString("WAVEfmt ")
	for _, v := range []any{uint32(16), uint16(1), channels, rate, rate * uint32(channels) * uint32(bits/8), channels * bits / 8, bits} {
		_ = binary.Write(&b, binary.LittleEndian, v)
	}
	b.WriteString("data")
	_ = binary.Write(&b, binary.LittleEndian, uint32(len(data)))
	b.Write(data)
	return b.Bytes()
}

func files() [][]byte {
	endless := spoken(22050, 1, 16, 40) // as a program writes that cannot seek in what it writes
	copy(endless[4:], "\xff\xff\xff\xff")
	copy(endless[40:], "\xff\xff\xff\xff")
	wide := spoken(44100, 2, 16, 20) // of more channels than it has bytes for
	copy(wide[22:], "\xc2\xe7")
	return [][]byte{spoken(22050, 1, 16, 40), spoken(44100, 2, 16, 20), spoken(16000, 1, 8, 60), spoken(48000, 1, 24, 20), endless, wide}
}

// heard fails unless a file is refused, or gives sound that can be played.
func heard(t testing.TB, src []byte) {
	samples, err := decode(src)
	if err != nil {
		return
	}
	for _, x := range level(samples) {
		if math.IsNaN(float64(x)) || math.Abs(float64(x)) > 1 {
			t.Fatalf("a sample of %v", x)
		}
	}
}

// What speech programs write is read as beep's own reader reads it.
func TestDecodeReadsAsBeep(t *testing.T) {
	for i, src := range files()[:4] {
		s, format, err := wav.Decode(bytes.NewReader(src))
		if err != nil {
			t.Fatal(err)
		}
		want := mono(beep.Resample(4, format.SampleRate, sound.SampleRate, mixed{s}))
		got, err := decode(src)
		if err != nil || len(got) == 0 || len(got) < len(want)-1 || len(got) > len(want)+1 {
			t.Fatalf("file %d: %d samples, %v; want %d", i, len(got), err, len(want))
		}
		for n := range min(len(got), len(want)) {
			if math.Abs(float64(got[n]-want[n])) > 0.01 {
				t.Fatalf("file %d: sample %d is %v, want %v", i, n, got[n], want[n])
			}
		}
	}
}

// mixed is a streamer with both channels on the left one.
type mixed struct{ beep.Streamer }

func (m mixed) Stream(samples [][2]float64) (n int, ok bool) {
	n, ok = m.Streamer.Stream(samples)
	for i := range samples[:n] {
		samples[i][0] = (samples[i][0] + samples[i][1]) / 2
	}
	return n, ok
}

// FuzzDecode looks for a file of a speech program that breaks the player.
func FuzzDecode(f *testing.F) {
	for _, s := range files() {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, src []byte) { heard(t, src) })
}

// TestMutated is FuzzDecode with files that were changed a little.
func TestMutated(t *testing.T) {
	mutate.Run(t, 2000, files(), []string{"\x00", "\xff", "\x00\x00\x00\x00", "\xff\xff\xff\xff", "data", "LIST", "fmt ", "RIFF", "\x01\x00\x00\x00"}, heard)
}

func TestVoiceIn(t *testing.T) {
	const list = "Alex                en_US    # Most people recognize me by my voice.\nAnna (Enhanced)     de_DE    # Hallo!\n\n#\nEddy\n"
	for language, want := range map[string]string{"de": "Anna (Enhanced)", "en": "Alex", "fr": ""} {
		got := voiceIn(list, language)
		if want == "" && got != nil || want != "" && (len(got) != 2 || got[1] != want) {
			t.Errorf("%s: %q, want %q", language, got, want)
		}
	}
}
