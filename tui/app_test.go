package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/adrg/xdg"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"coldfloor/internal/cautions"
	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/run"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/tui/glyph"
)

// TestMain keeps what the tests remember out of the home folder.
func TestMain(m *testing.M) {
	dir, err := os.MkdirTemp("", "tui")
	if err != nil {
		panic(err)
	}
	os.Setenv("XDG_STATE_HOME", dir)
	xdg.Reload()
	code := m.Run()
	os.RemoveAll(dir)
	os.Exit(code)
}

// forgotten makes the cautions unread for one test.
func forgotten(t *testing.T) {
	t.Cleanup(xdg.Reload) // after the environment is as it was
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	xdg.Reload()
}

// program drives an App as the library does, but in the test's goroutine and
// by a clock that the test turns.
type program struct {
	t     *testing.T
	app   App
	flow  *run.Flow
	clock *handClock
	quit  bool
}

// newProgram returns a program for a player who has read the cautions.
func newProgram(t *testing.T, o run.Options) *program {
	t.Helper()
	if err := cautions.Remember(""); err != nil {
		t.Fatal(err)
	}
	return newPlayer(t, o)
}

// newPlayer returns a program for a player who may have read the cautions.
func newPlayer(t *testing.T, o run.Options) *program {
	t.Helper()
	p := &program{t: t, clock: &handClock{}}
	o.Clock = func(float64) run.Clock { return p.clock }
	p.flow = run.NewFlow(o)
	p.app = New(Options{Flow: p.flow, Glyphs: glyph.Quadrant, Look: lipgloss.NewRenderer(os.Stderr), Folder: "testdata"})
	t.Cleanup(p.close)
	p.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	p.do(p.app.Init())
	return p
}

func (p *program) close() {
	if err := p.flow.Close(); err != nil {
		p.t.Error(err)
	}
}

// pass lets time pass while the screen looks at the clocks.
func (p *program) pass(d time.Duration) {
	for end := p.clock.now + d; p.clock.now < end; {
		p.clock.now = min(end, p.clock.now+time.Second)
		if p.app.stage == running {
			p.send(runTicked{p.app.run.turn})
		}
	}
}

// send sends a message, and what comes of it. A run under way asks for nothing
// but ticks, which wait on the wall: pass gives them.
func (p *program) send(msg tea.Msg) {
	m, cmd := p.app.Update(msg)
	p.app = m.(App)
	if p.app.stage == running && !p.app.run.ended {
		return
	}
	p.do(cmd)
}

// do runs a command.
func (p *program) do(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case tea.QuitMsg:
		p.quit = true
	default:
		p.send(msg)
	}
}

// keys presses keys.
func (p *program) keys(keys ...string) {
	for _, k := range keys {
		p.send(keyMsg(k))
	}
}

// await lets time pass until the screen shows text.
func (p *program) await(text string) {
	p.t.Helper()
	for range 10_000 {
		if strings.Contains(p.app.View(), text) {
			return
		}
		p.pass(time.Second)
	}
	p.t.Fatalf("%q is not on\n%s", text, p.app.View())
}

// runs returns the runs in a journal.
func runs(t *testing.T, file string) []*journal.Run {
	t.Helper()
	all, problems, err := journal.Load(file)
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	return all
}

// toEnd takes the run to its end, with a key for each set that waits for one.
func (p *program) toEnd() {
	for p.app.stage == running && !p.app.run.over() {
		p.pass(time.Second)
		if p.app.run.run.View().Phase == engine.Overtime {
			p.keys("x")
		}
	}
}

func TestFromTheFirstStartToTheLog(t *testing.T) {
	forgotten(t)
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	p := newPlayer(t, run.Options{Journal: file})
	p.await("Choose a session")
	for !strings.Contains(p.app.View(), "> Hallway speed A") { // the file in the folder
		p.keys("down")
	}
	p.keys("enter")
	p.await("Before the first session")
	p.keys("enter")
	p.await("YOUR PACE")
	p.toEnd()
	p.await("any key goes on") // the end is seen before the form
	p.keys("x")
	p.await("any key goes on") // a slap that was meant for the last set
	p.clock.now += time.Second
	p.keys("x")
	p.await("Effort")
	p.keys("7")
	p.await("very hard")
	p.keys("enter", "y", "enter", "l", "e", "f", "t", " ", "k", "n", "e", "e", "enter", "o", "k", "enter", "enter")
	p.await("Pain is noted")
	p.keys("enter")
	if !p.quit || p.app.Err() != nil || !strings.Contains(p.app.Closing(), "Hallway speed A") {
		t.Errorf("quit %v, %v, %q", p.quit, p.app.Err(), p.app.Closing())
	}
	p.close()
	r := runs(t, file)[0]
	if r.State != journal.Complete || *r.Rating.RPE != 7 || !*r.Rating.Pain || r.Said[0].Where != "left knee" || r.Said[0].Note != "ok" || r.Rating.Rounds != nil {
		t.Errorf("%s %+v", r.State, r.Rating)
	}
	if again := newPlayer(t, run.Options{Journal: file}); strings.Contains(again.app.View(), "Before the first") {
		t.Error("cautioned again")
	}
}

// The cautions come before the first run of a player, whatever stands in the
// journal, and without one too.
func TestCautionsByPlayer(t *testing.T) {
	forgotten(t)
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	leaveHalfway(t, file)
	p := newPlayer(t, run.Options{Journal: file, Plan: evening(t), Player: settings.Player{Name: "Ann"}})
	p.keys("n")
	p.await("Before the first session")
	p.keys("q")
	if !p.quit {
		t.Error("q does not leave")
	}
	for _, want := range []bool{true, false} {
		p = newPlayer(t, run.Options{Plan: evening(t), Player: settings.Player{Name: "Ann"}})
		if got := strings.Contains(p.app.View(), "Before the first session"); got != want {
			t.Errorf("cautioned %v, want %v", got, want)
		}
		p.keys("enter")
	}
}

// leaveHalfway runs the test session until its second set, and ends the
// program as a kill would.
func leaveHalfway(t *testing.T, file string) {
	t.Helper()
	p := newProgram(t, run.Options{Journal: file, Plan: evening(t)})
	for p.app.run.run.View().Step < stepLeft {
		p.pass(time.Second)
	}
	p.close()
}

func TestGoOnWithARunThatDidNotEnd(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	leaveHalfway(t, file)
	p := newProgram(t, run.Options{Journal: file})
	p.await("A session did not end")
	p.await("1 of 9 sets done")
	p.keys("g")
	if v := p.app.run.run.View(); p.app.stage != running || v.Step != stepLeft || v.Phase != engine.CountedIn {
		t.Fatalf("stage %d, %+v", p.app.stage, v)
	}
	p.pass(20 * time.Second)
	p.keys("q", "q")
	p.await("Effort")
	if s := p.app.summary(); strings.Contains(s, ": 0:1") { // the first part took 15 s, the second 10 s of work
		t.Errorf("the summary is of the last part alone: %s", s)
	}
	p.keys("esc")
	if !p.quit {
		t.Error("esc does not leave the form")
	}
	p.close()
	if all := runs(t, file); len(all) != 1 || all[0].State != journal.Stopped {
		t.Errorf("%d runs, the first %s", len(all), all[0].State)
	}
}

func TestLogARunThatDidNotEndAsItStands(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	leaveHalfway(t, file)
	p := newProgram(t, run.Options{Journal: file})
	p.keys("l")
	p.await("Effort") // what was done of it is rated
	p.keys("4", "esc")
	p.await("Choose a session")
	if r := runs(t, file)[0]; r.State != journal.Interrupted || *r.Rating.RPE != 4 {
		t.Error(r.State)
	}
}

func TestLeaveARunThatDidNotEndForLater(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	leaveHalfway(t, file)
	p := newProgram(t, run.Options{Journal: file})
	p.keys("n")
	p.await("Choose a session")
	if r := runs(t, file)[0]; r.State != journal.Unfinished {
		t.Error(r.State)
	}
}

func TestJournalThatCannotBeWritten(t *testing.T) {
	blocked := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(blocked, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	o := run.Options{Journal: filepath.Join(blocked, "journal.jsonl"), Plan: evening(t)}
	p := newProgram(t, o)
	p.await("The log cannot be written")
	if p.app.stage == running {
		t.Fatal("the session has started")
	}
	p.keys("q")
	if !p.quit || p.app.Err() == nil {
		t.Errorf("leaving gives %v", p.app.Err())
	}
	p = newProgram(t, o)
	p.keys("r")
	if p.app.stage != running || p.app.Err() != nil {
		t.Errorf("does not run without a log: %v", p.app.Err())
	}
	p.keys("q", "q")
	if !p.quit {
		t.Error("shows a form that nobody keeps")
	}
}

// A log that cannot be written any more at the end: it is said, what was typed
// is kept and tried again, and another place is offered.
func TestFullDiskAtTheEnd(t *testing.T) {
	o := run.Options{Journal: filepath.Join(t.TempDir(), "journal.jsonl"), Plan: evening(t)}
	t.Chdir(t.TempDir())
	p := newProgram(t, o)
	p.pass(30 * time.Second)
	takeAway(t, o.Journal)
	p.keys("q", "q", "6", "esc")
	p.await("Not logged yet")
	p.keys("t")
	p.await("Not logged yet")
	p.keys("b")
	p.await("0 to 10            6")
	p.keys("esc")
	p.await("Not logged yet")
	p.keys("w")
	if !p.quit || !strings.Contains(p.app.Closing(), "written to ") || strings.Contains(p.app.Closing(), "logged;") {
		t.Fatalf("quit %v, %q", p.quit, p.app.Closing())
	}
	found, _ := filepath.Glob("coldfloor-*.jsonl")
	if len(found) != 1 {
		t.Fatalf("in the working folder: %v", found)
	}
	r := runs(t, found[0])[0]
	if *r.Rating.RPE != 6 || len(r.Amendments) != 1 || r.State != journal.Stopped {
		t.Errorf("%s, %+v", r.State, r.Amendments)
	}
}

// takeAway takes a journal's folder away, at one stroke, which keeps the journal
// from being written as a full disk does. The function brings it back.
func takeAway(t *testing.T, file string) (bringBack func()) {
	t.Helper()
	folder := filepath.Dir(file)
	if err := os.Rename(folder, folder+".away"); err != nil {
		t.Fatal(err)
	}
	return func() {
		if err := os.Rename(folder+".away", folder); err != nil {
			t.Fatal(err)
		}
	}
}

// The disk has room again: what was typed is logged, once.
func TestDiskThatHasRoomAgain(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	p := newProgram(t, run.Options{Journal: file, Plan: evening(t)})
	p.pass(30 * time.Second)
	bringBack := takeAway(t, file)
	p.keys("q", "q", "6", "esc")
	p.await("Not logged yet")
	bringBack()
	p.keys("t")
	if !p.quit || !strings.Contains(p.app.Closing(), "logged;") {
		t.Errorf("quit %v, %q", p.quit, p.app.Closing())
	}
	p.close()
	if r := runs(t, file)[0]; *r.Rating.RPE != 6 || len(r.Amendments) != 1 || r.State != journal.Stopped {
		t.Errorf("%s, %+v", r.State, r.Amendments)
	}
}

// The terminal goes away under the form: what was typed is logged.
func TestTerminalClosedInTheForm(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	p := newProgram(t, run.Options{Journal: file, Plan: evening(t)})
	p.pass(30 * time.Second)
	p.keys("q", "q", "8", "enter", "y", "enter", "h", "i", "p")
	if err := p.app.keepTyped(); err != nil {
		t.Fatal(err)
	}
	p.close()
	if r := runs(t, file)[0]; *r.Rating.RPE != 8 || r.Said[0].Where != "hip" {
		t.Errorf("%+v", r.Rating)
	}
}

// An interrupt from outside stops and logs; any other end leaves the run to be
// gone on with.
func TestInterrupt(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	p := newProgram(t, run.Options{Journal: file, Plan: evening(t)})
	m, cmd := p.app.Update(Interrupt())
	p.app = m.(App)
	p.do(cmd)
	p.close()
	if r := runs(t, file)[0]; !p.quit || r.State != journal.Stopped {
		t.Error(r.State)
	}
}

// An earlier run that was not rated is asked for, and left out if it is left.
func TestUnratedIsAskedFor(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	p := newProgram(t, run.Options{Journal: file, Plan: evening(t)})
	p.toEnd()
	p.clock.now += time.Second
	p.send(runTicked{p.app.run.turn}) // no key: the form comes by itself
	p.keys("esc")
	p.close()
	p = newProgram(t, run.Options{Journal: file})
	p.await("Effort")
	p.keys("esc")
	p.await("Choose a session")
	p = newProgram(t, run.Options{Journal: file})
	p.keys("5", "esc")
	p.await("Choose a session")
	p = newProgram(t, run.Options{Journal: file})
	p.await("Choose a session")
	if r := runs(t, file)[0]; *r.Rating.RPE != 5 {
		t.Errorf("%+v", r.Rating)
	}
}

// Keys that arrive as one message count one by one.
func TestKeysInOneMessage(t *testing.T) {
	p := newProgram(t, run.Options{Plan: evening(t)})
	p.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("qq")})
	if p.app.run.run.View().Phase != engine.Over {
		t.Error("qq did not stop the run")
	}
}

// Every screen keeps within the window, at every size.
func TestScreensFitAnyWindow(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	forgotten(t)
	p := newPlayer(t, run.Options{Journal: file})
	check := func(what string) {
		t.Helper()
		for _, w := range []int{1, 7, 20, 40, 63, 64, 80, 200, 300} {
			for _, h := range []int{1, 2, 3, 5, 12, 24, 80} {
				p.send(tea.WindowSizeMsg{Width: w, Height: h})
				before := t.Failed()
				fits(t, p.app.View(), w, h)
				if t.Failed() && !before {
					t.Logf("%s at %d×%d", what, w, h)
				}
			}
		}
	}
	check("choose")
	p.keys("enter")
	check("cautions")
	for p.app.stage == asking { // and what the session has to say
		p.keys("enter")
	}
	p.keys("q", "q")
	for range 6 {
		check("form")
		p.keys("down", "y")
	}
	if p.app.stage != finishing {
		t.Error("not in the form")
	}
}

func TestFormRounds(t *testing.T) {
	m := newFinishScreen(run.Prescribed(evening(t)), []int{2}, "", style{lang: &text.English})
	m = m.resized(80, 24)
	send := func(keys ...string) {
		for _, k := range keys {
			m, _ = m.Update(keyMsg(k))
		}
	}
	if r := m.rating(); r.Rounds != nil || r.RPE != nil || r.Pain != nil || r.Note != nil {
		t.Errorf("untouched: %+v", r)
	}
	send("up", "3")
	if r := m.rating(); len(r.Rounds) != 1 || r.Rounds[0] != 3 {
		t.Errorf("rounds %v, want 3", r.Rounds)
	}
	send("right", "9") // there are no more than three
	if r := m.rating(); r.Rounds[0] != 3 {
		t.Errorf("rounds %v, want 3", r.Rounds)
	}
	send("down", "1", "0")
	if r := m.rating(); *r.RPE != 10 {
		t.Errorf("effort %v, want 10", *r.RPE)
	}
	send("left", "down", "n", "down")
	if r := m.rating(); *r.RPE != 9 || *r.Pain || r.Where != nil || m.line() != lineNote {
		t.Errorf("%+v at line %d", r, m.line())
	}
}

func TestAgo(t *testing.T) {
	now := time.Date(2026, 3, 1, 0, 30, 0, 0, time.Local)
	for _, c := range []struct {
		at   time.Time
		want string
	}{
		{time.Time{}, "not yet"}, {now, "today"}, {now.Add(-time.Hour), "yesterday"}, {now.AddDate(0, 0, -10), "10 days ago"},
	} {
		if got := ago(c.at, now, &text.English.Choose); got != c.want {
			t.Errorf("%v: %q, want %q", c.at, got, c.want)
		}
	}
}
