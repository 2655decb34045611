package next

import (
	"fmt"
	"io"

	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
)

// Caution stands under every list of proposals.
const Caution = `Proposals, from what was logged. They predict no injury and change nothing: the
plan is the coach's, and pain is for a licensed practitioner to judge.`

// Text writes proposals for people, the gravest reasons of each player first.
func Text(w io.Writer, plan *weeks.Plan, proposals []Proposal) error {
	for i, p := range proposals {
		if i > 0 {
			fmt.Fprintln(w)
		}
		first := plan.Starts + units.Date(7*(p.Week-1))
		head := fmt.Sprintf("%s, week %d of %d (%s to %s): %s", safetext.Clean(p.Player), p.Week, plan.Count,
			first.Short(), (first + 6).Short(), p.Kind)
		if keep, ok := plan.IsLighter(p.Week); ok {
			head += fmt.Sprintf(" (a lighter week in the plan already, which keeps %s)", keep)
		} else if plan.IsHold(p.Week) {
			head += " (a week on hold in the plan already)"
		}
		fmt.Fprintln(w, head)
		if len(p.Keep) > 0 {
			fmt.Fprintf(w, "  keep         %s\n", keepWords(plan, p))
		}
		for i, r := range p.Reasons {
			fmt.Fprintf(w, "  %-12s %s\n", r.For, safetext.Clean(r.Text))
			if n := i + 1; n < len(p.Reasons) && p.Reasons[n].Rule == r.Rule {
				continue // the source of both is said once
			}
			fmt.Fprintf(w, "  %-12s [%s: %s]\n", "", r.Rule, r.Source)
		}
		if p.Days != nil {
			fmt.Fprintf(w, "  %-12s %s\n", "days", p.Days.Why)
			for _, m := range p.Days.Moves {
				fmt.Fprintf(w, "  %-12s %s is better done on %s\n", "", m.From.Short(), m.To.Short())
			}
		}
	}
	_, err := fmt.Fprintf(w, "\n%s\n", Caution)
	return err
}

// keepWords says how much is kept of what, in which week.
func keepWords(plan *weeks.Plan, p Proposal) string {
	text := ""
	for i, k := range p.Keep {
		if p.Week+i > plan.Count {
			break
		}
		if i == 0 {
			text += fmt.Sprintf("%d %% of the work in the main blocks in week %d", k, p.Week)
			continue
		}
		text += fmt.Sprintf(", %d %% in week %d", k, p.Week+i)
	}
	return text
}
