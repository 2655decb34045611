package plan

import (
	"iter"
	"math/rand/v2"
	"time"

	"coldfloor/sessions"
)

// Call is a direction that is called during a timed set.
type Call struct {
	At        time.Duration // since the step's start
	Gap       time.Duration // until the next one would follow
	Direction int           // index into the exercise's Calls
}

// inBag is how often a shuffled bag holds each direction, and alike how many
// equal ones may follow each other.
const (
	inBag = 2
	alike = 2
)

// Calls yields the directions that are called in step i of a run with a seed,
// when it lasts length: the first one interval after its start, none in its last
// second. A longer length yields the same calls and further ones. The same seed
// always gives the same calls; each step has calls of its own.
func (p *Plan) Calls(i int, seed uint64, length time.Duration) iter.Seq[Call] {
	e := p.Exercise(i)
	if e == nil || p.Steps[i].Kind != Work || len(e.Calls) < 2 {
		return func(func(Call) bool) {}
	}
	return func(yield func(Call) bool) {
		// Two streams, so that another interval leaves the order as it is.
		order := newOrder(len(e.Calls), rand.New(rand.NewPCG(seed, uint64(2*i))))
		gaps := rand.New(rand.NewPCG(seed, uint64(2*i+1)))
		at := draw(e.CallEvery, gaps)
		for at <= length-sessions.CallsEnd {
			c := Call{At: at, Gap: draw(e.CallEvery, gaps), Direction: order.next()}
			if !yield(c) {
				return
			}
			at += c.Gap
		}
	}
}

// HasCalls reports whether directions are called in any step.
func (p *Plan) HasCalls() bool {
	for i := range p.Session.Blocks {
		for j := range p.Session.Blocks[i].Exercises {
			if len(p.Session.Blocks[i].Exercises[j].Calls) > 0 {
				return true
			}
		}
	}
	return false
}

// CallAt returns the latest call at a time since the start of step i, and
// whether there was one.
func (p *Plan) CallAt(i int, seed uint64, length, elapsed time.Duration) (latest Call, ok bool) {
	for c := range p.Calls(i, seed, length) {
		if c.At > elapsed {
			break
		}
		latest, ok = c, true
	}
	return latest, ok
}

// draw draws a time from an interval, in whole milliseconds if it is not fixed.
func draw(i sessions.Interval, rng *rand.Rand) time.Duration {
	if i.Most <= i.Least {
		return i.Least
	}
	return i.Least + time.Duration(rng.Int64N(int64((i.Most-i.Least)/time.Millisecond)+1))*time.Millisecond
}

// order draws directions from shuffled bags.
type order struct {
	rng  *rand.Rand
	bag  []int // of which the first left have not been drawn
	left int
	last int // direction
	run  int // how often it was drawn in a row
}

// newOrder returns the order of so many directions, two at least.
func newOrder(directions int, rng *rand.Rand) *order {
	o := &order{rng: rng, bag: make([]int, 0, inBag*directions)}
	for range inBag {
		for d := range directions {
			o.bag = append(o.bag, d)
		}
	}
	return o
}

// next draws the next direction.
func (o *order) next() int {
	if o.left == 0 {
		o.refill()
	}
	o.left--
	d := o.bag[o.left]
	if o.run++; d != o.last {
		o.last, o.run = d, 1
	}
	return d
}

// refill shuffles the bag until no three alike would follow each other. Half
// of all shuffles or more will do, for a bag holds at least two directions.
func (o *order) refill() {
	o.left = len(o.bag)
	for {
		o.rng.Shuffle(len(o.bag), func(i, j int) { o.bag[i], o.bag[j] = o.bag[j], o.bag[i] })
		if !o.tooMany() {
			return
		}
	}
}

// tooMany reports whether the full bag, drawn now, would bring too many alike.
func (o *order) tooMany() bool {
	last, run := o.last, o.run
	for i := len(o.bag) - 1; i >= 0; i-- {
		if run++; o.bag[i] != last {
			last, run = o.bag[i], 1
		}
		if run > alike {
			return true
		}
	}
	return false
}
