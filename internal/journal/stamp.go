package journal

import (
	"encoding/binary"
	"hash/crc32"
	"os"
	"time"
)

// stamp is what the system says of a journal's file: a file that has the same
// stamp has not been written to since.
type stamp struct{ size, modified, changed, node uint64 }

// Stamp returns what the system says of a file, in StampLength bytes: as long as
// that is the same, nobody has written to the file. It is all zero if the system
// cannot say, or if a write at the time now might not change it.
func Stamp(info os.FileInfo, now time.Time) []byte {
	s := stampOf(info)
	if s.changed == 0 || !s.settled(now) || !settledAt(s.changed, now) {
		return make([]byte, StampLength)
	}
	return s.bytes()
}

// StampLength is the length of a Stamp.
const StampLength = stampLength

// stampLength is the length of a stamp as it is kept, with its own CRC-32C.
const stampLength = 4*8 + 4

// stampOf returns the stamp of a file.
func stampOf(info os.FileInfo) stamp {
	s := stamp{size: uint64(info.Size()), modified: uint64(info.ModTime().UnixNano())}
	s.changed, s.node = identity(info)
	return s
}

// bytes returns the stamp as it is kept.
func (s stamp) bytes() []byte {
	var b []byte
	for _, v := range []uint64{s.size, s.modified, s.changed, s.node} {
		b = binary.LittleEndian.AppendUint64(b, v)
	}
	return binary.LittleEndian.AppendUint32(b, crc32.Checksum(b, castagnoli))
}

// settled reports whether a write to the file at this moment would give it
// another stamp: its last one is longer ago than the system's clock for files
// is coarse, which is some milliseconds, or two seconds if it knows no parts
// of a second.
func (s stamp) settled(now time.Time) bool { return settledAt(s.modified, now) }

func settledAt(at uint64, now time.Time) bool {
	coarse := 50 * time.Millisecond
	if at%uint64(time.Second) == 0 {
		coarse = 2 * time.Second
	}
	return now.Sub(time.Unix(0, int64(at))) > coarse
}

// keepStamp puts a stamp into the index that is kept at path, in its place.
func keepStamp(path string, s stamp) {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return
	}
	defer f.Close()
	_, _ = f.WriteAt(s.bytes(), int64(len(keptHead))) // one torn fits nothing
}

// appended carries the stamp of a journal over an append of this process: what
// stood before it is as it was.
func appended(path string, before, after os.FileInfo) {
	kept := keptPath(path)
	f, err := os.Open(kept)
	if err != nil {
		return
	}
	defer f.Close()
	had := make([]byte, stampLength)
	if _, err := f.ReadAt(had, int64(len(keptHead))); err == nil && string(had) == string(stampOf(before).bytes()) {
		keepStamp(kept, stampOf(after))
	}
}
