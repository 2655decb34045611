package export

import (
	"bufio"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// csvSink writes CSV as RFC 4180 has it, in UTF-8, with a header. The standard
// library's writer would turn a line end inside a cell into another one.
type csvSink struct {
	w    *bufio.Writer
	free []bool // columns whose text is guarded
}

// newCSV writes the header.
func newCSV(w io.Writer, columns []Column, raw bool) (sink, error) {
	s := &csvSink{w: bufio.NewWriter(w)}
	names := make([]string, len(columns))
	for i, c := range columns {
		names[i] = c.Name
		s.free = append(s.free, c.Free && !raw)
	}
	return s, s.record(names)
}

func (s *csvSink) write(row any) error {
	all := cells(row)
	fields := make([]string, len(all))
	for i, c := range all {
		fields[i] = cellText(c)
		if s.free[i] {
			fields[i] = Guard(fields[i])
		}
	}
	return s.record(fields)
}

// record writes one line. Cells are quoted if they need it.
func (s *csvSink) record(fields []string) error {
	for i, f := range fields {
		if i > 0 {
			s.w.WriteByte(',')
		}
		if strings.ContainsAny(f, "\",\r\n") {
			f = `"` + strings.ReplaceAll(f, `"`, `""`) + `"`
		}
		s.w.WriteString(f)
	}
	_, err := s.w.WriteString("\r\n")
	return err
}

func (s *csvSink) close() error { return s.w.Flush() }

// Guard keeps a spreadsheet from running text as a formula: one that begins
// with = + - or @ or with a control character, after any spaces, gets an
// apostrophe in front, and so does one that begins with an apostrophe. Taking
// one apostrophe off the front of a cell gives every text back as it was.
func Guard(text string) string {
	if text == "" {
		return text
	}
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(text, " "))
	inner, _ := utf8.DecodeRuneInString(strings.TrimLeftFunc(text, unicode.IsSpace))
	// The last four are the wide forms that some spreadsheets read alike.
	if text[0] == '\'' || unicode.IsControl(first) || strings.ContainsRune("=+-@＝＋－＠", inner) {
		return "'" + text
	}
	return text
}
