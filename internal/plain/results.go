package plain

import (
	"context"
	"fmt"
	"strings"

	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/safetext"
)

// leftOut is what is typed for a result that is not to be had.
const leftOut = "none"

// wanted asks for the result of a try: what, of which exercise, in which unit.
func wanted(p *plan.Plan, t plan.Try) string {
	text := safetext.Clean(p.Steps[p.Sets[t.Set].First].Name) + ", " + run.TryText(t) + ": " + string(t.Measure)
	if u := t.Measure.Unit(); u != "" {
		text += " in " + u
	}
	return text + ", or " + leftOut
}

// answer takes what was typed as the result of a try that is due, and says what
// is wrong with it, or nothing.
func answer(a *run.Active, t plan.Try, text string) (problem string) {
	if text == leftOut {
		a.Measured(t, nil)
		return ""
	}
	v, err := t.Measure.ParseResult(text)
	if err != nil {
		return fmt.Sprintf("%q %v", text, err)
	}
	a.Measured(t, &v)
	return ""
}

// due returns the try whose result may be typed now: in a rest, the earliest
// that is due.
func (h *driver) due() (t plan.Try, ok bool) {
	v, list := h.run.View(), h.run.Due()
	if len(list) == 0 || h.run.Plan().Steps[v.Step].Kind == plan.Work {
		return plan.Try{}, false
	}
	return list[0], true
}

// result takes a line as a result, if one is due and the line may be one.
func (h *driver) result(text string) bool {
	t, ok := h.due()
	if !ok || text != leftOut && strings.Trim(text, "0123456789.,mcs ") != "" || text == "m" || text == "s" || text == "" {
		return false
	}
	if problem := answer(h.run, t, text); problem != "" {
		h.printer.Notice(problem)
		return true
	}
	h.wanted = plan.Try{}
	return true
}

// asks asks for the result that is due, once.
func (h *driver) asks() {
	if t, ok := h.due(); ok && t != h.wanted && h.printer.keys {
		h.wanted = t
		h.printer.Notice(wanted(h.run.Plan(), t))
	}
}

// results asks, without a limit of time, for what is still due at the end.
func (s *session) results(ctx context.Context, a *run.Active) {
	for len(a.Due()) > 0 {
		t := a.Due()[0]
		fmt.Fprint(s.Err, wanted(a.Plan(), t)+"? ")
		text, ok := s.line(ctx)
		if !ok {
			return
		}
		if text == "" {
			text = leftOut
		}
		if problem := answer(a, t, strings.ToLower(strings.TrimSpace(text))); problem != "" {
			fmt.Fprintln(s.Err, problem)
		}
	}
}
