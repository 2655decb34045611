package run

import (
	"errors"
	"slices"
	"time"

	"coldfloor/internal/cautions"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/text"
	"coldfloor/sound/live"
)

// Flow leads from the start of the program to a run. It settles, in this order,
// a log that cannot be written, runs that did not end, effort that was not said,
// which session is run, the cautions, and what must be said of that session. It
// is not safe for concurrent use.
type Flow struct {
	opts Options
	log  Log

	logErr     error          // why there is no log; nil once that is settled
	trouble    error          // what went wrong with an answer
	unfinished []*journal.Run // still to be settled, the latest first
	unrated    []*journal.Run // effort still to be asked for, the earliest first
	putOff     *journal.Run   // not asked for again; nil: none

	plan   *plan.Plan
	weeks  *journal.Weeks
	resume *Resumption           // to be resumed; nil: a new run
	calm   bool                  // the cautions were read, or need not be shown
	only   func(*plan.Plan) bool // which sessions may be chosen; nil: all
	say    *Say                  // still to be said of the plan; nil: nothing
	noted  bool                  // say is filled in
	left   bool
	err    error // why it was left

	open  []*Active
	sound *live.Sound // shared by all runs, for a device is slow to open; nil before it is opened
}

// Need is what a Flow needs next. Exactly one field is set.
type Need struct {
	Ask    *Ask         // to be shown and answered, with Answer
	Rate   *journal.Run // a form for a run whose effort was not said: then Rate, RateLater or NotAsked
	Choose bool         // a session, with Choose
	Start  bool         // Start
	Leave  bool         // the end of the program; Err says why if something went wrong
}

// NewFlow returns a Flow that has not been opened.
func NewFlow(o Options) *Flow {
	return &Flow{opts: o, plan: o.Plan, weeks: o.Weeks}
}

// Open reads the journal, which may take a while. It is called once, before
// everything but OpenSound.
func (f *Flow) Open() {
	if f.opts.Journal == "" {
		return
	}
	if f.logErr = f.openLog(); f.logErr != nil {
		return
	}
	f.unfinished = f.log.Unfinished
	f.unrated = f.toAsk(f.lacking(f.log.Runs))
}

// Runs returns the runs of the log that matter before a start, the earliest
// first: those of a year or more, and the last one of the player.
func (f *Flow) Runs() []*journal.Run { return f.log.Runs }

// Plan returns the plan of the run that is to start: nil before it is chosen.
func (f *Flow) Plan() *plan.Plan { return f.plan }

// Language returns the language of what the player sees and hears.
func (f *Flow) Language() *text.Language { return f.opts.language() }

// Called returns a run's title and when it was, as a player reads it.
func (f *Flow) Called(r *journal.Run) string {
	return f.Language().Title(r.Title()) + ", " + f.when(r.Start)
}

// Logged reports whether what is done is kept in a journal.
func (f *Flow) Logged() bool { return f.log.Journal != nil }

// Err returns what made the flow leave, or nil if the player did.
func (f *Flow) Err() error { return f.err }

// now returns the wall time.
func (f *Flow) now() time.Time { return f.opts.clock(1).Wall() }

// Next returns what is needed next.
func (f *Flow) Next() Need {
	switch {
	case f.left:
		return Need{Leave: true}
	case f.trouble != nil:
		return Need{Ask: f.askTrouble()}
	case f.logErr != nil:
		return Need{Ask: f.askWithoutLog()}
	case len(f.unfinished) > 0:
		return Need{Ask: f.askUnfinished(f.unfinished[0])}
	case len(f.unrated) > 0:
		return Need{Rate: f.unrated[0]}
	case f.plan == nil:
		return Need{Choose: true}
	case !f.calm && !cautions.WereRead(f.opts.Player.Name):
		return Need{Ask: f.askCautions()}
	}
	if say := f.toSay(); say != nil {
		return Need{Ask: f.askNote(say)}
	}
	return Need{Start: true}
}

// Choose makes p the session to run. Weeks says for which day of a plan of weeks,
// if it is for one.
func (f *Flow) Choose(p *plan.Plan, weeks *journal.Weeks) {
	f.plan, f.weeks, f.only = p, weeks, nil
	f.say, f.noted = nil, false
}

// Narrowed reports whether only some sessions may be chosen, as the player asked.
func (f *Flow) Narrowed() bool { return f.only != nil }

// Offered reports whether p is among the sessions that may be chosen.
func (f *Flow) Offered(p *plan.Plan) bool { return f.only == nil || f.only(p) }

// Rate logs what the player said of the run that Next asked about. If that
// fails the run is asked about again.
func (f *Flow) Rate(r journal.Rating) error {
	if len(f.unrated) == 0 {
		return nil
	}
	if !r.Empty() {
		if err := f.log.Journal.Amend(f.unrated[0].ID, journal.Line{Event: journal.EventRating, Rating: &r}); err != nil {
			return err
		}
	}
	if r.RPE == nil {
		f.RateLater()
		return nil
	}
	f.NotAsked()
	return nil
}

// RateLater leaves the run that Next asked about unrated. It is not asked about
// again at another start.
func (f *Flow) RateLater() {
	if len(f.unrated) > 0 {
		rememberPutOff(f.unrated[0].ID)
	}
	f.NotAsked()
}

// NotAsked leaves the run that Next asked about for another start, for nobody
// was there to answer.
func (f *Flow) NotAsked() { f.unrated = f.unrated[min(1, len(f.unrated)):] }

// toSay returns what is still to be said of the session, all of it together. A
// run that is resumed has been through it, except for what is new.
func (f *Flow) toSay() *Say {
	if f.noted {
		return f.say
	}
	f.noted = true
	if f.resume != nil {
		if f.opts.Again != nil {
			f.say = f.opts.Again(f.resume.Run, f.plan, f.log.Runs)
		}
		return f.say
	}
	for _, n := range append(slices.Clone(f.opts.Before), f.ownNotes) {
		say := n(f.plan, f.log.Runs)
		switch {
		case say == nil:
		case f.say == nil:
			f.say = say
		default:
			f.say.Text = append(f.say.Text, say.Text...)
			if say.Only != nil {
				f.say.Only, f.say.Label = say.Only, say.Label
			}
		}
	}
	return f.say
}

// ownNotes says what the session's file has to say before it starts.
func (f *Flow) ownNotes(p *plan.Plan, _ []*journal.Run) *Say {
	s := f.Language().Session(p.Session)
	say := &Say{Title: s.Title}
	if s.Note != "" {
		say.Text = append(say.Text, s.Note)
	}
	for _, b := range s.Blocks {
		if b.Note != "" {
			say.Text = append(say.Text, b.Title+": "+b.Note)
		}
	}
	if len(say.Text) == 0 {
		return nil
	}
	return say
}

// rateWithin is how long after its end a run is still asked about.
const rateWithin = 24 * time.Hour

// lacking returns the player's own runs whose effort may still be said.
func (f *Flow) lacking(runs []*journal.Run) []*journal.Run {
	since := f.now().Add(-rateWithin)
	return slices.DeleteFunc(slices.Clone(runs), func(r *journal.Run) bool {
		return r.Rating.RPE != nil || r.State == journal.Unfinished || !r.Counts() || r.Started == nil ||
			r.Started.Player != f.opts.Player.Name || r.Start.Add(r.Elapsed).Before(since)
	})
}

// worked reports whether anything was done in r.
func worked(r *journal.Run) bool {
	return slices.ContainsFunc(r.Sets, func(s journal.Set) bool { return s.Outcome != journal.Skipped })
}

// OpenSound begins to open the sound device, so that it is there when a run
// begins, and returns at once; a second call does nothing. From then on what is
// written to standard error may be lost until Close.
func (f *Flow) OpenSound() {
	if f.sound == nil && f.opts.Device != nil {
		f.sound = live.New(*f.opts.Device)
	}
}

// Close closes every run and lets the sound end. It is to be called however the
// program ends; a second call does nothing. The error tells what of the log is
// not on the disk.
func (f *Flow) Close() error {
	var errs []error
	for _, a := range f.open {
		errs = append(errs, f.inWords(a.close()))
	}
	f.open = nil
	if f.sound != nil {
		f.sound.Close()
		f.sound = nil
	}
	return errors.Join(errs...)
}
