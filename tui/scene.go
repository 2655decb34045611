package tui

import (
	"time"

	"coldfloor/internal/text"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
	"coldfloor/tui/palette"
)

// How much of a step counts as its last seconds. The end of a rest is
// announced earlier, because the player has to get into position.
const (
	lastSeconds = 3
	bareSeconds = 10 // from here on seconds are shown alone, and so larger
)

// scene is what there is to see at one moment, in words; layout decides how
// much of it finds room, and where. Its texts are safe to show.
type scene struct {
	lang     *text.Language
	phase    palette.Phase
	word     string    // what is going on, in capitals
	count    counted   // what is largest
	last     bool      // the step is in its last seconds
	side     plan.Side // of the work in hand or to come; where a switch leads
	exercise string    // in hand, or to come where nothing is in hand
	dose     string    // what is asked for, with its side; what the count says is left out
	reps     string    // the whole dose without the side
	cue      string    // for the work in hand
	how      string    // of the exercise to come
	offer    string    // the easier variant of the exercise to come, if it has one and is not on
	calls    bool      // directions are called in it
	upcoming bool      // exercise is the next, not the present one
	round    string
	block    string
	then     string // what follows the exercise
	thenName string // the same without its dose
	left     time.Duration
	clock    time.Duration // session clock
}

// sceneOf returns what there is to see of v in a run with options o.
func sceneOf(l *text.Language, p *plan.Plan, v engine.View, o engine.Options) scene {
	if v.Phase == engine.Over {
		return scene{lang: l, phase: palette.Done, word: wordOf(l, palette.Done), count: figure(units.Clock(v.Clock)), clock: v.Clock,
			exercise: safetext.Clean(l.Title(p.Session.Title))}
	}
	step := p.Steps[v.Step]
	s := scene{lang: l, phase: phaseOf(step, v, o), clock: v.Clock, left: v.Left - v.Remaining + ceilSecond(v.Remaining)}
	s.word = wordOf(l, s.phase)
	if s.phase == palette.OwnPace {
		s.word += ": " + s.lang.Screen.KeyWhenDone
	}
	s.task(p, v)
	s.counts(p, v)
	s.called(p, v, o.Seed)
	return s
}

// wordOf returns the word of a phase, in capitals.
func wordOf(l *text.Language, p palette.Phase) string {
	t := &l.Screen
	switch p {
	case palette.Work:
		return t.Work
	case palette.OwnPace:
		return t.OwnPace
	case palette.SideChange:
		return t.Switch
	case palette.NextExercise:
		return t.Change
	case palette.Rest:
		return t.Rest
	case palette.RestEnds:
		return t.RestEnds
	case palette.Paused:
		return t.Paused
	case palette.Done:
		return t.Done
	}
	return t.Ready
}

// phaseOf returns the phase of a moment.
func phaseOf(step plan.Step, v engine.View, o engine.Options) palette.Phase {
	switch {
	case v.Phase == engine.Halted:
		return palette.Paused
	case v.Phase == engine.CountedIn:
		return palette.GetReady
	case o.Waits(step):
		return palette.OwnPace
	case step.Kind == plan.Rest && v.Remaining <= bareSeconds*time.Second:
		return palette.RestEnds
	}
	return palette.OfKind(step.Kind)
}

// task fills in what to do: of the work in hand, or of the work to come.
func (s *scene) task(p *plan.Plan, v engine.View) {
	i := v.Step
	if p.Steps[i].Kind != plan.Work {
		s.upcoming = true
		if next := p.NextWork(i); next >= 0 {
			i = next
		}
	}
	work := p.Steps[i]
	s.side = work.Side
	s.exercise = s.lang.Exercise(p, i, v.Easier)
	s.reps = s.lang.Dose(work)
	s.dose = sideDose(s.lang, work)
	s.cue = s.lang.Cues(p, i, v.Easier)
	if e := p.Exercise(i); e != nil {
		s.how = safetext.Clean(s.lang.Name(e.In(v.Easier).How))
	}
	s.round = s.lang.Round(p, i)
	if work.Block > 0 {
		s.block = safetext.Clean(s.lang.Name(p.Blocks[work.Block-1].Title))
	}
	if e := p.Exercise(i); e != nil && s.upcoming && !v.Easier && e.Easier.Given() {
		s.offer = s.lang.Screen.Offer(safetext.Clean(s.lang.Name(e.Easier.Name)))
	}
	s.then, s.thenName = then(s.lang, p, v, i)
}

// doing returns what is to be done, or to be done next, in one line, without its
// dose where the count says that.
func (s scene) doing() string {
	doing := s.exercise
	if s.next() {
		doing = capital(s.lang.Screen.Next) + ": " + doing
	}
	if s.dose == "" {
		return doing
	}
	return doing + ", " + s.dose
}

// sideDose returns the dose of a work step after the side that it is for.
func sideDose(l *text.Language, s plan.Step) string {
	if side := l.Side(s.Side); side != "" {
		return side + ", " + l.Dose(s)
	}
	return l.Dose(s)
}

// then says what follows work step i, with its dose and without.
func then(l *text.Language, p *plan.Plan, v engine.View, i int) (whole, name string) {
	next := p.NextWork(i)
	if i+1 >= len(p.Steps) || next < 0 {
		return l.Screen.ThenDone, l.Screen.ThenDone
	}
	switch s := p.Steps[i+1]; s.Kind {
	case plan.Rest:
		whole = l.Screen.ThenRest(units.Sentence(s.Length))
		return whole, whole
	case plan.Switch:
		whole = l.Screen.Then(l.Side(s.Side))
		return whole, whole
	}
	name = l.Screen.Then(l.Exercise(p, next, v.EasierAt(p, next)))
	return name + ", " + sideDose(l, p.Steps[next]), name
}

// ceilSecond rounds up to whole seconds, so that time left never reads nothing
// while there is some.
func ceilSecond(d time.Duration) time.Duration {
	return (d + time.Second - 1).Truncate(time.Second)
}
