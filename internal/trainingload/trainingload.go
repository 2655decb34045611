// Package trainingload computes training load from what a player said of the effort:
// session load, the week's monotony and strain, and an exponentially weighted
// average.
//
// The figures compare a player with themselves over time. None has a limit
// that holds for everybody, and so this package knows none. The ratio of a
// short average to a long one is left out: its two terms share their data, and
// no causal evidence stands behind it (Lolli et al., Br J Sports Med
// 2019;53:921; Impellizzeri et al., Sports Med 2020, doi
// 10.1007/s40279-020-01378-6).
package trainingload

import (
	"math"
	"time"
)

// Session returns the load of one session in arbitrary units: session-RPE,
// from 0 to 10, times its minutes (Foster et al., J Strength Cond Res
// 2001;15:109–115).
func Session(rpe float64, length time.Duration) float64 { return rpe * length.Minutes() }

// Week is what seven daily loads come to (Foster, Med Sci Sports Exerc
// 1998;30:1164–1168). A rest day is a load of 0.
//
// SD is that of a sample, with n−1 = 6 below the line. The paper does not say
// which it means; the sample's is what a spreadsheet's plain standard deviation
// gives, so that a coach can follow the figure. With n below the line monotony
// and strain of every week come out √(7/6) = 1.08 times as high: figures of two
// programs compare only if both say which they use.
type Week struct {
	Total float64 // of the week
	Mean  float64 // of a day
	SD    float64 // of the daily loads, n−1
}

// Days in a Week.
const Days = 7

// WeekOf returns what the daily loads of a week come to.
func WeekOf(daily [Days]float64) Week {
	var w Week
	for _, d := range daily {
		w.Total += d
	}
	w.Mean = w.Total / Days
	squares := 0.0
	for _, d := range daily {
		squares += (d - w.Mean) * (d - w.Mean)
	}
	w.SD = math.Sqrt(squares / (Days - 1))
	return w
}

// spread is the least SD, as a part of the mean, that is more than the
// rounding of floating-point sums.
const spread = 1e-9

// Monotony returns the mean of the daily loads divided by their SD: high if the
// days are alike. A week whose days are all alike has none, and neither has one
// of rest.
func (w Week) Monotony() (float64, bool) {
	if w.SD <= spread*w.Mean || w.SD == 0 {
		return 0, false
	}
	return w.Mean / w.SD, true
}

// Strain returns the week's load times its monotony. A week without a monotony
// has none.
func (w Week) Strain() (float64, bool) {
	m, ok := w.Monotony()
	return w.Total * m, ok
}
