package journal

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"coldfloor/internal/fault"
)

// TestMain lets the test binary be another process at the same journal.
func TestMain(m *testing.M) {
	if path := os.Getenv("JOURNAL_TEST_APPEND"); path != "" {
		appendMany(path)
		return
	}
	if path := os.Getenv("JOURNAL_TEST_HOLD"); path != "" {
		holdRun(path)
		return
	}
	os.Exit(m.Run())
}

// appendMany appends 50 lines of a run of its own.
func appendMany(path string) {
	j, err := Open(path)
	for i := 1; i <= 50 && err == nil; i++ {
		err = j.Append(paused(fmt.Sprintf("P%d", os.Getpid()), i))
	}
	if err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
}

// holdRun begins a run and stays at it until it is killed.
func holdRun(path string) {
	j, err := Open(path)
	if err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
	if _, err := j.Claim("HELD"); err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
	fmt.Println("held")
	time.Sleep(time.Minute)
}

func paused(run string, n int) Line {
	return Line{V: Version, Run: run, N: n, At: start, Event: EventPause, Pause: &Pause{Cause: "key"}}
}

func TestOpenMakesAPrivateFile(t *testing.T) {
	j := openTemp(t)
	if err := j.Append(paused("A", 1)); err != nil {
		t.Fatal(err)
	}
	if runtime.GOOS == "windows" {
		t.Skip("no such modes")
	}
	for path, want := range map[string]fs.FileMode{j.Path(): 0o600, j.Path() + ".lock": 0o600, filepath.Dir(j.Path()): 0o700 | fs.ModeDir} {
		if info, err := os.Stat(path); err != nil || info.Mode() != want {
			t.Errorf("%s: %v, %v; want %v", path, info.Mode(), err, want)
		}
	}
}

// What cannot be a journal is reported before a session starts, with what to do.
func TestOpenRefuses(t *testing.T) {
	dir := t.TempDir()
	yaml := filepath.Join(dir, "hops.yaml")
	if err := os.WriteFile(yaml, []byte("coldfloor: 1\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{
		"":                             "no journal file is named",
		dir:                            "it is a folder or a device, not a file",
		yaml:                           "is not a journal",
		filepath.Join(yaml, "j.jsonl"): "cannot write the journal",
	} {
		_, err := Open(path)
		if err == nil || !strings.Contains(fault.Text(err), want) || !strings.Contains(fault.Text(err), "\nhint: ") {
			t.Errorf("Open(%q): %v; want %q and a hint", path, err, want)
		}
	}
	if b, err := os.ReadFile(yaml); err != nil || string(b) != "coldfloor: 1\n" {
		t.Error("the session file was touched")
	}
}

func TestOpenTakesADamagedJournal(t *testing.T) {
	path := filepath.Join(t.TempDir(), "journal.jsonl")
	if err := os.WriteFile(path, append([]byte("\x00\x00garbage\n"), twoRuns(t)...), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(path); err != nil {
		t.Error(err)
	}
}

// A line that was torn at any byte is kept, and the next one is whole.
func TestAppendAfterATornLine(t *testing.T) {
	text := twoRuns(t)
	path := filepath.Join(t.TempDir(), "journal.jsonl")
	start := bytes.LastIndexByte(bytes.TrimSuffix(text, []byte("\n")), '\n') + 1
	for cut := start + 1; cut <= len(text); cut++ {
		if err := os.WriteFile(path, text[:cut], 0o600); err != nil {
			t.Fatal(err)
		}
		f, err := (&Journal{path: path}).open()
		if err != nil {
			t.Fatal(err)
		}
		if err := appendTo(f, []Line{paused("AFTER", 1)}, false); err != nil {
			t.Fatal(err)
		}
		f.Close()
		b, _ := os.ReadFile(path)
		if !bytes.HasPrefix(b, text[:cut]) {
			t.Fatalf("cut at %d: the torn line is not kept", cut)
		}
		lines, _ := readAll(t, b)
		if lines[len(lines)-1].Run != "AFTER" {
			t.Fatalf("cut at %d: the line after it is not whole", cut)
		}
	}
}

// Processes that append at once never mix their lines.
func TestAppendFromManyProcesses(t *testing.T) {
	path := openTemp(t).Path()
	const processes = 4
	var wg sync.WaitGroup
	for range processes {
		wg.Go(func() {
			c := exec.Command(os.Args[0])
			c.Env = append(os.Environ(), "JOURNAL_TEST_APPEND="+path)
			if out, err := c.CombinedOutput(); err != nil {
				t.Errorf("%v: %s", err, out)
			}
		})
	}
	wg.Wait()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	lines, damage := readAll(t, b)
	if len(lines) != processes*50 || len(damage) != 0 {
		t.Errorf("%d lines, want %d; damage %v", len(lines), processes*50, damage)
	}
}

// Two runs and edits of a third at the same time lose nothing.
func TestRunsAndEditsAtOnce(t *testing.T) {
	j := openTemp(t)
	id, err := j.AddOnPaper(OnPaper{Title: "Stairs", Start: start, Length: 20 * time.Minute})
	if err != nil {
		t.Fatal(err)
	}
	const edits = 20
	var wg sync.WaitGroup
	for range 2 {
		id := NewName()
		lines := everything(t, id)
		wg.Go(func() {
			mine := &Journal{path: j.Path()}
			held, err := mine.Claim(id)
			if err != nil {
				t.Error(err)
				return
			}
			defer held.Release()
			for _, l := range lines {
				if err := mine.Append(l); err != nil {
					t.Error(err)
				}
			}
		})
	}
	for i := range edits {
		wg.Go(func() {
			err := ErrLive // the others may take longer than one edit waits
			for errors.Is(err, ErrLive) {
				err = (&Journal{path: j.Path()}).Amend(id, Line{Event: EventRating, Rating: &Rating{Rounds: []int{i}}})
			}
			if err != nil {
				t.Error(err)
			}
		})
	}
	wg.Wait()
	runs := load(t, j)
	if len(runs) != 3 {
		t.Fatalf("%d runs, want 3", len(runs))
	}
	for _, r := range runs {
		if r.ID == id && len(r.Amendments) != edits {
			t.Errorf("%d edits, want %d", len(r.Amendments), edits)
		}
		if r.ID != id && (len(r.Sets) != 7 || r.State != Complete) {
			t.Errorf("%d sets, %s", len(r.Sets), r.State)
		}
	}
}

// The sign that a run is under way lives as long as its process, however that ends.
func TestLiveUntilKilled(t *testing.T) {
	j := openTemp(t)
	if j.Live("HELD") {
		t.Fatal("live before it began")
	}
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), "JOURNAL_TEST_HOLD="+j.Path())
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	if b := make([]byte, 5); func() error { _, err := out.Read(b); return err }() != nil || string(b[:4]) != "held" {
		t.Fatalf("%s", b)
	}
	if !j.Live("HELD") {
		t.Error("not live while its process runs")
	}
	if _, err := j.Claim("HELD"); !errors.Is(err, ErrLive) {
		t.Errorf("claimed twice: %v", err)
	}
	if err := c.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	_ = c.Wait()
	if j.Live("HELD") {
		t.Error("live after it was killed")
	}
	held, err := j.Claim("HELD")
	if err != nil {
		t.Fatal(err)
	}
	held.Release()
	if left, _ := filepath.Glob(j.Path() + ".*.live"); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}
