package weeks

import (
	"os"
	"path/filepath"
	"testing"

	"coldfloor/internal/fault"
)

// TestNear says what is probably meant by a name that is not there: in a plan a
// session alone, elsewhere a plan as well.
func TestNear(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	session := "coldfloor: 1\ntitle: T\nblocks: [{title: B, exercises: [{name: E, reps: 1}]}]\n"
	for name, src := range map[string]string{
		"quick-legs.yaml": session, "a.yaml": session, "autumn.yaml": "coldfloor: 1\nweeks: 6\ndays: {}\n", "notes.txt": "", "settings.yaml": "name: Ida\nweeks: autumn.yaml\n",
		"squad.yaml": "- {name: Ida}\n", "broken.yaml": "coldfloor: 1\ntitle: [\nblocks:\n", "more/pogo-hops.yml": session,
	} {
		if err := os.MkdirAll(filepath.Dir(name), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(src), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct{ name, inPlan, elsewhere string }{
		{"quick-lgs.yaml", "quick-legs.yaml", "quick-legs.yaml"},
		{"quick-legs", "quick-legs.yaml", "quick-legs.yaml"},
		{"quick-legs.yml", "quick-legs.yaml", "quick-legs.yaml"},
		{"hallway-powr", "hallway-power", "hallway-power"},
		{"hallway-power.yaml", "hallway-power", "hallway-power"},
		{"more/pogo-hop.yml", "more/pogo-hops.yml", "more/pogo-hops.yml"},
		{"autum.yaml", "", "autumn.yaml"},
		{"setings.yaml", "", ""},
		{"sqad.yaml", "", ""},
		{"brokn.yaml", "broken.yaml", "broken.yaml"},
		{"b.yaml", "", ""},
		{"note.txt", "", ""},
		{"nowhere/pogo-hops.yml", "", ""},
	} {
		if got := nearSession(c.name, dir); filepath.ToSlash(got) != c.inPlan {
			t.Errorf("in a plan %s is taken for %q, want %q", c.name, got, c.inPlan)
		}
		if got := Near(c.name); filepath.ToSlash(got) != c.elsewhere {
			t.Errorf("%s is taken for %q, want %q", c.name, got, c.elsewhere)
		}
	}
	for name, want := range map[string]string{
		"quick-lgs.yaml": "there is no file \"quick-lgs.yaml\"\nhint: did you mean quick-legs.yaml?",
		"quick-lgs":      "there is no session called \"quick-lgs\"\nhint: did you mean quick-legs.yaml?",
		"rowing.yaml":    "there is no file \"rowing.yaml\"\nhint: a file is named from the folder of the plan, " + dir,
	} {
		if _, err := From(dir)(name); fault.Text(err) != want {
			t.Errorf("%s: %q, want %q", name, fault.Text(err), want)
		}
	}
}
