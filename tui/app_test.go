package tui

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
)

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
	p.await("Pain noted")
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
	p.await("A session was not finished")
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

// An earlier run that was not rated is asked for once more, and then only named.
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
	p.await("Choose a session")
	if r := p.flow.PutOff(); r == nil || !strings.Contains(p.app.unrated(r), "coldfloor log rate RUN") {
		t.Errorf("%+v is not named", r)
	}
}

// The effort of an earlier run is kept.
func TestUnratedIsRated(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	p := newProgram(t, run.Options{Journal: file, Plan: evening(t)})
	p.toEnd()
	p.clock.now += time.Second
	p.send(runTicked{p.app.run.turn})
	p.keys("esc")
	p.close()
	p = newProgram(t, run.Options{Journal: file})
	p.await("Effort")
	p.keys("5", "esc")
	p.await("Choose a session")
	p = newProgram(t, run.Options{Journal: file})
	p.await("Choose a session")
	if r := runs(t, file)[0]; *r.Rating.RPE != 5 || p.flow.PutOff() != nil {
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

// A capital letter is the key of its small one, but for text that is typed.
func TestCapitals(t *testing.T) {
	p := newProgram(t, run.Options{Journal: filepath.Join(t.TempDir(), "journal.jsonl"), Plan: evening(t)})
	p.pass(7 * time.Second)
	if p.keys("P"); p.app.run.run.View().Phase != engine.Halted {
		t.Error("P does not pause")
	}
	p.keys("Q", "Q")
	p.await("Effort")
	p.keys("down", "Y", "down", "L", "K")
	if m := p.app.finish; m.pain != yes || m.where.Value() != "LK" {
		t.Errorf("pain %d in %q", m.pain, m.where.Value())
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

// TestPainIsSaidBeforeGoingOn: what is new since a run began is said before it
// is gone on with, and another session can be chosen in its place.
func TestPainIsSaidBeforeGoingOn(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	leaveHalfway(t, file)
	again := func(r *journal.Run, p *plan.Plan, _ []*journal.Run) *run.Say {
		if r.State != journal.Unfinished || p == nil {
			t.Errorf("asked of a run that is %s", r.State)
		}
		return &run.Say{Title: "Stop first", Text: []string{"Pain was noted"}, Only: func(*plan.Plan) bool { return false }, Label: "another"}
	}
	p := newProgram(t, run.Options{Journal: file, Again: again})
	p.await("A session was not finished")
	p.keys("g")
	p.await("Pain was noted")
	if p.app.stage == running {
		t.Fatal("it runs already")
	}
	p.keys("enter")
	if v := p.app.run.run.View(); p.app.stage != running || v.Step != stepLeft {
		t.Fatalf("stage %d, %+v", p.app.stage, v)
	}
	p.close()
	p = newProgram(t, run.Options{Journal: file, Again: again})
	p.keys("g", "w")
	if p.app.stage == running {
		t.Error("the run goes on although another session was wanted")
	}
	p.close()
}

// TestStoppedWhileCountedIn: a set that was stopped before it began is not told
// of as done in part.
func TestStoppedWhileCountedIn(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	leaveHalfway(t, file)
	p := newProgram(t, run.Options{Journal: file})
	p.keys("g", "q", "q")
	p.await("Effort")
	p.keys("esc")
	p.close()
	for _, s := range runs(t, file)[0].Sets {
		if s.TakenS == 0 {
			t.Errorf("logged %+v", s)
		}
	}
}
