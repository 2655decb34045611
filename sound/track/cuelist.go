package track

import (
	"encoding/csv"
	"io"
	"strconv"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/sound"
)

// WriteCueList writes, as CSV (RFC 4180), the session time in seconds, the
// sample and the name of every clip of p's track.
func WriteCueList(w io.Writer, p *plan.Plan, o sound.Options) error {
	o.AllPaced = true
	c := csv.NewWriter(w)
	c.UseCRLF = true
	if err := c.Write([]string{"time_s", "sample", "name"}); err != nil {
		return err
	}
	for placed := range sound.Timeline(p, sound.Beginning(p), o) {
		if err := c.Write([]string{seconds(placed.At), strconv.Itoa(sound.Position(placed.At)), placed.Clip.Name}); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

// seconds returns t in seconds, with no more digits than it needs.
func seconds(t time.Duration) string {
	return strconv.FormatFloat(t.Seconds(), 'f', -1, 64)
}
