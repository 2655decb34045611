// Package transcripttest plays the transcripts that a package keeps under
// testdata: what was done in a session, and all that came of it.
package transcripttest

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
)

// Update is the flag that rewrites what a package keeps under testdata.
var Update = flag.Bool("update", false, "rewrite what is kept under testdata; read it before you commit")

// Each runs a subtest for every transcript.
func Each(t *testing.T, f func(t *testing.T, ar *txtar.Archive)) {
	t.Helper()
	each(t, func(t *testing.T, _ string, kept []byte) { f(t, txtar.Parse(kept)) })
}

// Play plays every transcript, and holds what it is then against what is kept,
// or keeps it with -update. Now returns a transcript as it is now.
func Play(t *testing.T, now func(t *testing.T, ar *txtar.Archive) *txtar.Archive) {
	t.Helper()
	each(t, func(t *testing.T, file string, kept []byte) {
		text := txtar.Format(now(t, txtar.Parse(kept)))
		switch {
		case bytes.Equal(text, kept):
		case !*Update:
			t.Errorf("it differs; got\n%s", text)
		default:
			if err := os.WriteFile(file, text, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	})
}

// each runs a subtest for every transcript, with its path from the root, which
// holds in whatever folder the test goes to.
func each(t *testing.T, f func(t *testing.T, file string, kept []byte)) {
	t.Helper()
	folder, err := filepath.Abs("testdata")
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob(filepath.Join(folder, "*.txt"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no transcripts: %v", err)
	}
	for _, file := range files {
		kept, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) { f(t, file, kept) })
	}
}
