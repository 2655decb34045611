package journal

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"time"

	"coldfloor/internal/compact"
	"coldfloor/internal/wholefile"
)

// keptHead begins a kept index: what it is, and the version of what is in it,
// which goes up whenever a run is folded in another way. The stamp of the
// journal follows, the sums, the front, and the runs.
const keptHead = "coldfloor index 8\n"

// sumsLength is the length of what stands before the front: the CRC-32C of the
// journal and of the front, and the front's length.
const sumsLength = 3 * 4

// keptPath returns where the index of the journal at path is kept.
func keptPath(path string) string {
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".index")
}

// kept returns the index that is kept of a journal, or an empty one unless the
// journal still begins with all that the index is of: its file has not been
// written to since that was last seen, or else it has the same checksum.
func kept(path string, r io.ReaderAt, info os.FileInfo) *index {
	f, err := os.Open(keptPath(path))
	if err != nil {
		return &index{}
	}
	x, had, sum, err := readKept(f)
	if err != nil || x.length > info.Size() || !unchanged(path, r, info, x.length, had, sum) {
		f.Close()
		return &index{}
	}
	length := x.length
	x.shelf.file, x.shelf.journal = f, func() ([]*Run, error) {
		f.Close()                     // Windows removes no file that is open
		_ = os.Remove(keptPath(path)) // it is damaged: the next reader makes it anew
		return runsOf(path, length)
	}
	return x
}

// readKept reads an index but for its runs, the stamp that its journal had, and
// the journal's checksum.
func readKept(f *os.File) (x *index, had []byte, sum uint32, err error) {
	info, err := f.Stat()
	if err != nil {
		return nil, nil, 0, err
	}
	head := make([]byte, len(keptHead)+stampLength+sumsLength)
	if _, err := f.ReadAt(head, 0); err != nil || string(head[:len(keptHead)]) != keptHead {
		return nil, nil, 0, errors.Join(err, compact.ErrShort)
	}
	had, sums := head[len(keptHead):len(keptHead)+stampLength], head[len(keptHead)+stampLength:]
	at, u32 := int64(len(head)), binary.LittleEndian.Uint32
	if int64(u32(sums[8:])) > info.Size()-at {
		return nil, nil, 0, compact.ErrShort
	}
	front := make([]byte, u32(sums[8:]))
	if _, err := f.ReadAt(front, at); err != nil && err != io.EOF || crc32.Checksum(front, castagnoli) != u32(sums[4:]) {
		return nil, nil, 0, errors.Join(err, compact.ErrShort)
	}
	at += int64(len(front))
	x, err = openIndex(front, io.NewSectionReader(f, at, info.Size()-at))
	return x, had, u32(sums), err
}

// openIndex decodes an index's front; its runs are decoded when asked for.
func openIndex(front []byte, runs *io.SectionReader) (*index, error) {
	k, x := keeper{}, &index{}
	k.Reading, k.Buf = true, front
	k.int64(&x.length)
	if k.index(x); k.Err != nil || x.length < 0 {
		return nil, compact.ErrShort
	}
	x.shelf.coded = runs
	return x, nil
}

// unchanged reports whether a journal begins with what an index is of, by the stamp
// that it had or by its checksum.
func unchanged(path string, r io.ReaderAt, info os.FileInfo, length int64, had []byte, sum uint32) bool {
	now := stampOf(info)
	if string(had) == string(now.bytes()) {
		return true
	}
	is, err := checksum(r, length)
	if err != nil || is != sum {
		return false
	}
	if now.settled(time.Now()) {
		keepStamp(keptPath(path), now)
	}
	return true
}

// runsOf reads the lean runs of the first bytes of a journal.
func runsOf(path string, length int64) ([]*Run, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	x, err := indexOf(f, extent{size: length})
	if err != nil {
		return nil, err
	}
	return x.runs, nil
}

// keep keeps x beside its journal, and returns it with every run decoded. If it
// cannot be kept, nothing is lost.
func (x *index) keep(path string, r io.ReaderAt, info os.FileInfo) *index {
	all := x.all()
	x.shelf.close() // where an open file cannot be replaced
	sum, err := checksum(r, all.length)
	if err != nil {
		return all
	}
	k := keeper{number: map[*Started]int{}}
	k.int64(&all.length)
	runs := k.index(all)
	if !readable(k, runs) {
		return all
	}
	now := stampOf(info)
	if !now.settled(time.Now()) {
		now = stamp{}
	}
	text := append([]byte(keptHead), now.bytes()...)
	for _, v := range []uint32{sum, crc32.Checksum(k.Buf, castagnoli), uint32(len(k.Buf))} {
		text = binary.LittleEndian.AppendUint32(text, v)
	}
	text = append(append(text, k.Buf...), runs...)
	_ = wholefile.Write(keptPath(path), text, wholefile.Options{Mode: 0o600, Force: true})
	return all
}

// readable reports whether all that was coded can be decoded.
func readable(front keeper, runs []byte) bool {
	x, err := openIndex(front.Buf, io.NewSectionReader(bytes.NewReader(runs), 0, int64(len(runs))))
	if err != nil || front.Err != nil {
		return false
	}
	_, err = x.shelf.decode()
	return err == nil
}

// checksum returns the CRC-32C of the first bytes of a file: that of as many
// stretches of them as there are processors, one after the other.
func checksum(r io.ReaderAt, length int64) (uint32, error) {
	n := int64(runtime.GOMAXPROCS(0))
	const part = 4 << 20
	count := (length + part - 1) / part
	sums := make([]byte, 4*count)
	errs := make([]error, n)
	var all sync.WaitGroup
	for worker := range n {
		all.Go(func() {
			buf := make([]byte, 256<<10)
			for i := worker; i < count && errs[worker] == nil; i += n {
				sum := uint32(0)
				for at := i * part; at < min((i+1)*part, length); {
					n, err := r.ReadAt(buf[:min(int64(len(buf)), min((i+1)*part, length)-at)], at)
					sum = crc32.Update(sum, castagnoli, buf[:n])
					if at += int64(n); err != nil {
						errs[worker] = err
						return
					}
				}
				binary.LittleEndian.PutUint32(sums[4*i:], sum)
			}
		})
	}
	all.Wait()
	return crc32.Checksum(sums, castagnoli), errors.Join(errs...)
}
