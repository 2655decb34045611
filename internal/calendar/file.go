package calendar

import (
	"bytes"
	"errors"

	"coldfloor/internal/ownfile"
	"coldfloor/internal/plan"
)

// kind is a calendar that this program wrote.
var kind = ownfile.Kind{Mode: 0o644, Foreign: errors.New("is not a calendar written by coldfloor"), Marks: []string{"PRODID:-//coldfloor//"}}

// WriteFile writes the calendar to a file, whole or not at all. A calendar of
// ours that is there is replaced, another file only with force.
func WriteFile(file string, p *plan.Weeks, o Options, force bool) error {
	if err := kind.Replaceable(file, force); err != nil {
		return err
	}
	var b bytes.Buffer
	if err := Write(&b, p, o); err != nil {
		return err
	}
	return kind.Write(file, b.Bytes())
}
