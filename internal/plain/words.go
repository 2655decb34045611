package plain

import (
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
)

// longRest is how long a rest must be for its last ten seconds to be said, and
// lastOfRest those seconds.
const (
	longRest   = 20 * time.Second
	lastOfRest = 10 * time.Second
)

// seconds writes a length of time as a sentence has it, from a second on in
// whole ones.
func seconds(d time.Duration) string {
	if d >= time.Second {
		d = d.Round(time.Second)
	}
	return units.Sentence(d)
}

// name returns the exercise of step i in the variant that is on.
func (p *Printer) name(i int, v engine.View) string {
	if i < 0 {
		return ""
	}
	return p.lang.Exercise(p.plan, i, v.EasierAt(p.plan, i))
}

// task returns what work step i asks for, in parts, the most needed first.
func (p *Printer) task(i int, v engine.View) []string {
	if i < 0 {
		return nil
	}
	s := p.plan.Steps[i]
	dose := seconds(v.LengthOf(p.plan, i))
	if s.Reps > 0 {
		dose = p.lang.Dose(s)
	}
	return []string{p.name(i, v), p.lang.Side(s.Side), dose, p.lang.Round(p.plan, i)}
}

// step says what to do from now on.
func (p *Printer) step(e engine.Event, v engine.View) string {
	i := e.Step
	s, length := p.plan.Steps[i], v.LengthOf(p.plan, i)-(e.Clock-p.began)
	switch s.Kind {
	case plan.Work:
		return p.work(i, length, v)
	case plan.Switch:
		return fitted(length, p.lang.Plain.SwitchSides+", "+p.lang.Side(s.Side))
	case plan.LeadIn:
		return p.before(p.lang.Plain.Ready+" "+seconds(length), i, length, v)
	case plan.Change:
		return p.before(p.lang.Plain.NextExercise, i, length, v)
	}
	if length >= longRest {
		return p.before(p.lang.Plain.Rest+" "+seconds(length), i, length-lastOfRest, v)
	}
	return p.before(p.lang.Plain.Rest+" "+seconds(length), i, length, v)
}

// work says that work step i begins. The second side of a set is the same again.
func (p *Printer) work(i int, length time.Duration, v engine.View) string {
	parts := p.task(i, v)
	must := p.lang.Plain.Work + " " + parts[0]
	if i > 0 && p.plan.Steps[i-1].Kind == plan.Switch {
		must, parts = p.lang.Plain.Work+" "+parts[1], parts[1:]
	}
	if c, ok := p.nextCall(i, length, 0); ok {
		length = min(length, c.At)
	}
	return fitted(length, must, append(parts[1:], p.lang.Cues(p.plan, i, v.EasierAt(p.plan, i)))...)
}

// before says what comes after step i, which lasts so long. How it is done, and
// what is easier, is said once, before an exercise's first set.
func (p *Printer) before(must string, i int, length time.Duration, v engine.View) string {
	next := p.plan.NextWork(i)
	if next < 0 {
		return must
	}
	s := p.plan.Steps[next]
	task := p.task(next, v)
	if p.plan.Steps[i].Kind != plan.Change {
		task[0] = p.lang.Plain.Next + " " + task[0]
	}
	line := fitted(length, must+", "+task[0], task[1:]...)
	key := s.Block<<16 | s.Exercise
	if p.told[key] {
		return line
	}
	easier := v.EasierAt(p.plan, next)
	e := p.plan.Exercise(next).In(easier)
	extra := []string{}
	if name := p.plan.Exercise(next).Easier.Name; p.keys && name != "" && !easier {
		extra = append(extra, p.lang.Plain.EasierKey(safetext.Clean(p.lang.Name(name))))
	}
	if e.How != "" {
		extra = append(extra, safetext.Clean(p.lang.Name(e.How)))
	}
	longer := fitted(length, line, extra...)
	p.told[key] = longer != line || len(extra) == 0
	return longer
}

// kind names a kind of step.
func (p *Printer) kind(k plan.Kind) string {
	t := &p.lang.Plain
	switch k {
	case plan.LeadIn:
		return t.Ready
	case plan.Work:
		return t.Work
	case plan.Switch:
		return t.SwitchSides
	case plan.Change:
		return t.NextExercise
	}
	return t.Rest
}

// goesOn says that the clock runs on within a step.
func (p *Printer) goesOn(e engine.Event, v engine.View) string {
	s := p.plan.Steps[e.Step]
	left := v.LengthOf(p.plan, e.Step) - (e.Clock - p.began)
	what := p.kind(s.Kind)
	if left <= 0 {
		return what
	}
	return what + ", " + p.lang.Plain.ToGo(seconds(left))
}

// setLeft says what was done of a set that was not done in full.
func (p *Printer) setLeft(e engine.Event) string {
	switch e.Set.Outcome {
	case engine.Done:
		return ""
	case engine.Skipped:
		return p.lang.Plain.SetSkipped
	}
	if reps := p.plan.Sets[e.Set.Set].Reps; reps > 0 {
		return p.lang.Plain.InPartReps(e.Set.Reps, reps)
	}
	return p.lang.Plain.InPartTime(seconds(e.Taken))
}

// standing says where the player is and what is left.
func (p *Printer) standing(v engine.View) string {
	s := p.plan.Steps[v.Step]
	line := p.kind(s.Kind) + ", " + p.lang.Plain.ToGo(seconds(v.Remaining))
	if v.Phase == engine.Overtime {
		line = p.lang.Plain.EndsByKey
	}
	if s.Kind == plan.Work {
		line += ", " + p.name(v.Step, v)
	} else if next := p.plan.NextWork(v.Step); next >= 0 {
		line += ", " + p.lang.Plain.Next + " " + p.name(next, v)
	}
	if round := p.lang.Round(p.plan, v.Step); round != "" {
		line += ", " + round
	}
	return line + "; " + p.lang.Plain.SessionToGo(units.Clock(v.Left))
}

// tenLeft says that a long rest has ten seconds to go, once, if it has. It
// returns how long it is until then, and whether that is still to come.
func (p *Printer) tenLeft(v engine.View) (in time.Duration, ok bool) {
	if p.ten || v.Phase != engine.Running || p.plan.Steps[v.Step].Kind != plan.Rest || v.Length < longRest {
		return 0, false
	}
	if in = v.Remaining - lastOfRest; in > 0 {
		return in, true
	}
	p.ten = true
	p.say(v.Clock, p.lang.Plain.TenSeconds)
	return 0, false
}
