package measured

import "math"

// MinFreedom is the least degrees of freedom of a typical error that anything
// is said from: two days of three tries have four. Our own choice; a group's
// typical error is trusted from some 50 people with three trials on (Hopkins,
// Sports Med 2000;30:1–15).
const MinFreedom = 4

// Error is a typical error: the standard deviation of single tries about their
// day's mean, in the unit of the tries. It leaves out how a player changes from
// day to day.
type Error struct {
	SD        float64
	Freedom   int     // tries less days
	Low, High float64 // the interval that holds the true one with 95 %
}

// Enough reports whether there are tries enough to go by.
func (e Error) Enough() bool { return e.Freedom >= MinFreedom && e.SD > 0 }

// Typical returns the typical error of a series, pooled over its days but the
// first.
func (s *Series) Typical() Error { return typical(s) }

// typical pools the typical error over the days of some series, the first day
// of each left out.
func typical(all ...*Series) Error {
	var e Error
	squares := 0.0
	for _, s := range all {
		days, _ := s.counting()
		for _, d := range days {
			mean, _ := d.Mean()
			for _, x := range d.Tries {
				squares += (x - mean) * (x - mean)
			}
			e.Freedom += len(d.Tries) - 1
		}
	}
	if e.Freedom == 0 {
		return e
	}
	e.SD = math.Sqrt(squares / float64(e.Freedom))
	e.Low, e.High = e.SD/math.Sqrt(meanSquare(e.Freedom, z95)), e.SD/math.Sqrt(meanSquare(e.Freedom, -z95))
	return e
}

// z95 is the normal deviate that 2.5 % lie above.
const z95 = 1.96

// meanSquare returns the quantile of χ²/n with n degrees of freedom at a normal
// deviate, by the cube root of Wilson and Hilferty (Proc Natl Acad Sci
// 1931;17:684–688), from memory. From 4 on it is within 8 % of the exact one, and
// its root within 4 %.
func meanSquare(n int, z float64) float64 {
	a := 2 / (9 * float64(n))
	c := max(1-a+z*math.Sqrt(a), 0.01)
	return c * c * c
}

// Least returns the least difference of two means, of k1 and k2 tries, that a
// single try's error explains in no more than 5 % of cases:
// 1.96·TE·√(1/k1 + 1/k2) (Hopkins, Sports Med 2000;30:1–15, the means' square
// roots put in).
func Least(te float64, k1, k2 int) float64 { return z95 * spread(te, k1, k2) }

// spread is the standard error of the difference of two means.
func spread(te float64, k1, k2 int) float64 {
	return te * math.Sqrt(1/float64(k1)+1/float64(k2))
}

// Change is what became of a series since the first day that counts.
type Change struct {
	From, To *Day
	By       float64 // the mean of To less that of From
	Error    Error   // of a single try
	Least    float64 // detectable, by the player's own tries
}

// Detectable reports whether the change is more than the tries' own error.
func (c *Change) Detectable() bool { return math.Abs(c.By) > c.Least }

// Lack says why nothing can be said of a change; the empty Lack is "it does".
type Lack string

// What can be lacking.
const (
	NoTries   Lack = "no try that counts yet"
	FirstDay  Lack = "the first day is learning and counts for nothing: test on two more days"
	SecondDay Lack = "one day counts so far: test on one more"
	FewTries  Lack = "too few tries to know the error of one: do three on each day"
)

// Change returns the change from the first day that counts to the latest one,
// or what is lacking for it. The error comes back even so.
func (s *Series) Change() (Change, Lack) {
	days, begun := s.counting()
	c := Change{Error: s.Typical()}
	switch {
	case !begun:
		return c, NoTries
	case len(days) == 0:
		return c, FirstDay
	case len(days) == 1:
		return c, SecondDay
	}
	c.From, c.To = days[0], days[len(days)-1]
	from, _ := c.From.Mean()
	to, _ := c.To.Mean()
	c.By = to - from
	if !c.Error.Enough() {
		return c, FewTries
	}
	c.Least = Least(c.Error.SD, len(c.From.Tries), len(c.To.Tries))
	return c, ""
}

// Chances is how likely it is that the true change is at least worthwhile, is
// less than that either way, or is at least as much the other way. They add up
// to 1.
type Chances struct{ More, Trivial, Less float64 }

// Chances returns the chances of a change that has an Error, by a normal
// distribution about what was seen; worthwhile is the smallest change that
// matters, above 0, in the unit of the tries. For one person alone no table
// gives it: the coach does.
func (c *Change) Chances(worthwhile float64) Chances {
	return chances(c.By, spread(c.Error.SD, len(c.From.Tries), len(c.To.Tries)), worthwhile)
}

func chances(by, err, worthwhile float64) Chances {
	more := normal((by - worthwhile) / err)
	less := normal((-by - worthwhile) / err)
	return Chances{More: more, Trivial: max(0, 1-more-less), Less: less}
}

// normal returns the part of the standard normal distribution below z.
func normal(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }
