package handout

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
)

// A track is marked with what it was made of, so that a second handout finds out
// without making it again whether it would be the same. The mark stands in a
// metadata block of its own, kind APPLICATION (RFC 9639, section 8.4), which
// players pass over: our sign, the print of what the track was made of, and the
// checksum of all the rest of the file, so that a file that was changed since is
// not trusted.
const (
	flacSign    = "fLaC"
	markSign    = "clfl"
	application = 2
	lastBlock   = 0x80 // bit of the last metadata block
	headLength  = 4    // of a metadata block
	markLength  = len(markSign) + 2*sha256.Size
)

// print stands for what a track is made of.
type print [sha256.Size]byte

// marked returns a FLAC file with a mark after its first metadata block, which is
// the stream's own and never the last.
func marked(file []byte, p print) []byte {
	at, ok := afterFirst(file)
	if !ok {
		return file
	}
	sum := sha256.Sum256(file)
	block := binary.BigEndian.AppendUint32(nil, application<<24|uint32(markLength))
	block = append(append(append(block, markSign...), p[:]...), sum[:]...)
	return bytes.Join([][]byte{file[:at], block, file[at:]}, nil)
}

// markOf returns the print that a FLAC file is marked with, and false if it has
// none or was changed since.
func markOf(file []byte) (p print, ok bool) {
	at, ok := afterFirst(file)
	if !ok || len(file) < at+headLength+markLength {
		return p, false
	}
	block := file[at : at+headLength+markLength]
	if binary.BigEndian.Uint32(block) != application<<24|uint32(markLength) || !bytes.HasPrefix(block[headLength:], []byte(markSign)) {
		return p, false
	}
	said := block[headLength+len(markSign):]
	sum := sha256.New()
	sum.Write(file[:at])
	sum.Write(file[at+len(block):])
	copy(p[:], said)
	return p, bytes.Equal(sum.Sum(nil), said[sha256.Size:])
}

// afterFirst returns where the first metadata block of a FLAC file ends, and
// false if another does not follow it.
func afterFirst(file []byte) (at int, ok bool) {
	if len(file) < len(flacSign)+headLength || string(file[:len(flacSign)]) != flacSign {
		return 0, false
	}
	head := binary.BigEndian.Uint32(file[len(flacSign):])
	at = len(flacSign) + headLength + int(head&0xffffff)
	return at, head>>24&lastBlock == 0 && at <= len(file)
}
