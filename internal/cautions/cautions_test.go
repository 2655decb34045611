package cautions

import (
	"strings"
	"testing"

	"coldfloor/internal/text"
)

// The signs that common hospital pages on safe exercise name; none may be
// lost in rewording, nor cut off in wrapping.
func TestEverySignIsNamed(t *testing.T) {
	help := strings.Join(strings.Fields(Help()), " ")
	for _, sign := range []string{"chest", "neck", "jaw", "arm", "dizziness", "fainting", "breathlessness", "talking",
		"cold sweat", "irregular heartbeat", "joint", "vision", "not medical advice", "licensed practitioner", "under 18", "Warm up", "floor"} {
		if !strings.Contains(help, sign) {
			t.Errorf("the help does not name %q", sign)
		}
	}
	for _, l := range strings.Split(Help(), "\n") {
		if len(l) > 76 {
			t.Errorf("%d columns: %s", len(l), l)
		}
	}
	if !strings.Contains(text.English.PainNoted(), text.English.Care.Stop) {
		t.Error("noted pain does not name the signs")
	}
}
