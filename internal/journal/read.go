package journal

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"hash/maphash"
	"io"
	"iter"
	"unicode/utf8"
)

// maxLine bounds a line's length in bytes, well above the longest that holds
// a session file of the size that is read.
const maxLine = 8 << 20

// Entry is a line as it stands in a file.
type Entry struct {
	Line
	Number int // of the line in its file, from 1

	sum uint64 // of its text
}

// Damage is a line that counts for nothing, and why. It stays in the file.
type Damage struct {
	Number  int   // of the line in its file, from 1
	Err     error // reads on from "line 7"
	Unknown bool  // not damaged, but of a newer version
}

func (d *Damage) Error() string {
	return fmt.Sprintf("line %d %v; it is kept, and left out", d.Number, d.Err)
}

// Unwrap returns why the line counts for nothing.
func (d *Damage) Unwrap() error { return d.Err }

// seed makes the sums of one process comparable.
var seed = maphash.MakeSeed()

// Read reads a journal line by line, in memory that does not grow with it. A
// line that cannot be used gives a *Damage and the reading goes on; any other
// error is the last thing given.
func Read(r io.Reader) iter.Seq2[Entry, error] {
	return func(yield func(Entry, error) bool) {
		lines := lineReader{r: bufio.NewReaderSize(r, 64<<10)}
		for {
			text, err := lines.next()
			switch {
			case err == io.EOF:
				return
			case err != nil && err != errTooLong:
				yield(Entry{}, err)
				return
			case err == nil && len(bytes.TrimSpace(text)) == 0:
				continue
			}
			if lines.number == 1 {
				text = bytes.TrimPrefix(text, []byte("\ufeff")) // an editor's byte order mark
			}
			e := Entry{Number: lines.number}
			unknown := false
			if err == nil {
				e.sum = maphash.Bytes(seed, text)
				unknown, err = decode(text, &e.Line)
			}
			if err != nil {
				e, err = Entry{}, &Damage{Number: lines.number, Err: err, Unknown: unknown}
			}
			if !yield(e, err) {
				return
			}
		}
	}
}

// decode reads one line's text. What a newer version wrote is unknown, which
// is an error too.
func decode(text []byte, l *Line) (unknown bool, err error) {
	if !utf8.Valid(text) {
		return false, errors.New("is damaged: it is not valid UTF-8")
	}
	if err := json.Unmarshal(text, l); err != nil {
		// A newer version may have given a known name to another type.
		var head struct{ V int }
		if json.Unmarshal(text, &head) == nil && head.V > Version {
			return true, tooNew(head.V)
		}
		return false, fmt.Errorf("is damaged: %w", err)
	}
	return l.check()
}

func tooNew(v int) error {
	return fmt.Errorf("is of version %d, this program reads up to %d", v, Version)
}

var errTooLong = fmt.Errorf("is damaged: it is longer than %d MiB", maxLine>>20)

// lineReader splits a reader into lines, and bounds their length.
type lineReader struct {
	r      *bufio.Reader
	number int // of the last line, from 1
	long   []byte
}

// next returns the next line without its end, valid until the following call.
// A line too long is passed over with errTooLong; io.EOF comes alone.
func (l *lineReader) next() ([]byte, error) {
	l.number++
	text, err := l.r.ReadSlice('\n')
	if err == bufio.ErrBufferFull {
		text, err = l.gather(text)
	}
	if err == io.EOF && len(text) > 0 {
		err = nil // a last line that was not ended
	}
	return bytes.TrimSuffix(text, []byte("\n")), err
}

// gather reads on with a line that is longer than the buffer.
func (l *lineReader) gather(text []byte) ([]byte, error) {
	l.long = append(l.long[:0], text...)
	err := bufio.ErrBufferFull
	for err == bufio.ErrBufferFull {
		text, err = l.r.ReadSlice('\n')
		if len(l.long) <= maxLine {
			l.long = append(l.long, text...)
		}
	}
	if len(l.long) > maxLine && (err == nil || err == io.EOF) {
		return nil, errTooLong
	}
	return l.long, err
}
