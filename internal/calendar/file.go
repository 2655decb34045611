package calendar

import (
	"bytes"

	"coldfloor/internal/plan"
	"coldfloor/internal/wholefile"
)

// kind is a calendar that this program wrote.
var kind = &wholefile.Kind{Name: "a calendar", Marks: []string{"PRODID:-//coldfloor//"}}

// WriteFile writes the calendar to a file, whole or not at all. A calendar of
// ours that is there is replaced, another file only with force, and a file of
// the plan never.
func WriteFile(file string, p *plan.Weeks, o Options, force bool) error {
	to := wholefile.Options{Mode: 0o644, Force: force, Inputs: p.Files(), Ours: kind}
	if err := wholefile.Check(file, to); err != nil {
		return err
	}
	var b bytes.Buffer
	if err := Write(&b, p, o); err != nil {
		return err
	}
	return wholefile.Write(file, b.Bytes(), to)
}
