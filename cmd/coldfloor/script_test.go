package main

import (
	"flag"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite what the scripts under testdata compare with")

// TestMain lets the scripts call the command by its name.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"coldfloor": main,
	})
}

// TestScripts drives the real command: one script a subject.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       *update,
		Setup:               privateHome,
	})
}

// privateHome keeps a script away from the machine's own settings and journal,
// and in one zone.
func privateHome(e *testscript.Env) error {
	for _, name := range []string{"XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"} {
		e.Setenv(name, e.WorkDir+"/"+name)
	}
	e.Setenv("TZ", "UTC")
	e.Setenv("COLUMNS", "")
	return nil
}
