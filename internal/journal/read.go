package journal

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
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
	Number int    // of the line in its file, from 1
	Text   []byte // the record as it stands; valid until the next one is read

	at, size int64 // of the line in what is read, with its line feed
}

// Damage is what is wrong with a line. It stays in the file.
type Damage struct {
	Number  int   // of the line in its file, from 1
	Err     error // reads on from "line 7"
	Unknown bool  // not damaged, but of a newer version
	Whole   bool  // all the same every record in it was read
}

// Error names the line and says what is wrong with it, and whether it is read.
func (d *Damage) Error() string {
	if d.Whole {
		return fmt.Sprintf("line %d %v", d.Number, d.Err)
	}
	return fmt.Sprintf("line %d %v; it is kept, but not read", d.Number, d.Err)
}

// Unwrap returns why the line counts for nothing.
func (d *Damage) Unwrap() error { return d.Err }

// Read reads a journal line by line, in memory that does not grow with it. A
// line that cannot be used gives a *Damage and the reading goes on; any other
// error is the last thing given.
func Read(r io.Reader) iter.Seq2[Entry, error] {
	return func(yield func(Entry, error) bool) { readFrom(r, Entry{}, &scanner{}, yield) }
}

// Pass is Read for who keeps nothing of a line: its Set or its Rest is valid
// until the next one is read.
func Pass(r io.Reader) iter.Seq2[Entry, error] {
	return func(yield func(Entry, error) bool) {
		scan := scanner{arena: &arena{}}
		readFrom(r, Entry{}, &scan, func(e Entry, err error) bool {
			defer scan.arena.clear()
			return yield(e, err)
		})
	}
}

// readFrom is Read of a part of a journal: from is the line before it. It
// returns where the line after the last one is to stand.
func readFrom(r io.Reader, from Entry, scan *scanner, yield func(Entry, error) bool) (end Entry) {
	lines := lineReader{r: bufio.NewReaderSize(r, 64<<10)}
	end = Entry{Number: from.Number, at: from.at + from.size}
	for {
		text, err := lines.next()
		if err == io.EOF {
			return end
		}
		e := Entry{Number: end.Number + 1, at: end.at, size: lines.size}
		end.Number, end.at = e.Number, end.at+e.size
		switch {
		case err != nil && err != errTooLong:
			yield(Entry{}, err)
			return end
		case err != nil:
			if !yield(Entry{}, &Damage{Number: e.Number, Err: err}) {
				return end
			}
			continue
		}
		if e.Number == 1 {
			text = bytes.TrimPrefix(text, []byte("\ufeff")) // an editor's byte order mark
		}
		if text = bytes.TrimSpace(text); len(text) > 0 && !scan.read(text, e, yield) {
			return end
		}
	}
}

// read yields what a line holds: a record, what is wrong with it, or, if a line
// feed was lost, several of both.
func (s *scanner) read(text []byte, place Entry, yield func(Entry, error) bool) bool {
	e := &s.entry
	*e = place
	e.Text = text
	unknown, err := s.decode(text, &e.Line)
	if err == nil {
		return yield(*e, nil)
	}
	whole, found := true, 0
	for part := range records(text) {
		*e = place
		e.Text = part
		if _, partErr := s.decode(part, &e.Line); partErr != nil {
			whole = false
			continue
		}
		if found++; !yield(*e, nil) {
			return false
		}
	}
	switch {
	case found == 0:
		return yield(Entry{}, &Damage{Number: place.Number, Err: err, Unknown: unknown})
	case whole:
		err = fmt.Errorf("has lost the line feed at its end; the records in it, %d, are read", found)
	default:
		err = fmt.Errorf("is damaged: besides what can be read of it, records: %d, it holds something else", found)
	}
	return yield(Entry{}, &Damage{Number: place.Number, Err: err, Whole: whole})
}

// recordHead is how every record of this program begins. It cannot stand
// inside a string, whose quotes are escaped.
const recordHead = `{"v":`

// records cuts a line at the beginnings of its records, and takes off what
// follows a whole one.
func records(text []byte) iter.Seq[[]byte] {
	return func(yield func([]byte) bool) {
		for len(text) > 0 {
			part := text
			if at := bytes.Index(text[1:], []byte(recordHead)); at >= 0 {
				part = text[:at+1]
			}
			text = text[len(part):]
			if !yield(withoutTail(part)) {
				return
			}
		}
	}
}

// withoutTail returns the whole record that part begins with, or part if it
// begins with none. Only so much is taken off as a lost line feed can have
// become.
func withoutTail(part []byte) []byte {
	const tail = 8
	for at := 0; ; at += len(sealKey) {
		next := bytes.Index(part[at:], []byte(sealKey))
		if next < 0 {
			break
		}
		at += next
		if end := at + sealLength; end <= len(part) {
			if _, fits := sealed(part[:end]); fits {
				return part[:end]
			}
		}
	}
	dec := json.NewDecoder(bytes.NewReader(part))
	var record json.RawMessage
	if dec.Decode(&record) == nil && len(part)-int(dec.InputOffset()) <= tail {
		return record
	}
	return part
}

// decode reads one record's text. What a newer version wrote is unknown, which
// is an error too.
func (s *scanner) decode(text []byte, l *Line) (unknown bool, err error) {
	switch has, fits := sealed(text); {
	case has && !fits:
		return false, errSeal
	case !has && bytes.Contains(text, []byte(sealKey[1:])): // which no text can hold, whose quotes are escaped
		return false, errSeal
	}
	if !utf8.Valid(text) {
		return false, errors.New("is damaged: it is not valid UTF-8")
	}
	if s.line(text, l) {
		return l.check()
	}
	*l = Line{}
	if err := json.Unmarshal(text, l); err != nil {
		// A newer version may have given a known name to another type.
		var head struct{ V int }
		if json.Unmarshal(text, &head) == nil && head.V > Version {
			return true, tooNew(head.V)
		}
		if kind := (*json.UnmarshalTypeError)(nil); errors.As(err, &kind) {
			return false, errors.New("is damaged: it has a value of the wrong kind")
		}
		return false, errors.New("is damaged: it is cut off, or is not JSON")
	}
	return l.check()
}

func tooNew(v int) error {
	return fmt.Errorf("is of version %d, this program reads up to %d", v, Version)
}

var errTooLong = fmt.Errorf("is damaged: it is longer than %d MiB", maxLine>>20)

// lineReader splits a reader into lines, and bounds their length.
type lineReader struct {
	r    *bufio.Reader
	size int64 // of the last line, with its line feed
	long []byte
}

// next returns the next line without its end, valid until the following call.
// A line too long is passed over with errTooLong; io.EOF comes alone.
func (l *lineReader) next() ([]byte, error) {
	text, err := l.r.ReadSlice('\n')
	l.size = int64(len(text))
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
		l.size += int64(len(text))
		if len(l.long) <= maxLine {
			l.long = append(l.long, text...)
		}
	}
	if len(l.long) > maxLine && (err == nil || err == io.EOF) {
		return nil, errTooLong
	}
	return l.long, err
}
