package sessions

import (
	"strings"
	"testing"
)

func TestBuiltins(t *testing.T) {
	files, err := builtinFiles.ReadDir("builtin")
	if err != nil || len(files) != len(builtinNames) {
		t.Errorf("%d files are embedded and %d names listed, %v", len(files), len(builtinNames), err)
	}
	for _, b := range Builtins() {
		t.Run(b.Name, func(t *testing.T) {
			s, err := b.Session()
			if err != nil {
				t.Fatal(err)
			}
			if !strings.HasPrefix(string(b.Source), "# yaml-language-server: $schema=session.schema.json\n") {
				t.Error("the first line does not name the schema for editors")
			}
			for _, blk := range s.Blocks {
				for _, e := range blk.Exercises {
					if len(e.Cues) == 0 || e.How == "" || !e.Easier.Given() || e.Floor == (Floor{}) {
						t.Errorf("%s lacks a cue, a how, an easier variant or a floor", e.Name)
					}
				}
			}
		})
	}
}
