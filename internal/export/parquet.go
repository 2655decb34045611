package export

import (
	"bytes"
	"compress/gzip"
	"encoding/binary"
	"io"
	"reflect"
)

// rowGroup bounds the rows that are held in memory before they are written.
const rowGroup = 50_000

// parquetMagic begins and ends a Parquet file.
const parquetMagic = "PAR1"

// parquetSink writes a Parquet file (apache/parquet-format, README.md and
// parquet.thrift): each column of a row group one page in the encoding PLAIN,
// packed by gzip.
type parquetSink struct {
	w       io.Writer
	at      int64 // bytes written so far
	columns []*parquetColumn
	rows    int64 // of the group that is being filled
	all     int64 // of all groups
	groups  []parquetGroup
	zip     *gzip.Writer
}

// parquetGroup is a row group that is written.
type parquetGroup struct {
	rows   int64
	chunks []parquetChunk
}

// parquetChunk is where a column of a row group lies, and its sizes in bytes.
type parquetChunk struct{ at, plain, packed int64 }

// newParquet begins a file with the columns.
func newParquet(w io.Writer, columns []Column) (sink, error) {
	s := &parquetSink{w: w, zip: gzip.NewWriter(io.Discard)}
	for _, c := range columns {
		s.columns = append(s.columns, newParquetColumn(c))
	}
	return s, s.put([]byte(parquetMagic))
}

func (s *parquetSink) put(b []byte) error {
	n, err := s.w.Write(b)
	s.at += int64(n)
	return err
}

func (s *parquetSink) write(row any) error {
	v := reflect.ValueOf(row).Elem()
	for i, c := range s.columns {
		c.add(v.Field(i))
	}
	if s.rows++; s.rows == rowGroup {
		return s.flush()
	}
	return nil
}

// flush writes the rows held as a row group.
func (s *parquetSink) flush() error {
	group := parquetGroup{rows: s.rows}
	for _, c := range s.columns {
		chunk, err := s.chunk(c.page())
		if err != nil {
			return err
		}
		group.chunks = append(group.chunks, chunk)
		c.reset()
	}
	s.groups = append(s.groups, group)
	s.all += s.rows
	s.rows = 0
	return nil
}

// chunk writes the page that a column of a row group is.
func (s *parquetSink) chunk(page []byte) (parquetChunk, error) {
	var packed bytes.Buffer
	s.zip.Reset(&packed)
	s.zip.Write(page) // a buffer takes everything
	s.zip.Close()
	var t thrift
	t.begin()
	t.i32(1, 0) // a data page
	t.i32(2, int64(len(page)))
	t.i32(3, int64(packed.Len()))
	t.structure(5)
	t.i32(1, s.rows)
	t.i32(2, 0) // PLAIN
	t.i32(3, 3) // RLE, for which values are known
	t.i32(4, 3) // RLE, for repetition, of which there is none
	t.end()
	t.end()
	head := int64(len(t.buf))
	chunk := parquetChunk{s.at, head + int64(len(page)), head + int64(packed.Len())}
	if err := s.put(t.buf); err != nil {
		return chunk, err
	}
	return chunk, s.put(packed.Bytes())
}

// close writes the last rows and the footer.
func (s *parquetSink) close() error {
	if s.rows > 0 {
		if err := s.flush(); err != nil {
			return err
		}
	}
	footer := s.footer()
	end := binary.LittleEndian.AppendUint32(footer, uint32(len(footer)))
	return s.put(append(end, parquetMagic...))
}
