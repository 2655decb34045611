package run

import (
	"fmt"
	"strings"
	"time"

	"coldfloor/internal/engine"
)

// need writes what the flow needs next.
func (s *stage) need() {
	switch n := s.flow.Next(); {
	case n.Ask != nil:
		s.asks(n.Ask)
	case n.Rate != nil:
		fmt.Fprintf(&s.out, "rate: %s\n", s.flow.Called(n.Rate))
	case n.Choose:
		fmt.Fprintln(&s.out, "choose a session")
	case n.Start:
		fmt.Fprintf(&s.out, "start: %s, logged: %v\n", s.flow.Plan().Session.Title, s.flow.Logged())
	case n.Leave:
		fmt.Fprintln(&s.out, "leave")
	}
}

// asks writes a question.
func (s *stage) asks(q *Ask) {
	s.read = append(append(s.read, q.Title, q.Hint), q.Text...)
	fmt.Fprintf(&s.out, "ask: %s\n", q.Title)
	for _, p := range q.Text {
		fmt.Fprintf(&s.out, "  %s\n", p)
	}
	for _, a := range q.Answers {
		s.read = append(s.read, a.Label)
		key := a.Key
		if a.Enter && key != "enter" {
			key += " or enter"
		}
		fmt.Fprintf(&s.out, "  [%s] %s\n", key, a.Label)
	}
	if q.Hint != "" {
		fmt.Fprintf(&s.out, "  (%s)\n", q.Hint)
	}
}

// Heard implements engine.Listener: it writes the sets that end and the run's
// end.
func (s *stage) Heard(events []engine.Event, _ engine.View) {
	for _, e := range events {
		switch e.Kind {
		case engine.SetEnded:
			fmt.Fprintf(&s.out, "%v set %d %s by %s, %d reps\n", e.Clock.Round(time.Millisecond), e.Set.Set+1, e.Set.Outcome, e.Cause, e.Set.Reps)
		case engine.Finished:
			fmt.Fprintf(&s.out, "%v finished by %s\n", e.Clock.Round(time.Millisecond), e.Cause)
		}
	}
}

// shows writes how the run stands.
func (s *stage) shows() {
	v := s.run.View()
	step := s.run.Plan().Steps[v.Step]
	fmt.Fprintf(&s.out, "%v of the session: %s, %s", s.run.Clocked().Round(time.Millisecond), v.Phase, strings.TrimSpace(string(step.Kind)+" "+step.Name))
	if next, ok := s.run.Next(); ok {
		fmt.Fprintf(&s.out, ", next in %v", next.Round(time.Millisecond))
	}
	if n := len(s.run.Due()); n > 0 {
		fmt.Fprintf(&s.out, ", results due: %d", n)
	}
	if s.run.Alone() {
		fmt.Fprint(&s.out, ", nobody at the keys")
	}
	if s.run.Rehearsal() {
		fmt.Fprint(&s.out, ", a rehearsal")
	}
	fmt.Fprintln(&s.out)
}
