package plain

import (
	"context"
	"fmt"
	"strings"

	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/safetext"
	"coldfloor/internal/text"
)

// wanted asks for the result of a try: what, of which exercise, in which unit.
func wanted(l *text.Language, p *plan.Plan, t plan.Try) string {
	what := l.Measure(t.Measure)
	if u := t.Measure.Unit(); u != "" {
		what = l.Sheet.In(what, u)
	}
	said := safetext.Clean(l.Name(p.Steps[p.Sets[t.Set].First].Name)) + ", " + l.Try(t) + ": " + what
	return l.Screen.Ask(said, l.Screen.NoResult)
}

// answer takes what was typed as the result of a try that is due, and says what
// is wrong with it, or nothing.
func answer(l *text.Language, a *run.Active, t plan.Try, typed string) (problem string) {
	if typed == l.Screen.NoResult {
		a.Measured(t, nil)
		return ""
	}
	v, err := t.Measure.ParseResult(typed)
	if err != nil {
		return l.Plain.Wrong(safetext.Clean(typed), l.NoResult(t.Measure))
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
func (h *driver) result(typed string) bool {
	t, ok := h.due()
	if !ok || typed != h.printer.lang.Screen.NoResult && strings.Trim(typed, "0123456789.,mcs ") != "" || typed == "m" || typed == "s" || typed == "" {
		return false
	}
	if problem := answer(h.printer.lang, h.run, t, typed); problem != "" {
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
		h.printer.Notice(wanted(h.printer.lang, h.run.Plan(), t))
	}
}

// results asks, without a limit of time, for what is still due at the end.
func (s *session) results(ctx context.Context, a *run.Active) {
	l := s.Flow.Language()
	for len(a.Due()) > 0 {
		t := a.Due()[0]
		fmt.Fprint(s.Err, wanted(l, a.Plan(), t)+"? ")
		typed, ok := s.line(ctx)
		if !ok {
			return
		}
		if typed == "" {
			typed = l.Screen.NoResult
		}
		if problem := answer(l, a, t, strings.ToLower(strings.TrimSpace(typed))); problem != "" {
			fmt.Fprintln(s.Err, problem)
		}
	}
}
