package next

import (
	"path/filepath"

	"coldfloor/internal/fault"
	"coldfloor/internal/wholefile"
	"coldfloor/sessions/weeks"
)

// Plan returns the text of the player's whole plan with a proposal of Of in it:
// same title and first day, the player's own days away, every comment kept,
// changed only from the week proposed on.
func (p Proposal) Plan() ([]byte, error) {
	text, err := p.plan.Amended(p.Amendment(p.plan))
	if err != nil {
		return nil, fault.New("change the plan by hand; without -o the proposal is shown", "the plan would not be valid with the proposal in it: %w", err)
	}
	return text, nil
}

// WritePlan writes the Plan of a proposal to a file. One that names files beside
// it can only be written beside them.
func WritePlan(path string, p Proposal, o wholefile.Options) error {
	if err := beside(path, p.plan); err != nil {
		return err
	}
	text, err := p.Plan()
	if err != nil {
		return err
	}
	return wholefile.Write(path, text, o)
}

// beside refuses a folder from which the plan's own files are not found.
func beside(path string, plan *weeks.Plan) error {
	here, err := filepath.Abs(filepath.Dir(plan.Name))
	if err != nil {
		return err
	}
	there, err := filepath.Abs(filepath.Dir(path))
	if err != nil || here == there || len(plan.Files()) < 2 {
		return err
	}
	return fault.New("write it beside the plan, such as "+filepath.Join(filepath.Dir(plan.Name), filepath.Base(path)),
		"%s names session files that are not found from %s", plan.Name, filepath.Dir(path))
}
