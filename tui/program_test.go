package tui

import (
	"os"
	"strings"
	"testing"
	"time"

	"github.com/adrg/xdg"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"coldfloor/internal/cautions"
	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/journal/journaltest"
	"coldfloor/internal/run"
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
	all, problems, err := journaltest.Load(file)
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
