package export

import (
	"bytes"
	"encoding/json"
	"io"
)

// jsonlSink writes JSON Lines: an object a row, its names in the order of the
// columns, null for what is missing.
type jsonlSink struct {
	w     io.Writer
	names [][]byte // each quoted, with its colon
	buf   bytes.Buffer
	enc   *json.Encoder
}

func newJSONL(w io.Writer, columns []Column) (sink, error) {
	s := &jsonlSink{w: w}
	s.enc = json.NewEncoder(&s.buf)
	s.enc.SetEscapeHTML(false)
	for _, c := range columns {
		s.names = append(s.names, []byte(`"`+c.Name+`":`))
	}
	return s, nil
}

func (s *jsonlSink) write(row any) error {
	s.buf.Reset()
	s.buf.WriteByte('{')
	for i, c := range cells(row) {
		if i > 0 {
			s.buf.WriteByte(',')
		}
		s.buf.Write(s.names[i])
		if err := s.enc.Encode(c); err != nil {
			return err
		}
		s.buf.Truncate(s.buf.Len() - 1) // the encoder's line end
	}
	s.buf.WriteString("}\n")
	_, err := s.w.Write(s.buf.Bytes())
	return err
}

func (s *jsonlSink) close() error { return nil }
