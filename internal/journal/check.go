package journal

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Bounds of what a line may say, far beyond what is true of any session, so
// that a damaged figure can cost neither memory nor sense.
const (
	maxN       = 1 << 24
	maxPlace   = 10_000 // steps of the longest plan
	maxSeconds = 366 * 24 * 60 * 60
	maxMeasure = 1e6
)

// Check reports what a line says that no line of a journal that was read can say:
// Build takes no other.
func (l *Line) Check() error {
	_, err := l.check()
	return err
}

// check reports what a line says that cannot be, or that this version does not
// know.
func (l *Line) check() (unknown bool, err error) {
	switch {
	case l.V > Version:
		return true, tooNew(l.V)
	case l.V < 1:
		return false, errors.New("is damaged: it has no version")
	case !validRun(l.Run):
		return false, errors.New("is damaged: it names no run")
	case l.N < 1 || l.N > maxN:
		return false, errors.New("is damaged: it has no number within its run")
	case l.At.IsZero():
		return false, errors.New("is damaged: it has no time")
	}
	body, known := l.body()
	switch {
	case !known:
		return true, fmt.Errorf("has an event %q, which this program does not know", l.Event)
	case body == nil:
		return false, fmt.Errorf("is damaged: it does not say what of %q", l.Event)
	}
	if l.bodies() > 1 {
		return false, errors.New("is damaged: it holds several events")
	}
	if err := body.sane(); err != nil || !spans(l.Clock) {
		return false, errors.Join(errors.New("is damaged: it has an impossible value"), err)
	}
	return false, nil
}

// validRun reports whether a run's name is letters, digits, _ and - alone, 64
// at most: it becomes part of a file's name and must be no more than a name.
func validRun(run string) bool {
	for _, c := range []byte(run) {
		switch {
		case '0' <= c && c <= '9', 'A' <= c && c <= 'Z', 'a' <= c && c <= 'z', c == '_', c == '-':
		default:
			return false
		}
	}
	return run != "" && len(run) <= 64
}

// body is the part of a line that goes with its event.
type body interface{ sane() error }

// body returns the line's body, nil if it is missing, and whether the event
// is known.
func (l *Line) body() (b body, known bool) {
	switch l.Event {
	case EventStarted:
		return some(l.Started), true
	case EventSet:
		return some(l.Set), true
	case EventRest:
		return some(l.Rest), true
	case EventPause:
		return some(l.Pause), true
	case EventResume:
		return some(l.Resume), true
	case EventMove:
		return some(l.Move), true
	case EventExtend:
		return some(l.Extend), true
	case EventVariant:
		return some(l.Variant), true
	case EventFinish:
		return some(l.Finish), true
	case EventMeasure:
		return some(l.Measure), true
	case EventRating:
		return some(l.Rating), true
	case EventCorrect:
		return some(l.Correct), true
	case EventWithdraw, EventRestore:
		return nothing{}, true
	}
	return nil, false
}

// bodies returns how many bodies the line has.
func (l *Line) bodies() (n int) {
	for _, there := range []bool{l.Started != nil, l.Set != nil, l.Rest != nil, l.Pause != nil, l.Resume != nil, l.Move != nil, l.Extend != nil,
		l.Variant != nil, l.Finish != nil, l.Measure != nil, l.Rating != nil, l.Correct != nil} {
		if there {
			n++
		}
	}
	return n
}

// some returns p as a body, or nil if there is none.
func some[P interface {
	*T
	body
}, T any](p P) body {
	if p == nil {
		return nil
	}
	return p
}

// nothing is the body of an event that has none.
type nothing struct{}

func (nothing) sane() error { return nil }

func (s *Started) sane() error {
	if len(s.Blocks) > maxPlace {
		return errors.New("too many blocks")
	}
	for _, b := range s.Blocks {
		if !counts(b.Rounds, b.Sets, b.Contacts.N) {
			return fmt.Errorf("a dose of block %q", b.Title)
		}
	}
	return sane(spans(s.TotalS) && s.Speed >= 0 && (s.Weeks == nil || s.Weeks.sane()))
}

func (w *Weeks) sane() bool {
	return w.Week >= 0 && w.Week <= maxPlace && w.Place >= 0 && w.Place <= maxPlace
}

func (s *Set) sane() error {
	outcomes := []string{Done, Partial, Skipped}
	return sane(slices.Contains(outcomes, s.Outcome) && s.within() && spans(s.PlannedS, s.TakenS, s.PausedS) && counts(s.Reps, s.Planned, s.Contacts.N))
}

func (r *Rest) sane() error { return sane(r.within() && spans(r.PrescribedS, r.TakenS, r.PausedS)) }

func (p *Pause) sane() error { return nil }

func (r *Resume) sane() error { return sane(counts(r.Step)) }

func (m *Move) sane() error { return sane(m.within()) }

func (e *Extend) sane() error { return sane(e.within() && spans(e.ByS)) }

func (v *Variant) sane() error { return sane(v.within()) }

func (f *Finish) sane() error {
	outcomes := []State{Complete, Stopped, Interrupted}
	return sane(slices.Contains(outcomes, State(f.Outcome)) && spans(f.ElapsedS))
}

func (m *Measure) sane() error {
	sides, kinds := []string{"left", "right", "both"}, []string{"distance", "height", "count", "time"}
	return sane(m.within() && slices.Contains(sides, m.Side) && slices.Contains(kinds, m.Measure) &&
		m.Try >= 1 && m.Try <= maxPlace && (m.Value == nil || *m.Value >= 0 && *m.Value <= maxMeasure))
}

func (r *Rating) sane() error {
	return sane((r.RPE == nil || *r.RPE >= 0 && *r.RPE <= 10) && len(r.Rounds) <= maxPlace && counts(r.Rounds...) &&
		(r.PainLevel == nil || *r.PainLevel >= 0 && *r.PainLevel <= 10))
}

func (c *Correct) sane() error { return sane(c.LengthS == nil || spans(*c.LengthS)) }

// sane returns an error unless ok.
func sane(ok bool) error {
	if ok {
		return nil
	}
	return errors.New("a figure out of bounds")
}

// within reports whether p may be a place in a plan, or none.
func (p Place) within() bool {
	in := func(n int) bool { return n >= 0 && n <= maxPlace }
	return in(p.Block) && in(p.Round) && in(p.Exercise)
}

// spans reports whether all are lengths of time in seconds.
func spans(all ...float64) bool {
	for _, s := range all {
		if !(s >= 0 && s <= maxSeconds) {
			return false
		}
	}
	return true
}

// counts reports whether all may be numbers of rounds, sets, reps or contacts.
func counts(all ...int) bool {
	for _, n := range all {
		if n < 0 || n > math.MaxInt32 {
			return false
		}
	}
	return true
}
