package units

import (
	"cmp"
	"math"
	"slices"
	"strconv"
)

// mostDecimals is enough to tell apart the percentages of any two counts of things
// done.
const mostDecimals = 9

// Percent writes a part of a whole: in whole percent, or with as many decimals as
// it takes to stand on the same side of every limit as the part does, so that
// nobody reads 20 % beside "over 20 %". None and all of it are limits too.
func Percent(part float64, limits ...float64) string {
	limits = append(slices.Clip(limits), 0, 1)
	for decimals := 0; ; decimals++ {
		scale := math.Pow10(decimals)
		shown := math.Round(part*100*scale) / scale
		other := slices.ContainsFunc(limits, func(limit float64) bool {
			return cmp.Compare(shown/100, limit) != cmp.Compare(part, limit)
		})
		if !other || decimals == mostDecimals {
			return strconv.FormatFloat(shown, 'f', decimals, 64) + " %"
		}
	}
}
