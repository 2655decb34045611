package units

import (
	"fmt"
	"time"
)

// Hours writes a length of time to say how long ago something was, or how long
// it still takes: rounded down, to the hour from ten hours on, else to the
// minute. Whatever shows hours since a session writes them so, so that "48 h"
// never stands for less. A length below 0 is written as 0 min.
func Hours(d time.Duration) string {
	d = max(d, 0)
	h, m := d/time.Hour, d%time.Hour/time.Minute
	switch {
	case h == 0:
		return fmt.Sprintf("%d min", m)
	case h >= 10, m == 0:
		return fmt.Sprintf("%d h", h)
	}
	return fmt.Sprintf("%d h %d min", h, m)
}
