package run

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/cautions"
	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/units"
)

// Ask is something that is said, with the answers there are to it.
type Ask struct {
	Title   string
	Text    []string // paragraphs
	Answers []Answer

	Alone Answer // what is done with nobody to ask
	Hint  string // how somebody could have answered; may be empty
}

// Answer is one answer to an Ask.
type Answer struct {
	Key   string // that gives it: a small letter, or "enter"
	Label string
	Enter bool // Enter gives it too
	Leave bool // it leaves the program, as Escape and an interrupt do

	do func()
}

// Answer acts on one of the answers of the Ask that Next returned.
func (f *Flow) Answer(a Answer) {
	if a.Leave {
		f.left = true
	}
	if a.do != nil {
		a.do()
	}
}

// Leave leaves the program, whatever was asked. It starts nothing.
func (f *Flow) Leave() { f.left = true }

func leave() Answer { return Answer{Key: "q", Label: "leave", Leave: true} }

// askTrouble says what became of an answer.
func (f *Flow) askTrouble() *Ask {
	return &Ask{Title: "That did not work", Text: []string{fault.Text(f.trouble)},
		Answers: []Answer{{Key: "enter", Label: "go on", Enter: true, do: func() { f.trouble = nil }}, leave()},
		Alone:   Answer{Leave: true, do: func() { f.err = f.trouble }}}
}

// askWithoutLog asks whether to run without a log.
func (f *Flow) askWithoutLog() *Ask {
	out := leave()
	out.do = func() { f.err = f.logErr }
	return &Ask{Title: "The log cannot be written",
		Text:    []string{strings.ReplaceAll(fault.Text(f.logErr), "\n", ". "), "What you do would not be kept. Run without a log?"},
		Answers: []Answer{{Key: "r", Label: "run without a log", do: func() { f.logErr = nil }}, out},
		Alone:   Answer{Leave: true, do: func() { f.err = fault.With("--no-log runs without one", f.logErr) }}}
}

// oldAfter is how old a run that did not end must be for logging it to be
// offered before going on with it: it belongs to another day.
const oldAfter = 24 * time.Hour

// askUnfinished asks what is to become of a run that did not end.
func (f *Flow) askUnfinished(r *journal.Run) *Ask {
	done, of := setsDone(r)
	now := f.now()
	q := &Ask{Title: "A session did not end", Text: []string{fmt.Sprintf("%s, begun %s: %d of %d sets done.",
		r.Title(), when(r.Start, now), done, of)}}
	if r.Rehearsal() {
		q.Title = "A rehearsal did not end"
	}
	settle := func(do func() error) func() {
		return func() { f.trouble = do(); f.unfinished = f.unfinished[1:] }
	}
	asIs := Answer{Key: "l", Label: "log it as it stands", do: settle(func() error { return f.closeAsIs(r) })}
	on := Answer{Key: "g", Label: "go on from where it stopped", do: func() { f.goOn(r) }}
	q.Answers = []Answer{on, asIs}
	if why := f.cannotGoOn(r); why != "" {
		q.Text = append(q.Text, why)
		q.Answers = []Answer{asIs}
	} else if now.Sub(r.Start) > oldAfter {
		q.Text = append(q.Text, "It is more than a day old: log it as it stands, and start a new one.")
		q.Answers = []Answer{asIs, on}
	}
	q.Answers[0].Enter = true
	later := Answer{Key: "n", Label: "leave it for later", do: settle(func() error { return nil })}
	q.Answers = append(q.Answers, later, leave())
	q.Alone, q.Hint = later, "coldfloor run on a terminal offers to go on with it, or to log it as it stands"
	return q
}

// cannotGoOn says why r cannot be gone on with, or nothing if it can. A
// rehearsal stays one and a real run stays real.
func (f *Flow) cannotGoOn(r *journal.Run) string {
	if _, err := Resume(r); err != nil {
		return "It cannot be gone on with: " + err.Error() + "."
	}
	switch now := f.opts.speed(); {
	case r.Rehearsal() && now != r.Started.Speed:
		return fmt.Sprintf("It is a rehearsal at %g times the speed; start with --speed %g to go on with it.", r.Started.Speed, r.Started.Speed)
	case !r.Rehearsal() && now != 1:
		return "It is a real session and this is a rehearsal; start without --speed to go on with it."
	}
	return ""
}

// goOn makes r the run to go on with. Other runs that did not end wait for
// another start.
func (f *Flow) goOn(r *journal.Run) {
	re, err := Resume(r)
	if err != nil {
		f.trouble = err
		return
	}
	f.resume, f.plan, f.weeks = re, re.Plan, nil
	f.unfinished = nil
	f.unrated = nil
}

// closeAsIs logs r as it stands. If anything was done its effort is asked for.
func (f *Flow) closeAsIs(r *journal.Run) error {
	if err := f.log.Journal.CloseAsIs(r.ID); err != nil {
		return err
	}
	r.State = journal.Interrupted
	if i := slices.IndexFunc(f.log.Runs, func(x *journal.Run) bool { return x.ID == r.ID }); i >= 0 {
		f.log.Runs[i] = r
	}
	f.unrated = f.lacking(f.log.Runs)
	return nil
}

// askCautions says what a player is told before the first run.
func (f *Flow) askCautions() *Ask {
	return &Ask{Title: "Before the first session", Text: cautions.FirstRun(),
		Answers: []Answer{{Key: "enter", Label: "I have read this: go on", Enter: true, do: f.cautioned}, leave()},
		Alone:   Answer{do: f.cautioned}}
}

// cautioned keeps that the cautions were read. If that cannot be kept they are
// shown once more at another start.
func (f *Flow) cautioned() {
	f.calm = true
	_ = cautions.Remember(f.opts.Player.Name)
}

// askNote says what is to be said of the session.
func (f *Flow) askNote(s *Say) *Ask {
	said := func() { f.say = nil }
	q := &Ask{Title: s.Title, Text: s.Text, Answers: []Answer{{Key: "enter", Label: "start", Enter: true, do: said}}}
	if s.Only != nil {
		q.Answers = append(q.Answers, Answer{Key: "w", Label: s.Label, do: func() { f.Choose(nil, nil); f.only = s.Only }})
	}
	q.Answers = append(q.Answers, leave())
	q.Alone = q.Answers[0]
	return q
}

// setsDone returns how many sets of r were done, each counted once, and how
// many were prescribed.
func setsDone(r *journal.Run) (done, of int) {
	places := map[journal.Place]bool{}
	for _, s := range r.Sets {
		if s.Outcome == journal.Done {
			places[s.Place] = true
		}
	}
	for _, b := range r.Blocks() {
		of += b.Sets
	}
	return len(places), of
}

// when says when something was, as a player reads it.
func when(at, now time.Time) string {
	at = at.In(now.Location())
	clock := at.Format("15:04")
	switch n := units.DateOf(now) - units.DateOf(at); {
	case n == 0:
		return "today at " + clock
	case n == 1:
		return "yesterday at " + clock
	}
	return units.DateOf(at).Short() + " at " + clock
}
