package run

import (
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/internal/voice"
	"coldfloor/sessions/weeks"
	"coldfloor/sound"
	"coldfloor/sound/live"
)

// countIn is how long a player has to get into position for work that is
// resumed, repeated, skipped to or gone back to.
const countIn = 5 * time.Second

// Options says how the runs of one process are done. The zero Options is a
// silent run without a log, of a session that is chosen, by the wall's clock.
type Options struct {
	Plan     *plan.Plan     // the session to run; nil: one is chosen
	Weeks    *journal.Weeks // the plan of weeks and the day that it is for; nil: none
	Season   *weeks.Plan    // that the log is held against; nil: none
	Journal  string         // file; empty: without a log
	Player   settings.Player
	Language *text.Language // of what the player sees and hears; nil: English
	Speed    float64        // of the clock, above 0; 0 is 1, the wall's
	ByHand   bool           // every set with reps waits for a key
	NoKeys   bool           // there is no keyboard: no set waits for a key, and a run whose machine was away goes on by itself
	Seed     uint64         // of the calls; 0: one is drawn

	Device *live.Options // of the sound; nil: there is none
	Muted  bool          // the sound is off at the start
	Cues   sound.Options // what is heard besides the cues; who waits for a key is filled in
	Voice  *voice.Voice  // what is spoken; nil: nothing

	// Before says what a player must be told before p starts, in this order and
	// on one screen with the session's own notes; the last Only counts.
	Before []Notice
	// Again says what a player must be told before a run that did not end is
	// resumed, of that plan and with those runs in the log; nil: nothing.
	Again func(r *journal.Run, p *plan.Plan, runs []*journal.Run) *Say

	Clock func(speed float64) Clock // nil: NewSystem
}

// Notice returns what is to be said before a run of p, given the runs of the
// log, the earliest first; nil if there is nothing to say.
type Notice func(p *plan.Plan, runs []*journal.Run) *Say

// Say is something that a player is told before a run starts, with the choice
// to start or to leave.
type Say struct {
	Title string
	Text  []string // paragraphs

	Only  func(*plan.Plan) bool // which sessions may be chosen in its place, such as those without jumps; nil: nothing is offered
	Label string                // of that choice, such as "choose one without jumps"
}

// clock returns a clock that starts now.
func (o *Options) clock(speed float64) Clock {
	if o.Clock != nil {
		return o.Clock(speed)
	}
	return NewSystem(speed)
}

// language returns what the player sees and hears.
func (o *Options) language() *text.Language {
	if o.Language == nil {
		return &text.English
	}
	return o.Language
}

// speed returns the clock's speed.
func (o *Options) speed() float64 {
	if o.Speed == 0 {
		return 1
	}
	return o.Speed
}
