//go:build e2e

package main

import (
	"bytes"
	"fmt"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/journalgen"
)

// SQLite takes the tables as they are, and counts what was made.
func TestExportLoadsIntoSQLite(t *testing.T) {
	sqlite, err := exec.LookPath("sqlite3")
	if err != nil {
		t.Skip("no sqlite3 here")
	}
	squad, tables := t.TempDir(), t.TempDir()
	truth, err := journalgen.Folder(squad, 5, 12, time.Date(2026, 9, 7, 18, 0, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	var stderr bytes.Buffer
	if code := execute([]string{"export", "--csv", "-o", tables, squad}, strings.NewReader(""), &stderr, &stderr); code != exitFine {
		t.Fatalf("exit code %d: %s", code, stderr.String())
	}
	script := ""
	for _, table := range []string{"sessions", "sets", "rests"} {
		script += fmt.Sprintf(".import --csv '%s' %s\n", filepath.ToSlash(filepath.Join(tables, table+".csv")), table)
	}
	script += `
SELECT count(*), sum(contacts_done), sum(pain = 'true'), count(DISTINCT player) FROM sessions;
SELECT count(*), sum(contacts) FROM sets;
SELECT count(*), round(sum(deviation_s), 3) FROM rests JOIN sessions USING (run_id);
`
	c := exec.Command(sqlite, ":memory:")
	c.Stdin = strings.NewReader(script)
	out, err := c.CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	lines := strings.Split(strings.TrimSpace(string(out)), "\n")
	want := []string{fmt.Sprintf("%d|%d|%d|5", truth.Sessions, truth.Contacts, truth.Painful), fmt.Sprintf("%d|%d", truth.Sets, truth.Contacts)}
	if len(lines) != 3 || lines[0] != want[0] || lines[1] != want[1] || !strings.HasPrefix(lines[2], fmt.Sprintf("%d|", truth.Rests)) {
		t.Errorf("sqlite3 says %q, made were %q and %d rests", lines, want, truth.Rests)
	}
}
