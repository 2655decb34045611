package runs

import "math"

// InOnePart has every journal read in one part while do runs.
func InOnePart(do func()) {
	least := leastPart
	defer func() { leastPart = least }()
	leastPart = math.MaxInt64
	do()
}
