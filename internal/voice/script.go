package voice

import (
	"strings"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/text"
	"coldfloor/sound"
)

// Gaps that keep words apart from cues and from each other.
const (
	afterCue   = 150 * time.Millisecond
	afterClick = 30 * time.Millisecond
	beforeCue  = 100 * time.Millisecond
)

// Options says how a session is spoken.
type Options struct {
	Language Language
	Pips     int            // get-ready pips before a start, which words keep clear of where they can
	Count    int            // the last seconds of the lead-in spoken down, from this number; 0 for none
	Run      engine.Options // tells which sets wait for a key
}

// Spoken is a text and the time it may take, from the view's moment. It begins
// at From; what cannot end by Until, before the next start, is left unsaid, and
// Short said in its place if there is such a text that can.
type Spoken struct {
	Text        string
	Short       string // empty: none
	From, Until time.Duration
}

// Script returns what is to be said from the moment of v on if nobody touches
// a key, in order of time. What should have begun by now is left out.
func Script(p *plan.Plan, v engine.View, o Options) []Spoken {
	if v.Phase != engine.Running && v.Phase != engine.CountedIn {
		return nil
	}
	w := writer{p: p, o: o, from: v.CountIn, view: v}
	start := v.CountIn - v.Elapsed
	end := start + v.Length
	for i := v.Step; ; i++ {
		w.step(i, start, end)
		if o.Run.Waits(p.Steps[i]) {
			break
		}
		if i+1 == len(p.Steps) {
			w.say(o.Language.Done(), end+sound.Done.Duration()+afterCue, end+time.Minute)
			break
		}
		start, end = end, end+v.LengthOf(p, i+1)
	}
	return w.out
}

// writer writes one script.
type writer struct {
	p    *plan.Plan
	o    Options
	from time.Duration // when the session's clock runs
	view engine.View
	out  []Spoken
}

// say books a text that begins at from and must not touch a cue at end.
func (w *writer) say(text string, from, end time.Duration) { w.sayEither(text, "", from, end) }

// sayEither books a text, and a shorter one for when there is no time for it.
func (w *writer) sayEither(text, short string, from, end time.Duration) {
	if text != "" && from >= w.from {
		w.out = append(w.out, Spoken{text, short, from, end - beforeCue})
	}
}

// noted returns text after the notes that the player must know, and text alone
// if there are any.
func noted(text string, notes ...string) (long, short string) {
	long = text
	for i := len(notes) - 1; i >= 0; i-- {
		if n := strings.TrimSpace(safetext.Clean(notes[i])); n != "" {
			long, short = n+" "+long, text
		}
	}
	return long, short
}

// step writes what is said in step i. In work only the last reps are counted.
func (w *writer) step(i int, start, end time.Duration) {
	s := w.p.Steps[i]
	switch s.Kind {
	case plan.Work:
		w.counted(i, start, end)
	case plan.LeadIn:
		w.leadIn(i, start, end)
	case plan.Switch:
		w.say(w.o.Language.Side(s.Side), start+sound.ChangeSide.Duration()+afterCue, end)
	case plan.Change:
		w.say(w.next(i), start+sound.ChangeExercise.Duration()+afterCue, end)
	case plan.Rest:
		w.rest(i, start, end)
	}
}

// countedFrom is the length of a rep from which on there is time to count it
// aloud.
const countedFrom = 1200 * time.Millisecond

// counted writes the count of the last reps of a set, each after the click of
// its start. The first rep has the start cue. A set that waits for a key is not
// counted, since nobody knows which rep is its last.
func (w *writer) counted(i int, start, end time.Duration) {
	s := w.p.Steps[i]
	e := w.p.Exercise(i).In(w.view.EasierAt(w.p, i))
	if s.Reps == 0 || e.Rep < countedFrom || w.o.Run.Waits(s) {
		return
	}
	for left := min(3, s.Reps-1); left > 0; left-- {
		at := start + time.Duration(s.Reps-left)*e.Rep
		w.say(w.o.Language.Counted(left), at+sound.Rep.Duration()+afterClick, min(at+e.Rep, end))
	}
}

// leadIn writes the lead-in: what comes, even if it is under way already,
// and then the countdown. Each number follows its pip, if there is one, and
// ends before the next.
func (w *writer) leadIn(i int, start, end time.Duration) {
	count := min(w.o.Count, int((end-start)/time.Second))
	text, short := noted(w.next(i), w.p.Session.Note, w.p.Session.Blocks[0].Note)
	w.sayEither(text, short, max(start, w.from)+afterCue, end-time.Duration(count)*time.Second)
	for n := count; n > 0; n-- {
		at := end - time.Duration(n)*time.Second
		from := at
		if n <= w.o.Pips {
			from += sound.GetReady.Duration()
		}
		w.say(w.o.Language.Number(n), from, at+time.Second)
	}
}

// rest writes a rest: how long it is as it begins, and what comes next after
// the announcement of its last ten seconds; in a short one what comes next
// alone.
func (w *writer) rest(i int, start, end time.Duration) {
	text := w.o.Language.Rest(end - start)
	if w.lastRound(i) {
		text += " " + w.o.Language.LastRound()
	}
	from := start + sound.RestStarts.Duration() + afterCue
	if end-start < sound.RestForTen {
		w.say(w.next(i), from, end)
		return
	}
	ten := end - 10*time.Second
	long, short := text, ""
	if n := w.p.NextWork(i); n >= 0 && w.p.Steps[n].Block != w.p.Steps[i].Block {
		if note := w.p.Session.Blocks[w.p.Steps[n].Block-1].Note; note != "" {
			long, short = text+" "+note, text
		}
	}
	w.sayEither(strings.TrimSpace(safetext.Clean(long)), short, from, ten)
	w.say(w.next(i), ten+sound.TenLeft.Duration()+afterCue, end)
}

// next says the work that follows step i.
func (w *writer) next(i int) string {
	n := w.p.NextWork(i)
	if n < 0 {
		return ""
	}
	return w.o.Language.Next(w.p.Steps[n], text.In(w.o.Language.Code).Exercise(w.p, n, w.view.EasierAt(w.p, n)))
}

// lastRound reports whether the rest at step i leads to its block's last round.
func (w *writer) lastRound(i int) bool {
	n := w.p.NextWork(i)
	if n < 0 {
		return false
	}
	before, after := w.p.Steps[i], w.p.Steps[n]
	rounds := w.p.Blocks[after.Block-1].Rounds
	return rounds > 1 && after.Round == rounds && (before.Round != after.Round || before.Block != after.Block)
}
