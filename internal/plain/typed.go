package plain

import (
	"context"
	"io"
)

// typed gives what is typed line by line as a reader does.
type typed struct {
	ctx   context.Context
	lines <-chan string
	rest  string
}

// reader returns what is typed from now on. It ends with the keyboard or ctx.
func (s *session) reader(ctx context.Context) io.Reader { return &typed{ctx: ctx, lines: s.lines} }

// Read implements io.Reader.
func (t *typed) Read(b []byte) (int, error) {
	if t.rest == "" {
		select {
		case text, ok := <-t.lines:
			if !ok {
				return 0, io.EOF
			}
			t.rest = text + "\n"
		case <-t.ctx.Done():
			return 0, io.EOF
		}
	}
	n := copy(b, t.rest)
	t.rest = t.rest[n:]
	return n, nil
}
