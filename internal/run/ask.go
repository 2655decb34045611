package run

import (
	"slices"
	"time"

	"coldfloor/internal/cautions"
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

func (f *Flow) leave() Answer { return Answer{Key: "q", Label: f.Language().Flow.Leave, Leave: true} }

// askTrouble says what became of an answer.
func (f *Flow) askTrouble() *Ask {
	return &Ask{Title: f.Language().Flow.DidNotWork, Text: []string{Why(f.Language(), f.trouble)},
		Answers: []Answer{{Key: "enter", Label: f.Language().Flow.GoOn, Enter: true, do: func() { f.trouble = nil }}, f.leave()},
		Alone:   Answer{Leave: true, do: func() { f.err = f.inWords(f.trouble) }}}
}

// askWithoutLog asks whether to run without a log.
func (f *Flow) askWithoutLog() *Ask {
	out := f.leave()
	out.do = func() { f.err = f.inWords(f.logErr) }
	return &Ask{Title: f.Language().Flow.NoLog,
		Text:    []string{Why(f.Language(), f.logErr), f.Language().Flow.NoLogText},
		Answers: []Answer{{Key: "r", Label: f.Language().Flow.RunWithout, do: func() { f.logErr = nil }}, out},
		Alone:   Answer{Leave: true, do: func() { f.err = &worded{Why(f.Language(), f.logErr) + "; " + f.Language().Flow.NoLogFlag, f.logErr} }}}
}

// oldAfter is how old a run that did not end must be for logging it to be
// offered before resuming it: it belongs to another day.
const oldAfter = 24 * time.Hour

// askUnfinished asks what is to become of a run that did not end.
func (f *Flow) askUnfinished(r *journal.Run) *Ask {
	done, of := setsDone(r)
	now := f.now()
	q := &Ask{Title: f.Language().Flow.Unfinished, Text: []string{
		f.Language().Flow.Begun(f.Language().Title(r.Title()), f.when(r.Start), done, of)}}
	if r.Rehearsal() {
		q.Title = f.Language().Flow.UnfinishedRehearsal
	}
	settle := func(do func() error) func() {
		return func() { f.trouble = do(); f.unfinished = f.unfinished[1:] }
	}
	asIs := Answer{Key: "l", Label: f.Language().Flow.LogAsIs, do: settle(func() error { return f.closeAsIs(r) })}
	on := Answer{Key: "g", Label: f.Language().Flow.GoOnFrom, do: func() { f.goOn(r) }}
	q.Answers = []Answer{on, asIs}
	if why := f.cannotGoOn(r); why != "" {
		q.Text = append(q.Text, why)
		q.Answers = []Answer{asIs}
	} else if now.Sub(r.Start) > oldAfter {
		q.Text = append(q.Text, f.Language().Flow.OldRun)
		q.Answers = []Answer{asIs, on}
	}
	q.Answers[0].Enter = true
	later := Answer{Key: "n", Label: f.Language().Flow.Later, do: settle(func() error { return nil })}
	q.Answers = append(q.Answers, later, f.leave())
	q.Alone, q.Hint = later, f.Language().Flow.OfferHint
	return q
}

// cannotGoOn says why r cannot be resumed, or nothing if it can. A
// rehearsal stays one and a real run stays real.
func (f *Flow) cannotGoOn(r *journal.Run) string {
	if _, err := Resume(r); err != nil {
		return f.Language().Flow.CannotGoOn(Why(f.Language(), err))
	}
	switch now := f.opts.speed(); {
	case r.Rehearsal() && now != r.Started.Speed:
		return f.Language().Flow.IsRehearsal(r.Started.Speed)
	case !r.Rehearsal() && now != 1:
		return f.Language().Flow.IsReal
	}
	return ""
}

// goOn makes r the run to resume. Other runs that did not end wait for
// another start.
func (f *Flow) goOn(r *journal.Run) {
	re, err := Resume(r)
	if err != nil {
		f.trouble = err
		return
	}
	f.Choose(re.Plan, nil)
	f.resume = re
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
	f.unrated = f.toAsk(f.lacking(f.log.Runs))
	return nil
}

// askCautions says what a player is told before the first run.
func (f *Flow) askCautions() *Ask {
	return &Ask{Title: f.Language().Flow.FirstSession, Text: f.Language().Cautions(),
		Answers: []Answer{{Key: "enter", Label: f.Language().Flow.Read, Enter: true, do: f.cautioned}, f.leave()},
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
	q := &Ask{Title: s.Title, Text: s.Text, Answers: []Answer{{Key: "enter", Label: f.Language().Flow.Start, Enter: true, do: said}}}
	if s.Only != nil {
		q.Answers = append(q.Answers, Answer{Key: "w", Label: s.Label, do: func() { f.resume = nil; f.Choose(nil, nil); f.only = s.Only }})
	}
	q.Answers = append(q.Answers, f.leave())
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
func (f *Flow) when(at time.Time) string {
	now := f.now()
	at = at.In(now.Location())
	clock, l := at.Format("15:04"), f.Language()
	switch n := units.DateOf(now) - units.DateOf(at); {
	case n == 0:
		return l.Flow.TodayAt(clock)
	case n == 1:
		return l.Flow.YesterdayAt(clock)
	}
	return l.Flow.DateAt(l.Date(units.DateOf(at)), clock)
}
