package preview

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"coldfloor/internal/journal"
	"coldfloor/internal/jumps"
	"coldfloor/internal/pace"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/strip"
	"coldfloor/internal/texttable"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// stripWidth is the width of the strip in cells: as wide as the table below
// it, near enough, and within an 80-column terminal.
const stripWidth = 76

// Text writes the preview of one session: its length and the parts of it, the
// strip, then block by block. The strip is drawn in characters that are shown.
// Own, if any, is the length at the player's own pace.
func Text(w io.Writer, p *plan.Plan, own *pace.Estimate, shown safetext.Repertoire) error {
	s := p.Session
	var b strings.Builder
	fmt.Fprintln(&b, safetext.Clean(s.Title))
	if about := join(", ", safetext.Clean(s.For), string(s.Level)); about != "" {
		fmt.Fprintln(&b, about)
	}
	fmt.Fprintf(&b, "\n%s long: %s work, %s rest, %s transitions\n",
		units.Clock(p.Total), units.Clock(p.Work), units.Clock(p.Rest), units.Clock(p.Change))
	b.WriteString(ownLength(own))
	fmt.Fprintf(&b, "%s, %s, %s\n\n", units.Count(p.Totals.Sets, "set"), units.Count(p.Totals.Reps, "rep"), contacts(p))
	b.WriteString(stripText(p, shown))
	b.WriteString(blockTable(p).String())
	b.WriteString(assumed(s))
	_, err := io.WriteString(w, b.String())
	return err
}

// assumed says what the lengths take for granted of a tempo with an X in it.
func assumed(s *sessions.Session) string {
	names := s.FastRisings()
	if len(names) == 0 {
		return ""
	}
	return fmt.Sprintf("\nX in a tempo is as fast as possible, and counted as %s: %s\n", units.Sentence(sessions.FastRising), safetext.Clean(strings.Join(names, ", ")))
}

// contacts writes how many foot contacts the session has, "at least" if there
// are jumps among its exercises whose contacts are not counted.
func contacts(p *plan.Plan) string {
	return contactsText(p.Contacts, jumps.AllCounted(p.Session.Blocks...))
}

// contactsText writes n foot contacts, counted if there are no jumps beside them
// that are not.
func contactsText(n int, counted bool) string {
	text := units.Count(n, "foot contact")
	switch {
	case counted:
		return text
	case n == 0:
		return "foot contacts not counted"
	}
	return "at least " + text
}

// contactsCell writes foot contacts in a table's cell: 20, ≥ 20 if there are
// jumps beside them that are not counted, or a dash if none is.
func contactsCell(n int, counted bool) string {
	return journal.Count{N: n, Known: counted}.Cell()
}

// stripText draws the session's strip, the numbers of its blocks below it, and
// what its characters stand for.
func stripText(p *plan.Plan, shown safetext.Repertoire) string {
	st := strip.Of(p, stripWidth)
	var key []string
	for _, k := range []struct {
		kind plan.Kind
		word string
	}{{plan.Work, "work"}, {plan.Rest, "rest"}, {plan.Switch, "switch sides"}, {plan.Change, "next exercise"}, {plan.LeadIn, "lead-in"}} {
		if slices.ContainsFunc(st.Parts, func(part strip.Part) bool { return part.Kind == k.kind }) {
			key = append(key, fmt.Sprintf("%c %s", strip.Mark(k.kind, shown), k.word))
		}
	}
	return fmt.Sprintf("%s\n%s\n%s\n\n", st.Text(shown), strings.TrimRight(st.Scale(), " "), strings.Join(key, "  "))
}

// blockTable sets the blocks, and the whole session, in a table.
func blockTable(p *plan.Plan) texttable.Table {
	t := texttable.Table{
		Header: []string{"block", "rounds", "starts", "length", "work", "rest", "transitions", "work:rest", "sets", "reps", "contacts"},
		Right:  []bool{false, true, true, true, true, true, true, true, true, true, true},
	}
	for i, bt := range p.Blocks {
		t.Rows = append(t.Rows, append([]string{safetext.Fit(fmt.Sprintf("%d %s", i+1, bt.Title), 40),
			strconv.Itoa(bt.Rounds), units.Clock(bt.Start)}, figures(bt.Totals, p.Ratio(i+1), p.Session.Blocks[i])...))
	}
	t.Rows = append(t.Rows, append([]string{"whole session", "", units.Clock(0)}, figures(p.Totals, p.Ratio(0), p.Session.Blocks...)...))
	return t
}

// figures returns the cells that a block and a session have in common.
func figures(t plan.Totals, r plan.Ratio, of ...sessions.Block) []string {
	return []string{units.Clock(t.Total), units.Clock(t.Work), units.Clock(t.Rest), units.Clock(t.Change), r.String(),
		strconv.Itoa(t.Sets), strconv.Itoa(t.Reps), contactsCell(t.Contacts, jumps.AllCounted(of...))}
}

// Steps writes the timeline, one step a line.
func Steps(w io.Writer, p *plan.Plan) error {
	t := texttable.Table{
		Header: []string{"starts", "length", "what", "block", "round", "exercise", "side", "reps"},
		Right:  []bool{true, true, false, true, true},
	}
	for _, s := range p.Steps {
		t.Rows = append(t.Rows, []string{units.ClockMillis(s.Start), units.FormatDuration(s.Length), string(s.Kind),
			positive(s.Block), positive(s.Round), safetext.Fit(s.Name, 40), string(s.Side), positive(s.Reps)})
	}
	_, err := io.WriteString(w, t.String())
	return err
}

// Table writes several sessions, one a line.
func Table(w io.Writer, plans []*plan.Plan) error {
	t := texttable.Table{
		Header: []string{"session", "level", "length", "work", "rest", "transitions", "work:rest", "sets", "reps", "contacts"},
		Right:  []bool{false, false, true, true, true, true, true, true, true, true},
	}
	for _, p := range plans {
		t.Rows = append(t.Rows, append([]string{safetext.Fit(p.Session.Title, 40), string(p.Session.Level)}, figures(p.Totals, p.Ratio(0), p.Session.Blocks...)...))
	}
	_, err := io.WriteString(w, t.String())
	return err
}

// positive writes n, or nothing for 0.
func positive(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

func join(sep string, parts ...string) string {
	var kept []string
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, sep)
}
