//go:build e2e && linux

package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"coldfloor/internal/journalgen"
)

// The figures that README gives are measured here, each beside a yardstick of
// the same minute, for machines differ and are shared. They are told with -v:
//
//	go test -tags e2e -count=1 -v -run TestFigures ./cmd/coldfloor
//
// What fails is only what is far off.

// TestFiguresStart measures from the start of the process to the first frame
// that says something, in terminals that tell their background at once, and in
// one that never does, with an empty log and with those of ten and a hundred
// years. The yardstick is a process that does nothing.
func TestFiguresStart(t *testing.T) {
	const runs = 21
	var starts []start
	for _, n := range []int{0, 1560, 15_600} {
		h := newHome(t, short)
		h.cautionsRead()
		log := ""
		if n > 0 {
			years(t, filepath.Join(h.dir, ".local/share/coldfloor/journal.jsonl"), n)
			log = fmt.Sprintf(", %d sessions in the log", n)
		}
		starts = append(starts,
			start{"choose a session" + log, "Choose a session", true, h, []string{binary()}},
			start{"run a file" + log, "Before you start", true, h, []string{binary(), "run", h.file}})
	}
	starts = append(starts,
		start{"choose, a terminal that does not answer", "Choose a session", false, starts[0].home, []string{binary()}},
		start{"yardstick: echo", "done", true, starts[0].home, []string{"/bin/echo", "done"}})
	took := make([][]time.Duration, len(starts))
	for range runs + 1 { // one after another, so that a busy moment meets all
		for i, s := range starts {
			x := startBare(t, 80, 24, s.answers, s.home.env(), s.args...)
			took[i] = append(took[i], x.first(t, s.want))
			x.end()
		}
	}
	t.Logf("start to first frame, %d runs, load %s", runs, load())
	for i, s := range starts {
		took[i] = took[i][1:] // the first one puts an index beside the journal
		slices.Sort(took[i])
		t.Logf("%-42s median %3d ms, from %d to %d ms", s.name, took[i][runs/2].Milliseconds(), took[i][0].Milliseconds(), took[i][runs-1].Milliseconds())
		if took[i][runs/2] > 2*time.Second {
			t.Errorf("%s: the first frame takes seconds", s.name)
		}
	}
	for i := 2; i < 6; i++ {
		t.Logf("%s: %.2f times as long as with an empty log", starts[i].name, took[i][runs/2].Seconds()/took[i%2][runs/2].Seconds())
	}
}

// start is a way to start the program, and what its first frame says.
type start struct {
	name, want string
	answers    bool // whether the terminal tells its background
	home       home
	args       []string
}

// years writes a journal of n sessions, three a week, the last of them in
// January 2026.
func years(t *testing.T, path string, n int) {
	t.Helper()
	var text bytes.Buffer
	first := time.Date(2026, 1, 5, 17, 0, 0, 0, time.UTC).AddDate(0, 0, -7*(n/3+1))
	if _, err := journalgen.Write(&text, journalgen.Options{Player: "Ana", Sessions: n, Seed: 1, First: first}); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, text.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
}

// paced is a session whose first half minute holds every phase of the screen,
// and cues and clicks throughout.
const paced = `coldfloor: 1
title: Every phase
lead_in: 4s
blocks:
  - title: Up
    rounds: 9
    rest: 12s
    exercises:
      - {name: Low hops, reps: 6, rep: 1s, contacts: 1, cues: [Quiet floor]}
      - {name: Split squat, reps_per_side: 2, tempo: 1-0-1, switch: 3s, cues: [Chest tall]}
`

// TestFiguresLive measures half a minute of a session with its log and with
// sound to a real sound server, at two sizes: the share of a processor, the
// bytes written to the terminal, and the memory. The yardstick is watch, once
// each tenth of a second.
func TestFiguresLive(t *testing.T) {
	const span = 30 * time.Second
	server := soundServer(t)
	type session struct {
		name string
		*bare
		cpu   time.Duration
		bytes int
	}
	var all []*session
	for _, size := range []struct{ cols, rows uint16 }{{80, 24}, {200, 60}} {
		h := newHome(t, paced)
		h.cautionsRead()
		x := startBare(t, size.cols, size.rows, true, h.env(server.Env()[2]), binary(), "run", h.file)
		x.first(t, "Before you start") // what the check finds
		x.keys(t, "\r")
		x.first(t, " to go") // the session runs
		all = append(all, &session{name: fmt.Sprintf("%dx%d", size.cols, size.rows), bare: x})
	}
	if path, err := exec.LookPath("watch"); err == nil {
		x := startBare(t, 80, 24, true, newHome(t, "").env(), path, "-n", "0.1", "date")
		all = append(all, &session{name: "yardstick: watch -n 0.1 date", bare: x})
	}
	time.Sleep(2 * time.Second) // what is measured is the session, not its start
	for _, s := range all {
		s.cpu, s.bytes = -s.spent(t), -s.written()
	}
	began := time.Now()
	time.Sleep(span)
	took := time.Since(began)
	t.Logf("%.0f s of a session with sound, load %s", took.Seconds(), load())
	for _, s := range all {
		s.cpu += s.spent(t)
		s.bytes += s.written()
		share := 100 * s.cpu.Seconds() / took.Seconds()
		memory := s.memory(t)
		t.Logf("%-28s %4.1f %% of a core, %5.1f kB/s to the terminal, resident %.1f MB at most, %.1f MB now (%.1f MB its own, %.1f MB of files)", s.name,
			share, float64(s.bytes)/took.Seconds()/1000, memory["VmHWM"], memory["VmRSS"], memory["RssAnon"], memory["RssFile"])
		if share > 25 || memory["VmHWM"] > 200 {
			t.Errorf("%s: far too much", s.name)
		}
	}
	for _, s := range all {
		s.end()
	}
}

// load is the machine's load as it says itself.
func load() string {
	b, _ := os.ReadFile("/proc/loadavg")
	return string(bytes.Join(bytes.Fields(b)[:3], []byte(" ")))
}
