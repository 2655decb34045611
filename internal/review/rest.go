package review

import (
	"math"
	"slices"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/units"
)

// Tolerance is how far a rest may be off and still count as kept: by Time or
// by Part of the prescribed length, whichever is more.
type Tolerance struct {
	Time time.Duration
	Part float64
}

// DefaultTolerance is our own choice: the time it takes to get into place, and
// no more than nobody would notice of a long rest.
var DefaultTolerance = Tolerance{Time: 3 * time.Second, Part: 0.05}

// Of returns the tolerance of a rest of that length.
func (t Tolerance) Of(prescribed time.Duration) time.Duration {
	return max(t.Time, time.Duration(t.Part*float64(prescribed)))
}

// Verdict is how a rest compares with what was prescribed.
type Verdict string

// The verdicts.
const (
	Kept    Verdict = "kept"
	Early   Verdict = "early"   // the next set began too soon
	Overrun Verdict = "overrun" // it began too late
	Left    Verdict = "left"    // no work followed; it counts for nothing
)

// Judge returns the deviation of a rest from what was prescribed, below 0 if
// it was cut short, and the verdict. Pauses, and a count-in after it, are part of
// the rest taken.
func (t Tolerance) Judge(r *journal.Rest) (deviation time.Duration, v Verdict) {
	deviation = units.Seconds(r.TakenS) - units.Seconds(r.PrescribedS)
	tolerated := t.Of(units.Seconds(r.PrescribedS))
	switch {
	case r.Left:
		return deviation, Left
	case deviation < -tolerated:
		return deviation, Early
	case deviation > tolerated:
		return deviation, Overrun
	}
	return deviation, Kept
}

// Rest is how some rests were kept.
type Rest struct {
	Count, Kept, Early, Overrun int
	Prescribed, Taken           time.Duration // sums
	Deviations                  Deviations
}

// add counts a rest.
func (x *restsOf) add(t Tolerance, rest *journal.Rest) {
	deviation, v := t.Judge(rest)
	switch v {
	case Left:
		return
	case Kept:
		x.kept++
	case Early:
		x.early++
	case Overrun:
		x.overrun++
	}
	x.count++
	x.prescribed += units.Seconds(rest.PrescribedS)
	x.taken += units.Seconds(rest.TakenS)
	step := stepOf(deviation)
	for i := range x.off {
		if x.off[i].step == step {
			x.off[i].n++
			return
		}
	}
	x.off = append(x.off, offBy{step, 1})
}

// take counts the rests of a date of a run.
func (r *Rest) take(x *restsOf) {
	r.Count += x.count
	r.Kept += x.kept
	r.Early += x.early
	r.Overrun += x.overrun
	r.Prescribed += x.prescribed
	r.Taken += x.taken
	for _, o := range x.off {
		r.Deviations.add(o.step, o.n)
	}
}

// Merge counts the rests of s too.
func (r *Rest) Merge(s *Rest) {
	r.Count += s.Count
	r.Kept += s.Kept
	r.Early += s.Early
	r.Overrun += s.Overrun
	r.Prescribed += s.Prescribed
	r.Taken += s.Taken
	r.Deviations.merge(&s.Deviations)
}

// Resolution is what deviations are rounded to before their quantiles are
// taken, which are exact from there on. It bounds their memory: however many
// there are, only so many lengths differ.
const Resolution = 100 * time.Millisecond

// Deviations is the distribution of rest deviations. The zero Deviations is
// empty.
type Deviations struct {
	n      int
	counts map[int32]int32 // by deviation in steps of Resolution
}

// Add counts a deviation.
func (d *Deviations) Add(deviation time.Duration) {
	d.add(stepOf(deviation), 1)
}

// stepOf rounds a deviation to steps of Resolution.
func stepOf(deviation time.Duration) int32 { return int32(deviation.Round(Resolution) / Resolution) }

func (d *Deviations) add(step, n int32) {
	if d.counts == nil {
		d.counts = map[int32]int32{}
	}
	d.counts[step] += n
	d.n += int(n)
}

func (d *Deviations) merge(o *Deviations) {
	for step, n := range o.counts {
		d.add(step, n)
	}
}

// Len returns the number of deviations.
func (d *Deviations) Len() int { return d.n }

// Median returns the median, the mean of the two in the middle if their
// number is even, and false if there are none.
func (d *Deviations) Median() (time.Duration, bool) {
	q := d.quantiles(.5)
	if q == nil {
		return 0, false
	}
	return q[0], true
}

// Middle returns the first and the third quartile, and false if there are
// no deviations.
func (d *Deviations) Middle() (first, third time.Duration, ok bool) {
	q := d.quantiles(.25, .75)
	if q == nil {
		return 0, 0, false
	}
	return q[0], q[1], true
}

// quantiles returns the quantiles at each p by linear interpolation between
// order statistics at p·(n−1), which is what spreadsheets do.
func (d *Deviations) quantiles(p ...float64) []time.Duration {
	if d.n == 0 {
		return nil
	}
	steps := make([]int32, 0, len(d.counts))
	for s := range d.counts {
		steps = append(steps, s)
	}
	slices.Sort(steps)
	at := func(rank int) float64 {
		for _, s := range steps {
			if rank -= int(d.counts[s]); rank < 0 {
				return float64(s)
			}
		}
		return float64(steps[len(steps)-1])
	}
	q := make([]time.Duration, len(p))
	for i, p := range p {
		h := p * float64(d.n-1)
		low := at(int(h))
		high := at(min(int(h)+1, d.n-1))
		q[i] = time.Duration(math.Round((low + (h-math.Floor(h))*(high-low)) * float64(Resolution)))
	}
	return q
}
