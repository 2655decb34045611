//go:build e2e && linux

package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// TestWindowsLongJournal: what is kept beside a long journal is kept again as it
// grows, by a process that reads from it, and made anew when it is damaged.
func TestWindowsLongJournal(t *testing.T) {
	w := newWindows(t)
	file, kept := filepath.Join(w.dir, "j.jsonl"), filepath.Join(w.dir, ".j.jsonl.index")
	years(t, file, 240)
	text := w.read(file)
	half := bytes.LastIndexByte(text[:len(text)/2], '\n') + 1
	w.write("j.jsonl", string(text[:half]))
	list := func() string { return w.coldfloor(0, "log", "--all", "--journal", "j.jsonl") }
	list()
	first := w.read(kept)
	w.write("j.jsonl", string(text))
	want := list()
	whole := w.read(kept)
	if bytes.Equal(whole, first) {
		t.Error("it is not kept again")
	}
	if list() != want {
		t.Error("what is kept says something else than the journal")
	}
	damaged := bytes.Clone(whole)
	damaged[len(damaged)-1] ^= 1
	if err := os.WriteFile(kept, damaged, 0o600); err != nil {
		t.Fatal(err)
	}
	if list() != want {
		t.Error("damage is not passed over")
	}
	if list(); bytes.Equal(w.read(kept), damaged) {
		t.Error("what is damaged is not made anew")
	}
}

// read returns what is in a file.
func (w windows) read(name string) []byte {
	w.t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		w.t.Fatal(err)
	}
	return text
}
