package compose

import (
	"errors"
	"reflect"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/settings"
	"coldfloor/sessions"
)

var given = Answers{Level: sessions.Beginner, Length: 30 * time.Minute, Room: settings.Room{Along: 4000, Across: 1500, Ceiling: 2400}}

func TestAsk(t *testing.T) {
	var out strings.Builder
	a, err := Ask(strings.NewReader("intermediat\nintermediate\n5\n20\n\nvertical, lateral\n"), &out, given)
	if err != nil {
		t.Fatal(err)
	}
	want := Answers{Level: sessions.Intermediate, Length: 20 * time.Minute, Room: given.Room, Train: []Quality{Vertical, Lateral}}
	if !reflect.DeepEqual(a, want) {
		t.Errorf("got %+v, want %+v", a, want)
	}
	for _, text := range []string{"did you mean intermediate?", "is not between 10 min and 1 h", "[4m x 1.5m x 2.4m]"} {
		if !strings.Contains(out.String(), text) {
			t.Errorf("no %q in\n%s", text, out.String())
		}
	}
}

func TestAskUnanswered(t *testing.T) {
	if _, err := Ask(strings.NewReader("beginner\n"), &strings.Builder{}, given); !errors.Is(err, ErrNoAnswer) {
		t.Errorf("got %v", err)
	}
}

func TestParseMinutes(t *testing.T) {
	for text, want := range map[string]time.Duration{"25": 25 * time.Minute, "25m": 25 * time.Minute, "1h": time.Hour, "12m30s": 12*time.Minute + 30*time.Second} {
		if got, err := ParseMinutes(text); err != nil || got != want {
			t.Errorf("%q gave %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "9", "61", "2h", "-5", "soon", "9999999999"} {
		if got, err := ParseMinutes(text); err == nil {
			t.Errorf("%q gave %v", text, got)
		}
	}
}
