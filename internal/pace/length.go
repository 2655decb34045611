package pace

import (
	"math"
	"math/rand/v2"
	"slices"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/units"
)

// Part is what part of sessions the range of an Estimate is to hold.
const Part = 0.8

// draws is the number of sessions that are made up for a range. The ends are
// then sure to about a thirtieth of its width.
const draws = 2000

// Estimate is how long a session takes a player. Everything but the sets of
// reps takes its prescribed length.
type Estimate struct {
	Prescribed time.Duration
	Yours      time.Duration // half of the sessions take less; as prescribed if Own is empty
	Low, High  time.Duration // four sessions of five lie between, and so does Yours; equal to it if Own is empty
	Own        []Rep         // exercises of the plan with enough to go by
	Lacking    []Rep         // exercises of the plan with reps and too little; they count as prescribed
	Sets       int           // of Own
	Sessions   int           // that those sets are from
}

// Enough reports whether any exercise of the plan had enough to go by. Without,
// Yours says nothing.
func (e Estimate) Enough() bool { return len(e.Own) > 0 }

// work is the sets of one exercise of a plan that has a pace.
type work struct {
	days  []daySets // those that count
	mean  float64   // of the days' means, seconds a rep
	wide  float64   // makes the spread of so few days that of all
	steps []plan.Step
}

// Length estimates how long a plan takes.
//
// The length and its range are the median and the tenths of sessions that are
// made up, so that the one lies within the other. Each takes one past session at
// random and draws its sets' lengths from that session's, so that a slow day is
// slow throughout; an exercise not done that day draws a day of its own. As the
// past is only a sample, each made-up session shifts an exercise by how far the
// mean of as many days drawn again lies off, and spreads the days by √(n/(n−1)).
// A set that the clock ends lasts no longer than it is prescribed.
func (t *Table) Length(p *plan.Plan) Estimate {
	e := Estimate{Prescribed: p.Total}
	works := t.works(p, &e)
	if len(works) == 0 {
		e.Yours, e.Low, e.High = p.Total, p.Total, p.Total
		return e
	}
	fixed := p.Total.Seconds()
	for _, w := range works {
		for _, s := range w.steps {
			fixed -= s.Length.Seconds()
		}
	}
	runs := runsOf(works)
	e.Sessions = len(runs)
	rnd := rand.New(rand.NewPCG(1, uint64(len(runs))))
	made := make([]float64, draws)
	for i := range made {
		made[i] = fixed
		day := runs[rnd.IntN(len(runs))]
		for _, w := range works {
			made[i] += w.draw(rnd, day)
		}
	}
	slices.Sort(made)
	tail := (1 - Part) / 2
	e.Yours, e.Low, e.High = units.Seconds(quantile(made, .5)), units.Seconds(quantile(made, tail)), units.Seconds(quantile(made, 1-tail))
	return e
}

// works returns the exercises of p with enough to go by, and fills in what e
// says of all exercises.
func (t *Table) works(p *plan.Plan, e *Estimate) []*work {
	var order []key
	steps := map[key][]plan.Step{}
	for i, s := range p.Steps {
		if s.Kind != plan.Work || s.Reps == 0 {
			continue
		}
		k := key{name: fold(s.Name), rep: p.Exercise(i).Rep.Round(time.Millisecond)}
		if steps[k] == nil {
			order = append(order, k)
		}
		steps[k] = append(steps[k], s)
	}
	var all []*work
	for _, k := range order {
		r := Rep{Name: steps[k][0].Name, Prescribed: k.rep}
		if x := t.exercises[k]; x != nil {
			r = x.rep(k)
		}
		if !r.Enough() {
			e.Lacking = append(e.Lacking, r)
			continue
		}
		e.Own = append(e.Own, r)
		e.Sets += r.Sets
		all = append(all, workOf(t.exercises[k], steps[k]))
	}
	return all
}

// workOf returns the work of an exercise that has enough to go by.
func workOf(x *exercise, steps []plan.Step) *work {
	w := &work{steps: steps}
	for _, d := range x.days {
		if steps[0].ByHand {
			d.clock = nil // the clock will end none
		}
		if len(d.own)+len(d.clock) == 0 {
			continue
		}
		w.days = append(w.days, d)
		w.mean += d.mean()
	}
	n := float64(len(w.days))
	w.mean, w.wide = w.mean/n, math.Sqrt(n/(n-1))
	return w
}

func (d *daySets) mean() float64 {
	sum := 0.0
	for _, x := range d.own {
		sum += x
	}
	for _, x := range d.clock {
		sum += x
	}
	return sum / float64(len(d.own)+len(d.clock))
}

// draw returns the length of the work in a made-up session like that of run.
func (w *work) draw(rnd *rand.Rand, run string) float64 {
	i := slices.IndexFunc(w.days, func(d daySets) bool { return d.run == run })
	if i < 0 {
		i = rnd.IntN(len(w.days))
	}
	again := 0.0
	for range w.days {
		again += w.days[rnd.IntN(len(w.days))].mean()
	}
	d := &w.days[i]
	shift := w.wide * (again/float64(len(w.days)) - w.mean + d.mean() - w.mean)
	sum := 0.0
	for _, s := range w.steps {
		k := rnd.IntN(len(d.own) + len(d.clock))
		x := 0.0
		if k < len(d.own) {
			x = d.own[k]
		} else {
			x = d.clock[k-len(d.own)]
		}
		sum += lasts(s, w.mean+shift+x-d.mean())
	}
	return sum
}

// lasts returns how long a step lasts with reps of that length, in seconds.
func lasts(s plan.Step, rep float64) float64 {
	length := max(rep, 0) * float64(s.Reps)
	if !s.ByHand {
		return min(length, s.Length.Seconds())
	}
	return length
}

// runsOf returns the sessions that any of the works has sets of.
func runsOf(works []*work) []string {
	var runs []string
	for _, w := range works {
		for _, d := range w.days {
			if !slices.Contains(runs, d.run) {
				runs = append(runs, d.run)
			}
		}
	}
	return runs
}
