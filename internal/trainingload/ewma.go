package trainingload

import "math"

// Spans of the averages that are shown, in days.
const (
	ShortSpan = 7
	LongSpan  = 28
)

// Average is an exponentially weighted moving average of daily loads over a
// span of N days: today's is λ·load + (1−λ)·yesterday's with λ = 2/(N+1)
// (Williams et al., Br J Sports Med 2017;51:209–210). The first day is its own
// average. Every day counts, a rest day with 0.
type Average struct {
	lambda, value float64
	begun         bool
}

// NewAverage returns the average over a span of days; a span is at least 1.
func NewAverage(span int) *Average { return &Average{lambda: 2 / float64(span+1)} }

// Add takes the next day's load and returns the average with it.
func (a *Average) Add(load float64) float64 {
	if !a.begun {
		a.value, a.begun = load, true
		return a.value
	}
	a.value += a.lambda * (load - a.value)
	return a.value
}

// Memory returns after how many days a day weighs less than 1 % in an average
// over that span: 17 over 7 days, 65 over 28.
func Memory(span int) int {
	return int(math.Ceil(math.Log(.01) / math.Log(1-2/float64(span+1))))
}
