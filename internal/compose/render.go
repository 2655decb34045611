package compose

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// render writes a session as a coach would type it, with comments that say
// what to change and why it is as it is. Every text in it is this package's
// own and needs no quotes.
func render(s *sessions.Session, a Answers, notes []string) []byte {
	w := &writer{}
	w.line(0, "# Drafted for %s of floor%s and %d minutes; it is %s long.", floorOf(a), ceilingOf(a), a.Length/time.Minute, units.Clock(plan.Of(s).Total))
	for _, n := range notes {
		for i, line := range safetext.Wrap(strings.ToUpper(n[:1])+n[1:]+".", 76, 10) {
			w.line(0, "#%s%s", strings.Repeat(" ", 1+min(i, 1)*2), line)
		}
	}
	w.line(0, "# Make it your own, then: coldfloor check FILE, coldfloor preview FILE.")
	w.line(0, "coldfloor: %d", s.Version)
	w.line(0, "title: %s", s.Title)
	w.line(0, "for: %s", s.For)
	w.line(0, "level: %s   # beginner, intermediate or advanced", s.Level)
	if s.Note != "" {
		w.line(0, "note: %s", s.Note)
	}
	w.line(0, "lead_in: %s", units.FormatDuration(s.LeadIn))
	w.line(0, "blocks:")
	for i := range s.Blocks {
		w.block(&s.Blocks[i], i == len(s.Blocks)-1)
	}
	return []byte(w.String())
}

func floorOf(a Answers) string { return a.Room.Along.Text() + " x " + a.Room.Across.Text() }

func ceilingOf(a Answers) string {
	if a.Room.Ceiling == 0 {
		return ""
	}
	return " under a ceiling of " + a.Room.Ceiling.Text()
}

// writer collects the lines of a file.
type writer struct{ strings.Builder }

// line writes one line, indented by so many spaces.
func (w *writer) line(indent int, format string, args ...any) {
	w.WriteString(strings.Repeat(" ", indent))
	fmt.Fprintf(w, format, args...)
	w.WriteByte('\n')
}

// reason says why a block is as it is.
func reason(b *sessions.Block) string {
	switch {
	case b.Part == sessions.WarmUp:
		return "Common practice is ten minutes before jumping; five is the least."
	case b.Part == sessions.CoolDown:
		return "To end calmly."
	case b.Trains[0] == "strength":
		return "Slow strength after the jumps, without hurry."
	case b.Trains[0] == "trunk":
		return "Controlled; stop a set when the form goes."
	}
	return "Every rep at full intent. Cut the reps before the rest."
}

// block writes one block.
func (w *writer) block(b *sessions.Block, last bool) {
	w.line(0, "")
	w.line(2, "# %s", reason(b))
	w.line(2, "- title: %s", b.Title)
	w.line(4, "part: %s", b.Part)
	w.line(4, "trains: [%s]", strings.Join(b.Trains, ", "))
	w.line(4, "rounds: %d", b.Rounds)
	if b.Rounds > 1 {
		w.line(4, "rest: %s", units.FormatDuration(b.Rest))
	}
	if !last {
		w.line(4, "rest_after: %s", units.FormatDuration(b.RestAfter))
	}
	w.line(4, "change: %s", units.FormatDuration(b.Change))
	w.line(4, "exercises:")
	for i := range b.Exercises {
		w.exercise(&b.Exercises[i])
	}
}

// exercise writes one exercise, its defaults left out.
func (w *writer) exercise(e *sessions.Exercise) {
	const in = 8
	w.line(in-2, "- name: %s", e.Name)
	w.work(e, in)
	if e.Contacts > 0 {
		w.line(in, "contacts: %d", e.Contacts)
	}
	w.line(in, "cues: [%s]", strings.Join(e.Cues, ", "))
	w.line(in, "how: %s", e.How)
	if n := e.Easier.Contacts; n != nil {
		w.line(in, "easier: {name: %s, contacts: %d}", e.Easier.Name, *n)
	} else {
		w.line(in, "easier: %s", e.Easier.Name)
	}
	w.line(in, "floor: %v x %v", e.Floor.Along, e.Floor.Across)
	if e.Travel > 0 {
		w.line(in, "travel: %v", e.Travel)
	}
	if e.Overhead.Kind == sessions.OverheadAbove {
		w.line(in, "overhead: %v   # above the standing height", e.Overhead.Above)
	}
}

// work writes the dose of an exercise, its pace and its sides.
func (w *writer) work(e *sessions.Exercise, in int) {
	switch {
	case e.Reps > 0:
		w.line(in, "reps: %d", e.Reps)
	case e.RepsPerSide > 0:
		w.line(in, "reps_per_side: %d", e.RepsPerSide)
	case e.Time > 0:
		w.line(in, "time: %s", units.FormatDuration(e.Time))
	default:
		w.line(in, "time_per_side: %s", units.FormatDuration(e.TimePerSide))
	}
	switch t := e.Tempo; {
	case t.Rep() > 0:
		w.line(in, "tempo: %s-%s-%s", count(t.Lowering), count(t.Pause), count(t.Rising))
	case e.Rep != sessions.DefaultRep:
		w.line(in, "rep: %s", units.FormatDuration(e.Rep))
	}
	if e.Sides != sessions.LeftFirst {
		w.line(in, "sides: %s", e.Sides)
	}
}

// count writes whole seconds as a number.
func count(d time.Duration) string { return strconv.FormatInt(int64(d/time.Second), 10) }
