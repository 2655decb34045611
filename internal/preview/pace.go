package preview

import (
	"strings"

	"coldfloor/internal/pace"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
)

// WithPace returns the preview of a plan with the length at the player's own
// pace; a plan without reps has none.
func WithPace(p *plan.Plan, own pace.Estimate) Document {
	d := Of(p)
	if own.Line() != "" {
		o := own.Document()
		d.YourPace = &o
	}
	return d
}

// ownLength says how long the session takes at the player's own pace, on lines
// no wider than the strip, or that there is too little to tell.
func ownLength(own *pace.Estimate) string {
	if own == nil || own.Line() == "" {
		return ""
	}
	return strings.Join(safetext.Wrap(own.Line(), stripWidth, 20), "\n") + "\n"
}
