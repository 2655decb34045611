package sessions

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coldfloor/internal/yamlread"

	"github.com/rogpeppe/go-internal/txtar"
)

var update = flag.Bool("update", false, "write the golden files anew")

// archive reads an archive of session files under testdata.
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
		if _, err := Parse(f.Name, f.Data); err != nil {
			t.Errorf("%v", err)
		}
	}
}

// TestInvalid holds everything that is said about each wrong file against the
// archive it stands in.
func TestInvalid(t *testing.T) {
	a := archive(t, "invalid.txtar")
	anew := &txtar.Archive{Comment: a.Comment}
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
		s, err := Parse(f.Name, f.Data)
		var problems yamlread.Problems
		if s != nil || !errors.As(err, &problems) || len(problems) == 0 {
			t.Errorf("%s: Parse = %v, %v; want problems", f.Name, s, err)
			continue
		}
		got := problems.Error() + "\n"
		if want := said[name+".txt"]; got != want && !*update {
			t.Errorf("%s says\n%swant\n%s", f.Name, got, want)
		}
		anew.Files = append(anew.Files, f, txtar.File{Name: name + ".txt", Data: []byte(got)})
	}
	if *update {
		if err := os.WriteFile(filepath.Join("testdata", "invalid.txtar"), txtar.Format(anew), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
