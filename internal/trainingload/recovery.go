package trainingload

import "time"

// Recovery is how long ago a player last jumped, and when the interval that is
// kept between two sessions with foot contacts is up.
type Recovery struct {
	Since    time.Duration // since the end of the last jumps; below 0 if they lie ahead
	Earliest time.Time     // the shorter interval is up
	Full     time.Time     // the longer one is
}

// The interval between two plyometric sessions: 48 to 72 hours (NSCA, Essentials
// of Strength Training and Conditioning, chapter on plyometrics, from memory).
const (
	EarliestAfter = 48 * time.Hour
	FullAfter     = 72 * time.Hour
)

// RecoveryFrom returns the recovery at now from jumps that ended at last, with
// the interval's two ends; the published one is EarliestAfter and FullAfter.
// The hours are real ones: they do not change with summer time.
func RecoveryFrom(last, now time.Time, earliest, full time.Duration) Recovery {
	return Recovery{Since: now.Sub(last), Earliest: last.Add(earliest), Full: last.Add(full)}
}
