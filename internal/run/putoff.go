package run

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/adrg/xdg"

	"coldfloor/internal/journal"
	"coldfloor/internal/wholefile"
)

// putOffFile is where the runs are kept, a name a line, whose effort a player
// was asked for once more and did not say.
func putOffFile() string { return filepath.Join(xdg.StateHome, "coldfloor", "rating-put-off") }

// mostPutOff is how many names are kept: those of runs that are not asked about
// any more can go.
const mostPutOff = 50

// wasPutOff returns the names of the runs that were put off. If that cannot be
// read there are none.
func wasPutOff() []string {
	text, err := os.ReadFile(putOffFile())
	if err != nil {
		return nil
	}
	return strings.Fields(string(text))
}

// rememberPutOff keeps that a run was put off. If that cannot be kept it is
// asked about again.
func rememberPutOff(name string) {
	names := wasPutOff()
	if slices.Contains(names, name) {
		return
	}
	names = append(names, name)
	names = names[max(0, len(names)-mostPutOff):]
	if os.MkdirAll(filepath.Dir(putOffFile()), 0o700) == nil {
		_ = wholefile.Write(putOffFile(), []byte(strings.Join(names, "\n")+"\n"), wholefile.Options{Mode: 0o600, Force: true})
	}
}

// toAsk returns those of runs that were not put off, and keeps the latest of the
// others.
func (f *Flow) toAsk(runs []*journal.Run) []*journal.Run {
	put := wasPutOff()
	return slices.DeleteFunc(runs, func(r *journal.Run) bool {
		if !slices.Contains(put, r.ID) {
			return false
		}
		f.putOff = r
		return true
	})
}

// PutOff returns the latest run of the last day whose effort the player was
// asked for at an earlier start and did not say, or nil: it is not asked for
// again, only named.
func (f *Flow) PutOff() *journal.Run { return f.putOff }
