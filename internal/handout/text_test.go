package handout

import (
	"strings"
	"testing"

	"coldfloor/internal/fault"
)

// What was handed out is said player by player, and what kept the rest from
// it, with no control character of a name.
func TestText(t *testing.T) {
	var got strings.Builder
	err := Text(&got, []Given{
		{Folder: "all", Kept: 3},
		{Player: "Ida\x1b[2J", Folder: "ida", Written: []string{"week-1.pdf"}, Kept: 2, Err: fault.New("free some room", "the disk is full")},
	})
	want := "all: 0 files written, 3 unchanged\nIda\uFFFD[2J, ida: 1 file written, 2 unchanged\n" +
		"  not all of it: the disk is full\n  hint: free some room\n"
	if err != nil || got.String() != want {
		t.Errorf("%v, got\n%swant\n%s", err, got.String(), want)
	}
}
