package sound

import (
	"iter"
	"slices"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
)

// DefaultPips is how many get-ready pips, a second apart, lead to a start.
const DefaultPips = 3

// MaxPips bounds the pips that may be asked for.
const MaxPips = 10

// RestForTen is how long a rest must be for its last ten seconds to be
// announced: a shorter one would have both its cues within 3 s.
const RestForTen = 13 * time.Second

// beforeEnd is when the end of a rest is announced.
const beforeEnd = 10 * time.Second

// Options says what is heard in a session besides its cues, and which sets
// have no known end.
type Options struct {
	Pips     int  // get-ready pips before a start, 0 to MaxPips
	Clicks   bool // a soft click for each paced rep, lowering and rising apart
	ByHand   bool // every set with reps waits for a key, as in engine.Options
	AllPaced bool // no set waits for a key, as in engine.Options; it wins over ByHand

	Seed   uint64                       // of the calls, as in engine.Options
	Spoken func(direction string) *Clip // the words that call a direction, nil if they are not to be had; nil: tones alone

	// Words, if not nil, returns further clips, such as spoken words, to
	// be placed with the cues, in any order, at times from the view's moment.
	Words func(p *plan.Plan, v engine.View) []Placed
}

// Placed is a clip and when it begins.
type Placed struct {
	At   time.Duration // from the moment the timeline is drawn up for; never negative
	Clip *Clip
}

// Beginning returns the view of a run of p that starts this moment.
func Beginning(p *plan.Plan) engine.View {
	first := p.Steps[0].Length
	return engine.View{Phase: engine.Running, Length: first, Remaining: first, Left: p.Total}
}

// Timeline yields, in order of time, what is to be heard from the moment of v
// on if nobody touches a key. It ends where the future is unknown: at the paced
// end of a set that waits for a key. While the clock stands it yields nothing.
func Timeline(p *plan.Plan, v engine.View, o Options) iter.Seq[Placed] {
	var words []Placed
	if o.Words != nil {
		words = slices.SortedFunc(slices.Values(o.Words(p, v)), byTime)
	}
	return merge(words, func(yield func(Placed) bool) {
		if v.Phase != engine.Running && v.Phase != engine.CountedIn {
			return
		}
		d := drawing{plan: p, opts: o, view: v, yield: yield}
		d.run()
	})
}

// byTime orders placed clips.
func byTime(a, b Placed) int { return int(a.At - b.At) }

// merge yields two ordered sequences as one; of two clips at one time the cue
// comes before the word.
func merge(words []Placed, cues iter.Seq[Placed]) iter.Seq[Placed] {
	if len(words) == 0 {
		return cues
	}
	return func(yield func(Placed) bool) {
		w := words
		for c := range cues {
			for ; len(w) > 0 && w[0].At < c.At; w = w[1:] {
				if !yield(w[0]) {
					return
				}
			}
			if !yield(c) {
				return
			}
		}
		for ; len(w) > 0 && yield(w[0]); w = w[1:] {
		}
	}
}

// drawing draws up one timeline.
type drawing struct {
	plan  *plan.Plan
	opts  Options
	view  engine.View
	yield func(Placed) bool
	step  []Placed // of the step in hand, unordered
}

// run draws the step in hand from its present place, then every later one.
func (d *drawing) run() {
	v := d.view
	from := v.CountIn
	if v.Phase == engine.CountedIn {
		d.countIn(v)
	}
	s := span{start: from - v.Elapsed, end: from + v.Length - v.Elapsed}
	for i := v.Step; ; i++ {
		d.draw(i, s)
		d.clicks(i, s)
		d.calls(i, s)
		slices.SortStableFunc(d.step, byTime)
		for _, c := range d.step {
			if c.At >= from && !d.yield(c) {
				return
			}
		}
		d.step = d.step[:0]
		if d.waits(i) {
			return
		}
		if i+1 == len(d.plan.Steps) {
			d.yield(Placed{s.end, Done})
			return
		}
		s = span{s.end, s.end + v.LengthOf(d.plan, i+1)}
	}
}

// span is when a step starts and ends, from the view's moment.
type span struct{ start, end time.Duration }

// countIn draws the way back into a step: pips and a start if it is work.
// At a step's very start its own cue says what begins.
func (d *drawing) countIn(v engine.View) {
	if d.plan.Steps[v.Step].Kind != plan.Work {
		return
	}
	d.pips(span{-1, v.CountIn})
	if v.Elapsed > 0 {
		d.add(v.CountIn, WorkStarts)
	}
	for _, c := range d.step {
		if !d.yield(c) {
			d.yield = func(Placed) bool { return false }
		}
	}
	d.step = d.step[:0]
}

// draw books the cues that begin and end step i.
func (d *drawing) draw(i int, s span) {
	d.add(s.start, d.startCue(i))
	if d.plan.Steps[i].Kind == plan.Rest && s.end-s.start >= RestForTen {
		d.add(s.end-beforeEnd, TenLeft)
	}
	if d.plan.Steps[i].Kind != plan.Work {
		d.pips(s)
	}
}

// startCue returns the cue that step i begins with, nil for none.
func (d *drawing) startCue(i int) *Clip {
	switch s := d.plan.Steps[i]; s.Kind {
	case plan.Rest:
		return RestStarts
	case plan.Switch:
		return ChangeSide
	case plan.Change:
		return ChangeExercise
	case plan.Work:
		return d.workCue(i)
	}
	return nil
}

// workCue returns the cue of work: what changed if it follows other work
// of the same round with nothing between, the start otherwise.
func (d *drawing) workCue(i int) *Clip {
	if i == 0 || d.plan.Steps[i-1].Kind != plan.Work {
		return WorkStarts
	}
	switch before, s := d.plan.Steps[i-1], d.plan.Steps[i]; {
	case before.Set == s.Set:
		return ChangeSide
	case before.Block != s.Block || before.Exercise != s.Exercise:
		return ChangeExercise
	}
	return WorkStarts
}

// pips books the pips before the end of s, except for those that would fall on
// its start cue or before it.
func (d *drawing) pips(s span) {
	for n := d.opts.Pips; n > 0; n-- {
		if at := s.end - time.Duration(n)*time.Second; at > s.start {
			d.add(at, GetReady)
		}
	}
}

// add books a clip, if there is one.
func (d *drawing) add(at time.Duration, c *Clip) {
	if c != nil {
		d.step = append(d.step, Placed{at, c})
	}
}

// waits reports whether step i ends only by a key.
func (d *drawing) waits(i int) bool {
	return engine.Options{ByHand: d.opts.ByHand, AllPaced: d.opts.AllPaced}.Waits(d.plan.Steps[i])
}
