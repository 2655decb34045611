//go:build e2e && linux

package main

import (
	"bytes"
	"errors"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/journal/journaltest"
)

// smallDisk is a disk of some hundred kilobytes that a test can fill and free.
type smallDisk struct {
	t      *testing.T
	dir    string
	filler string
}

// newSmallDisk mounts one; a test that may not is skipped.
func newSmallDisk(t *testing.T) smallDisk {
	t.Helper()
	d := smallDisk{t: t, dir: t.TempDir()}
	d.filler = filepath.Join(d.dir, "filler")
	if err := syscall.Mount("tmpfs", d.dir, "tmpfs", 0, "size=256k"); err != nil {
		t.Skipf("no disk can be mounted here: %v", err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(d.dir, syscall.MNT_DETACH); err != nil {
			t.Error(err)
		}
	})
	return d
}

// fill takes all the room that is left on the disk.
func (d smallDisk) fill() {
	d.t.Helper()
	f, err := os.OpenFile(d.filler, os.O_WRONLY|os.O_CREATE|os.O_APPEND, 0o600)
	if err != nil {
		return // not even room for its name
	}
	defer f.Close()
	for block := make([]byte, 4096); ; {
		if _, err := f.Write(block); errors.Is(err, syscall.ENOSPC) {
			return
		} else if err != nil {
			d.t.Fatal(err)
		}
	}
}

// free gives the room back.
func (d smallDisk) free() {
	d.t.Helper()
	if err := os.Truncate(d.filler, 0); err != nil && !errors.Is(err, os.ErrNotExist) {
		d.t.Fatal(err)
	}
}

// trial is a journal on a small disk, and what was seen and said of it.
type trial struct {
	t      *testing.T
	home   home
	disk   smallDisk
	log    string
	random *rand.Rand

	seen  map[string]bool // lines that once stood whole in the journal
	added map[string]bool // runs by the name that they were said to be logged under
	mute  int             // sessions on paper whose adding was killed: logged or not

	kills, begun, refused, told, lost int
}

// start starts a run of the brief session that logs on the small disk.
func (x *trial) start() (*exec.Cmd, *bytes.Buffer) {
	x.t.Helper()
	c := x.command("run", x.home.file, "--plain", "--mute", "--speed", "20", "--journal", x.log)
	out := &bytes.Buffer{}
	c.Stdout, c.Stderr = out, out
	if err := c.Start(); err != nil {
		x.t.Fatal(err)
	}
	return c, out
}

func (x *trial) command(args ...string) *exec.Cmd {
	c := exec.Command(binary(), args...)
	c.Env = append(os.Environ(), "HOME="+x.home.dir, "XDG_DATA_HOME=", "XDG_CONFIG_HOME=", "XDG_STATE_HOME=")
	return c
}

// round starts two runs, fills and frees the disk under them, has a session on
// paper added meanwhile, and kills the runs at a random moment.
func (x *trial) round() {
	type process struct {
		*exec.Cmd
		out *bytes.Buffer
	}
	var both []process
	for range 2 {
		if x.random.IntN(3) == 0 {
			x.turn()
		}
		c, out := x.start()
		both = append(both, process{c, out})
	}
	for range x.random.IntN(8) {
		time.Sleep(time.Duration(x.random.IntN(160)) * time.Millisecond) // the random moments themselves
		x.turn()
		x.look()
	}
	switch x.random.IntN(4) {
	case 0, 1:
		x.add()
	case 2:
		x.killAdding()
	}
	for _, p := range both {
		_ = p.Process.Kill()
		x.ended(p.Wait(), p.out.String())
		x.kills++
	}
	x.look()
}

// turn fills the disk or frees it.
func (x *trial) turn() {
	if x.random.IntN(2) == 0 {
		x.disk.fill()
		return
	}
	x.disk.free()
}

// ended takes what a run said, which may have ended before it was killed.
func (x *trial) ended(err error, said string) {
	x.t.Helper()
	full := strings.Contains(said, "no room is left on the disk")
	if strings.Contains(said, "panic") || strings.Contains(said, "goroutine ") {
		x.t.Fatalf("it broke down:\n%s", said)
	}
	if full {
		x.told++
		if !strings.Contains(said, "the log cannot be written just now and is kept in memory") && !strings.Contains(said, "hint: ") && err == nil {
			x.t.Errorf("the full disk is not told as it should be:\n%s", said)
		}
	}
	var exit *exec.ExitError
	switch {
	case err == nil:
		if strings.Contains(said, "of the journal could not be written") {
			x.t.Errorf("lines are lost, and it ended well:\n%s", said)
		}
	case errors.As(err, &exit) && exit.Exited():
		if !full {
			x.t.Errorf("it failed without a word of the disk: %v\n%s", err, said)
		}
		if strings.Contains(said, "logged as a rehearsal") {
			x.t.Errorf("said to be logged, and lost:\n%s", said)
		}
		x.lost++
	}
}

// add adds a session on paper, and notes that it is there or that it was
// refused.
func (x *trial) add() {
	x.t.Helper()
	c := x.command("log", "add", x.home.file, "--all", "--rpe", "6", "--journal", x.log, "--json")
	out, err := c.CombinedOutput()
	if err != nil {
		if !strings.Contains(string(out), "no space left on device") || !strings.Contains(string(out), "hint: ") {
			x.t.Errorf("%v without a word of the disk:\n%s", err, out)
		}
		x.refused++
		return
	}
	if _, rest, ok := strings.Cut(string(out), `"run": "`); ok {
		id, _, _ := strings.Cut(rest, `"`)
		x.added[id] = true
		return
	}
	x.t.Fatalf("no name of the run that was added:\n%s", out)
}

// killAdding kills the command that adds a session on paper.
func (x *trial) killAdding() {
	x.t.Helper()
	c := x.command("log", "add", x.home.file, "--all", "--rpe", "6", "--journal", x.log)
	if err := c.Start(); err != nil {
		x.t.Fatal(err)
	}
	time.Sleep(time.Duration(x.random.IntN(40)) * time.Millisecond) // the random moment itself
	_ = c.Process.Kill()
	_ = c.Wait()
	x.mute++
	x.kills++
}

// look notes the lines that stand whole in the journal now.
func (x *trial) look() {
	x.t.Helper()
	text, err := os.ReadFile(x.log)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		x.t.Fatal(err)
	}
	text = text[:bytes.LastIndexByte(text, '\n')+1]
	for line := range bytes.Lines(text) {
		x.seen[string(line)] = true
	}
}

// verify holds the journal against all that was seen and said, and clears the
// disk.
func (x *trial) verify() {
	x.t.Helper()
	x.disk.free()
	x.look()
	text, err := os.ReadFile(x.log)
	if err != nil {
		x.t.Fatal(err)
	}
	for line := range x.seen {
		if !bytes.Contains(text, []byte(line)) {
			x.t.Errorf("a line that stood in the journal is gone: %s", line)
		}
	}
	runs, problems, err := journaltest.Load(x.log)
	if err != nil {
		x.t.Fatal(err)
	}
	for _, p := range problems {
		x.t.Errorf("%v", p)
	}
	for _, r := range runs {
		paper := r.Started != nil && r.Started.Source == journal.Paper
		if paper && (r.State != journal.Complete || r.Rating.RPE == nil) {
			x.t.Errorf("half a session on paper: %s", r.ID)
		}
		if paper && !x.added[r.ID] {
			x.mute--
		}
		delete(x.added, r.ID)
		x.onceEach(r)
	}
	if x.mute < 0 {
		x.t.Errorf("%d sessions on paper were refused, and logged all the same", -x.mute)
	}
	for id := range x.added {
		x.t.Errorf("said to be logged, and not there: %s", id)
	}
	x.begun += len(runs)
	x.seen, x.added, x.mute = map[string]bool{}, map[string]bool{}, 0
	if err := os.Remove(x.log); err != nil {
		x.t.Fatal(err)
	}
}

// onceEach fails if a set of a run stands twice.
func (x *trial) onceEach(r *journal.Run) {
	places := map[journal.Place]bool{}
	for _, s := range r.Sets {
		if places[s.Place] {
			x.t.Errorf("run %s: set %+v stands twice", r.ID, s.Place)
		}
		places[s.Place] = true
	}
}

// TestKilledOnAFullDisk kills runs that share a journal on a disk that is filled
// and freed under them: nothing that was said to be logged is lost, no line that
// once stood is gone, none is damaged, and what could not be written was said.
// KILLS says how many runs, 20 unless it does.
func TestKilledOnAFullDisk(t *testing.T) {
	kills := 20
	if n, err := strconv.Atoi(os.Getenv("KILLS")); err == nil {
		kills = n
	}
	seed := uint64(time.Now().UnixNano())
	x := &trial{t: t, home: newHome(t, brief), disk: newSmallDisk(t), random: rand.New(rand.NewPCG(seed, 0)), seen: map[string]bool{}, added: map[string]bool{}}
	x.log = filepath.Join(x.disk.dir, "journal.jsonl")
	for x.kills < kills && !t.Failed() {
		x.round()
		if info, err := os.Stat(x.log); err == nil && info.Size() > 100<<10 || x.kills >= kills {
			x.verify()
		}
	}
	t.Logf("seed %d: %d killed, %d runs in the journal, %d told of the full disk, %d ended and told what was lost, %d sessions on paper refused",
		seed, x.kills, x.begun, x.told, x.lost, x.refused)
}
