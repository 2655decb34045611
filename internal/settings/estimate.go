package settings

import (
	"fmt"
	"math"
	"time"

	"coldfloor/internal/units"
)

// Figure is a length that was measured, or estimated from published values.
// The zero Figure is "not known".
type Figure struct {
	Length    units.Length
	Estimated bool
	Source    string // how it was estimated and after whom; empty if measured
}

// AssumedHeight is the standing height of a player who gives none, taken tall
// to be safe under a ceiling. Our own, no source.
const AssumedHeight = 2 * units.Metre

// Known reports whether there is a figure at all.
func (f Figure) Known() bool { return f.Length > 0 }

// Ratios of a standing reach to the height.
const (
	// Standing grip reach: Pheasant, Bodyspace, 1996.
	gripRatioMen, gripRatioWomen = 1.185, 1.184
	// Fingertips: computed from the grip reach with a remembered hand length.
	fingertipRatio = 1.25
)

// StandingReach returns how high the fingertips are when standing flat-footed:
// as measured, or about 1.25 times the height.
func (s *Player) StandingReach() Figure {
	switch {
	case s.Reach > 0:
		return Figure{Length: s.Reach}
	case s.Height > 0:
		grip := s.GripReach()
		return Figure{scaled(s.Height, fingertipRatio), true, fmt.Sprintf(
			"fingertips at about 1.25 × height, computed with a remembered hand length from the grip reach, %v = %s", grip.Length, grip.Source)}
	}
	return Figure{}
}

// GripReach returns how high a standing person holds something in the hand:
// 1.185 times the height for men, 1.184 for women (Pheasant, Bodyspace, 1996);
// the larger if the sex is not given. It is never measured.
func (s *Player) GripReach() Figure {
	ratio := gripRatioMen
	if s.Sex == Female {
		ratio = gripRatioWomen
	}
	if s.Height == 0 {
		return Figure{}
	}
	return Figure{scaled(s.Height, ratio), true, fmt.Sprintf("%v × height: Pheasant, Bodyspace, 1996", ratio)}
}

// Mean vertical jump at 21 to 25 years (Patterson & Peterson, Med Sci Sports
// Exerc 2004;36:S114, n = 724).
const (
	meanJumpMen   = 564 * units.Millimetre
	meanJumpWomen = 358 * units.Millimetre
)

// VerticalJump returns the height of a standing vertical jump: as measured, or
// the published mean of young adults, the men's if the sex is not given
// because it asks for more room.
func (s *Player) VerticalJump() Figure {
	const source = "at 21–25 years, Patterson & Peterson, Med Sci Sports Exerc 2004;36:S114"
	switch {
	case s.Jump > 0:
		return Figure{Length: s.Jump}
	case s.Sex == Female:
		return Figure{meanJumpWomen, true, "mean of women " + source}
	case s.Sex == Male:
		return Figure{meanJumpMen, true, "mean of men " + source}
	}
	return Figure{meanJumpMen, true, "mean of men " + source + ", the larger because no sex is given"}
}

// Median standing broad jump at 11 to 18 years, mm (Res Q Exerc Sport 2015;86
// Suppl 1:S37–44, n = 2,427).
var (
	broadJumpBoys  = [...]units.Length{1470, 1620, 1750, 1860, 1950, 2020, 2070, 2100}
	broadJumpGirls = [...]units.Length{1400, 1439, 1473, 1500, 1521, 1537, 1546, 1550}
)

const broadJumpFirstAge = 11

// StandingBroadJump returns the length of a standing broad jump: as measured,
// or the published median of the age. Outside 11 to 18 years it is the median
// of the nearer age, which a trained adult beats; if the sex is not given
// it is the boys', which asks for more room; if the age is not given, that
// at 18.
func (s *Player) StandingBroadJump(now time.Time) Figure {
	if s.BroadJump > 0 {
		return Figure{Length: s.BroadJump}
	}
	medians, whom := broadJumpBoys[:], "boys"
	if s.Sex == Female {
		medians, whom = broadJumpGirls[:], "girls"
	}
	last := broadJumpFirstAge + len(medians) - 1
	age, ok := s.Age(now)
	if !ok {
		age = last
	}
	age = min(max(age, broadJumpFirstAge), last)
	return Figure{medians[age-broadJumpFirstAge], true,
		fmt.Sprintf("median of %s at %d years, Res Q Exerc Sport 2015;86 Suppl 1:S37–44", whom, age)}
}

// scaled returns ratio times l, rounded to a millimetre.
func scaled(l units.Length, ratio float64) units.Length {
	return units.Length(math.Round(float64(l) * ratio))
}
