package track

import (
	"bufio"
	"encoding/binary"
	"fmt"
	"io"
	"math/bits"
	"time"

	"github.com/mewkiz/flac"
	"github.com/mewkiz/flac/frame"
	"github.com/mewkiz/flac/meta"

	"coldfloor/internal/plan"
	"coldfloor/sound"
)

// flacEncoder writes a FLAC file. Silent frames hold one constant; the others
// are predicted by the fixed polynomial that does it best, with a Rice
// parameter for every ricePart samples, since a frame is mostly part sound and
// part silence.
type flacEncoder struct {
	file *seekBuffer
	enc  *flac.Encoder
	head frame.Header
	zero [trackBlock]int32
	left [maxOrder + 1][trackBlock]int32 // what prediction of each order leaves over
}

// How sounding frames are coded: the highest order of a fixed polynomial in
// FLAC, and 2^riceOrder parts.
const (
	maxOrder  = 4
	riceOrder = 5
	ricePart  = trackBlock >> riceOrder
)

func newFLACEncoder(w io.WriteSeeker, length int, p *plan.Plan) (*flacEncoder, error) {
	f := &flacEncoder{file: &seekBuffer{bufio.NewWriterSize(w, 1<<16), w}}
	info := &meta.StreamInfo{BlockSizeMin: trackBlock, BlockSizeMax: trackBlock, SampleRate: uint32(sound.SampleRate),
		NChannels: 1, BitsPerSample: 16, NSamples: uint64(length)}
	f.head = frame.Header{HasFixedBlockSize: true, SampleRate: uint32(sound.SampleRate), Channels: frame.ChannelsMono, BitsPerSample: 16}
	// The cue sheet stands first: readers that know both take the chapters that
	// they meet last, and only the comments name them.
	var blocks []*meta.Block
	if sheet := cueSheet(p, length); sheet != nil {
		blocks = append(blocks, sheet)
	}
	blocks = append(blocks, tags(p))
	var err error
	f.enc, err = flac.NewEncoder(f.file, info, blocks...)
	if err != nil {
		return nil, err
	}
	f.enc.EnablePredictionAnalysis(false)
	return f, nil
}

func (f *flacEncoder) silence(n int) error {
	return f.frame(frame.SubHeader{Pred: frame.PredConstant}, f.zero[:n])
}

func (f *flacEncoder) write(samples []int32) error {
	if len(samples) < trackBlock { // the last: its parts would not be of one size
		return f.frame(frame.SubHeader{Pred: frame.PredVerbatim}, samples)
	}
	order := f.predict(samples)
	h := frame.SubHeader{Pred: frame.PredFixed, Order: order, ResidualCodingMethod: frame.ResidualCodingMethodRice1,
		RiceSubframe: &frame.RiceSubframe{PartOrder: riceOrder}}
	for i := 0; i < len(samples); i += ricePart {
		part := f.left[order][max(i, order) : i+ricePart]
		h.RiceSubframe.Partitions = append(h.RiceSubframe.Partitions, frame.RicePartition{Param: riceParam(part)})
	}
	return f.frame(h, samples)
}

// predict fills what prediction leaves over, and returns the order that leaves
// least. Each order leaves the differences of what the one below left.
func (f *flacEncoder) predict(samples []int32) (best int) {
	copy(f.left[0][:], samples)
	least := size(samples)
	for order := 1; order <= maxOrder; order++ {
		below, left := &f.left[order-1], &f.left[order]
		for i := order; i < len(samples); i++ {
			left[i] = below[i] - below[i-1]
		}
		if s := size(left[order:len(samples)]); s < least {
			best, least = order, s
		}
	}
	return best
}

// size returns the sum of the sizes of residuals.
func size(residuals []int32) (sum int) {
	for _, r := range residuals {
		sum += int(max(r, -r))
	}
	return sum
}

// riceParam returns the parameter that codes residuals shortly: the number of
// bits of their mean size, once folded to be positive.
func riceParam(residuals []int32) uint {
	mean := uint(2 * size(residuals) / len(residuals))
	return uint(min(14, max(0, bits.Len(mean)-1)))
}

// frame writes one frame.
func (f *flacEncoder) frame(h frame.SubHeader, samples []int32) error {
	f.head.BlockSize = uint16(len(samples))
	return f.enc.WriteFrame(&frame.Frame{Header: f.head,
		Subframes: []*frame.Subframe{{SubHeader: h, Samples: samples, NSamples: len(samples)}}})
}

// finish lets the encoder complete the stream's head, and puts right the least
// block size in it: RFC 9639 (section 8.2) leaves the last block out of that.
func (f *flacEncoder) finish() error {
	if err := f.enc.Close(); err != nil {
		return err
	}
	const leastBlockAt = 4 + 4 // after the signature and the block's own head
	if _, err := f.file.Seek(leastBlockAt, io.SeekStart); err != nil {
		return err
	}
	if err := binary.Write(f.file, binary.BigEndian, uint16(trackBlock)); err != nil {
		return err
	}
	return f.file.Flush()
}

// written marks a metadata block as not empty; the encoder works out its length.
const written = 1

// tags names the session and its blocks: a title, and for each block a chapter
// in the form of the Vorbis comment chapter extension.
func tags(p *plan.Plan) *meta.Block {
	c := &meta.VorbisComment{Vendor: "coldfloor", Tags: [][2]string{{"TITLE", p.Session.Title}}}
	for i, b := range p.Blocks {
		name := fmt.Sprintf("CHAPTER%03d", i+1)
		c.Tags = append(c.Tags, [2]string{name, chapterTime(b.Start)}, [2]string{name + "NAME", b.Title})
	}
	return &meta.Block{Header: meta.Header{Type: meta.TypeVorbisComment, Length: written}, Body: c}
}

// chapterTime returns t as HH:MM:SS.mmm.
func chapterTime(t time.Duration) string {
	t = t.Round(time.Millisecond)
	return fmt.Sprintf("%02d:%02d:%02d.%03d", t/time.Hour, t/time.Minute%60, t/time.Second%60, t/time.Millisecond%1000)
}

// maxCueTracks is how many tracks a cue sheet may number, the lead-out not
// counted.
const maxCueTracks = 254

// cueSheet makes each block of the session a track of a cue sheet; nil if
// there are more blocks than it can number.
func cueSheet(p *plan.Plan, length int) *meta.Block {
	if len(p.Blocks) > maxCueTracks {
		return nil
	}
	s := &meta.CueSheet{}
	for i, b := range p.Blocks {
		s.Tracks = append(s.Tracks, meta.CueSheetTrack{Offset: uint64(sound.Position(b.Start)), Num: uint8(i + 1), IsAudio: true,
			Indicies: []meta.CueSheetTrackIndex{{Num: 1}}})
	}
	s.Tracks = append(s.Tracks, meta.CueSheetTrack{Offset: uint64(length), Num: 255, IsAudio: true})
	return &meta.Block{Header: meta.Header{Type: meta.TypeCueSheet, Length: written}, Body: s}
}

// seekBuffer is a buffered writer that can still be sought in. It hides that
// the file below can be closed, for that is the caller's to do.
type seekBuffer struct {
	*bufio.Writer
	below io.WriteSeeker
}

// Seek implements io.Seeker.
func (b *seekBuffer) Seek(offset int64, whence int) (int64, error) {
	if err := b.Flush(); err != nil {
		return 0, err
	}
	return b.below.Seek(offset, whence)
}
