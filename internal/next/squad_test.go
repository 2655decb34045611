package next

import (
	"flag"
	"os"
	"reflect"
	"strings"
	"testing"

	"coldfloor/internal/journal"
	"coldfloor/internal/players"
	"coldfloor/internal/settings"
)

var update = flag.Bool("update", false, "rewrite what is kept under testdata; read it before you commit")

// What a coach reads of a squad: one player who did too little, one in pain at
// two places, and one of the list who has logged nothing.
func TestSquad(t *testing.T) {
	plan := planOf(t)
	level, less := 7, 2
	squad := Squad{
		"Ida": {played("2026-12-07", 2, 5, 60), played("2026-12-08", 4, 5, 30)},
		"Mei": {played("2026-12-07", 4, 5, 60, journal.Statement{At: at("2026-12-07"), Pain: yes(), Where: "left knee", Level: &level},
			journal.Statement{At: at("2026-12-07"), Pain: yes(), Where: "right shin", Level: &less})},
	}
	list := []players.Player{{Player: settings.Player{Name: "Ida"}}, {Player: settings.Player{Name: "Noor"}}}
	all, err := squad.Propose(plan, 2, at("2026-12-13"), LimitsOf(settings.Default().Limits), list)
	if err != nil || len(all) != 3 {
		t.Fatal(all, err)
	}
	var got strings.Builder
	if err := Text(&got, plan, all); err != nil {
		t.Fatal(err)
	}
	const file = "testdata/squad.txt"
	want, _ := os.ReadFile(file)
	if got.String() == string(want) {
		return
	}
	if !*update {
		t.Errorf("it differs; got\n%s", got.String())
	} else if err := os.WriteFile(file, []byte(got.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}

// Settings that change nothing give the limits that are documented.
func TestLimitsOfDefaults(t *testing.T) {
	if got := LimitsOf(settings.Default().Limits); !reflect.DeepEqual(got, DefaultLimits) {
		t.Errorf("%+v, want %+v", got, DefaultLimits)
	}
}
