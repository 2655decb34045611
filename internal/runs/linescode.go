package runs

import "coldfloor/internal/journal"

// lines codes lines of one run, which are left as they are.
func (c *codec) lines(all []journal.Entry) []byte {
	var text []byte
	for i := range all {
		c.Buf, c.Reading = c.Buf[:0], false
		c.line(&all[i].Line)
		text = appendBytes(text, c.Buf)
	}
	return text
}

// runOf makes the run of coded lines.
func (c *codec) runOf(run string, text []byte) (*journal.Run, error) {
	lines, err := (&block{run: run, data: text}).lines(c)
	if err != nil {
		return nil, err
	}
	return journal.Build(lines), nil
}
