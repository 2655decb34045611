package weeks

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coldfloor/internal/fault"
	"coldfloor/internal/yamlread"

	"github.com/rogpeppe/go-internal/txtar"
)

var update = flag.Bool("update", false, "write the golden files again")

func archive(t testing.TB, name string) *txtar.Archive {
	t.Helper()
	a, err := txtar.ParseFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestValid(t *testing.T) {
	for _, f := range archive(t, "valid.txtar").Files {
		if _, err := Parse(f.Name, f.Data, From("testdata")); err != nil {
			t.Errorf("%v", err)
		}
	}
}

// TestInvalid holds everything that is said about each wrong file against the
// archive it stands in.
func TestInvalid(t *testing.T) {
	a := archive(t, "invalid.txtar")
	again := &txtar.Archive{Comment: a.Comment}
	said := map[string]string{}
	for _, f := range a.Files {
		if strings.HasSuffix(f.Name, ".txt") {
			said[f.Name] = string(f.Data)
		}
	}
	for _, f := range a.Files {
		name, ok := strings.CutSuffix(f.Name, ".yaml")
		if !ok {
			continue
		}
		p, err := Parse(f.Name, f.Data, From("testdata"))
		var problems yamlread.Problems
		if p != nil || !errors.As(err, &problems) || len(problems) == 0 {
			t.Errorf("%s: Parse = %v, %v; want problems", f.Name, p, err)
			continue
		}
		got := problems.Error() + "\n"
		if want := said[name+".txt"]; got != want && !*update {
			t.Errorf("%s says\n%swant\n%s", f.Name, got, want)
		}
		again.Files = append(again.Files, f, txtar.File{Name: name + ".txt", Data: []byte(got)})
	}
	if *update {
		if err := os.WriteFile(filepath.Join("testdata", "invalid.txtar"), txtar.Format(again), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// TestTooLarge holds the bound of the file.
func TestTooLarge(t *testing.T) {
	src := []byte("coldfloor: 1\n" + strings.Repeat("# a comment\n", MaxBytes/12))
	if _, err := Parse("large.yaml", src, From(".")); err == nil || !strings.Contains(err.Error(), "larger than 64 KiB") {
		t.Errorf("Parse = %v", err)
	}
}

// TestBuiltins reads every built-in plan.
func TestBuiltins(t *testing.T) {
	for _, b := range Builtins() {
		if _, err := b.Plan(); err != nil {
			t.Error(err)
		}
	}
}

// TestOpenTellsSessionsFromPlans opens each kind by its name and by its path.
func TestOpenTellsSessionsFromPlans(t *testing.T) {
	for name, plan := range map[string]bool{"hallway-power": false, "off-season-six-weeks": true, "testdata/jumps.yaml": false} {
		o, err := Open(name)
		if err != nil || (o.Plan != nil) != plan || (o.Session != nil) == plan {
			t.Errorf("Open(%q) = %v, %v", name, o, err)
		}
	}
	if _, err := Open("off-season-six-week"); fault.Hint(err) != "did you mean off-season-six-weeks?" {
		t.Errorf("Open says %v", fault.Text(err))
	}
}
