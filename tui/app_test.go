package tui

import (
	"coldfloor/internal/run"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/tui/glyph"
)

// program drives an App as the library does, but in the test's goroutine.
type program struct {
	t    *testing.T
	app  App
	host *run.Host
	quit bool
}

// newProgram returns a program on a journal, sped up so that a session takes
// moments.
func newProgram(t *testing.T, o Options) *program {
	t.Helper()
	o.Host = &run.Host{Speed: 200}
	o.Glyphs, o.Look, o.Folder = glyph.Quadrant, lipgloss.NewRenderer(os.Stderr), "testdata"
	p := &program{t: t, app: New(o), host: o.Host}
	t.Cleanup(p.close)
	p.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	p.do(p.app.Init())
	return p
}

func (p *program) close() {
	if err := p.host.Close(); err != nil {
		p.t.Error(err)
	}
}

// send sends a message, and what comes of it, but for ticks.
func (p *program) send(msg tea.Msg) {
	m, cmd := p.app.Update(msg)
	p.app = m.(App)
	p.do(cmd)
}

// do runs a command. A tick would go on for ever: awaiting ticks itself.
func (p *program) do(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case runTicked:
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

// await looks at the clocks until the screen shows text.
func (p *program) await(text string) {
	p.t.Helper()
	for end := time.Now().Add(30 * time.Second); !strings.Contains(p.app.View(), text); {
		if time.Now().After(end) {
			p.t.Fatalf("%q is not on\n%s", text, p.app.View())
		}
		if p.app.stage == running {
			p.send(runTicked{p.app.run.turn})
		}
	}
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

func TestFromTheFirstStartToTheLog(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	p := newProgram(t, Options{Journal: file})
	p.await("Choose a session")
	p.await("Hallway speed A") // the file in the folder
	for !strings.Contains(p.app.View(), "> Hallway speed A") {
		p.keys("down")
	}
	p.keys("enter")
	p.await("Before the first session")
	p.keys("enter")
	p.await("YOUR PACE")
	for p.app.stage == running { // the push-ups end by hand
		p.keys("x")
		time.Sleep(time.Millisecond)
		p.send(runTicked{p.app.run.turn})
	}
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
	if r.State != journal.Complete || *r.Rating.RPE != 7 || !*r.Rating.Pain || *r.PainWhere() != "left knee" || *r.Notes() != "ok" || r.Rating.Rounds != nil {
		t.Errorf("%s %+v %+v", r.State, r.Rating, r.Said)
	}
	if again := newProgram(t, Options{Journal: file}); strings.Contains(again.app.View(), "Before the first") {
		t.Error("cautioned again")
	} else {
		again.await("Choose a session")
	}
}

// leaveHalfway runs the test session until its second set, and ends the
// program as a kill would.
func leaveHalfway(t *testing.T, file string) {
	t.Helper()
	p := newProgram(t, Options{Journal: file, Plan: evening(t)})
	p.keys("enter")
	for p.app.run.run.View().Step < stepLeft {
		p.send(runTicked{p.app.run.turn})
	}
	p.close()
}

func TestGoOnWithARunThatDidNotEnd(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	leaveHalfway(t, file)
	p := newProgram(t, Options{Journal: file})
	p.await("A session did not end")
	p.await("1 of 9 sets done")
	p.keys("g")
	if v := p.app.run.run.View(); p.app.stage != running || v.Step != stepLeft || v.Phase != engine.CountedIn {
		t.Fatalf("stage %d, %+v", p.app.stage, v)
	}
	p.keys("q", "q")
	p.await("Effort")
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
	p := newProgram(t, Options{Journal: file})
	p.keys("l")
	p.await("Choose a session")
	if r := runs(t, file)[0]; r.State != journal.Interrupted {
		t.Error(r.State)
	}
}

func TestLeaveARunThatDidNotEndForLater(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	leaveHalfway(t, file)
	p := newProgram(t, Options{Journal: file})
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
	o := Options{Journal: filepath.Join(blocked, "journal.jsonl"), Plan: evening(t)}
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

// An interrupt from outside stops and logs; any other end leaves the run to be
// gone on with.
func TestInterrupt(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	p := newProgram(t, Options{Journal: file, Plan: evening(t)})
	p.keys("enter")
	p.send(Interrupt())
	p.close()
	if r := runs(t, file)[0]; !p.quit || r.State != journal.Stopped {
		t.Error(r.State)
	}
}

// Keys that arrive as one message count one by one.
func TestKeysInOneMessage(t *testing.T) {
	p := newProgram(t, Options{Plan: evening(t)})
	p.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("qq")})
	if p.app.run.run.View().Phase != engine.Over {
		t.Error("qq did not stop the run")
	}
}

// Every screen keeps within the window, at every size.
func TestScreensFitAnyWindow(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	p := newProgram(t, Options{Journal: file})
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
	p.keys("down", "down", "down", "down", "down", "enter")
	check("cautions")
	p.keys("enter", "q", "q")
	for range 6 {
		check("form")
		p.keys("down", "y")
	}
	if p.app.stage != finishing {
		t.Error("not in the form")
	}
}

func TestFormRounds(t *testing.T) {
	m := newFinishScreen(evening(t), []int{2}, "", style{})
	m.width, m.height = 80, 24
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
		if got := ago(c.at, now); got != c.want {
			t.Errorf("%v: %q, want %q", c.at, got, c.want)
		}
	}
}
