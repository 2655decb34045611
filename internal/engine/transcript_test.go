package engine_test

import (
	"bufio"
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/txtar"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/transcripttest"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// TestTranscripts walks whole sessions. Each file under testdata holds a
// session, a script of options and timed actions, and every event that came
// of it, with the state after each action.
func TestTranscripts(t *testing.T) {
	transcripttest.Play(t, func(t *testing.T, ar *txtar.Archive) *txtar.Archive {
		part := map[string][]byte{}
		for _, f := range ar.Files {
			part[f.Name] = f.Data
		}
		s, err := sessions.Parse("session.yaml", part["session"])
		if err != nil {
			t.Fatal(err)
		}
		now := &txtar.Archive{Comment: ar.Comment}
		for _, f := range ar.Files {
			if f.Name != "events" {
				now.Files = append(now.Files, f)
			}
		}
		now.Files = append(now.Files, txtar.File{Name: "events", Data: play(t, plan.Of(s), part["script"])})
		return now
	})
}

// play runs a script: a line "options NAME=VALUE …" or "TIME ACTION", where
// the action "advance" only moves the clock.
func play(t *testing.T, p *plan.Plan, script []byte) []byte {
	var out bytes.Buffer
	var o engine.Options
	var e *engine.Engine
	for sc := bufio.NewScanner(bytes.NewReader(script)); sc.Scan(); {
		words := strings.Fields(sc.Text())
		if len(words) == 0 || words[0] == "#" {
			continue
		}
		if words[0] == "options" {
			o = options(t, words[1:])
			continue
		}
		if e == nil {
			e = engine.New(p, o)
		}
		at, err := units.ParseDuration(words[0])
		if err != nil {
			t.Fatal(err)
		}
		var events []engine.Event
		if words[1] == "advance" {
			events = e.Advance(at)
		} else {
			events = e.Do(engine.Action(words[1]), at)
		}
		fmt.Fprintf(&out, "> %s\n", strings.Join(words, " "))
		for _, ev := range events {
			fmt.Fprintf(&out, "%9s %9s  %s\n", secs(ev.Now), secs(ev.Clock), describe(p, ev))
		}
		v := e.View()
		fmt.Fprintf(&out, "  %s step %d, %s of %s, %s left\n", v.Phase, v.Step+1, secs(v.Elapsed), secs(v.Length), secs(v.Left))
	}
	return out.Bytes()
}

func options(t *testing.T, words []string) (o engine.Options) {
	for _, w := range words {
		name, value, _ := strings.Cut(w, "=")
		switch name {
		case "by-hand":
			o.ByHand = true
		case "all-paced":
			o.AllPaced = true
		case "from":
			fmt.Sscan(value, &o.From)
			o.From--
		case "count-in", "lead-in", "into":
			d, err := time.ParseDuration(value)
			if err != nil {
				t.Fatal(err)
			}
			*map[string]*time.Duration{"count-in": &o.CountIn, "lead-in": &o.LeadIn, "into": &o.Into}[name] = d
		default:
			t.Fatalf("no option %q", name)
		}
	}
	return o
}

func secs(d time.Duration) string { return fmt.Sprintf("%.3f", d.Seconds()) }

// describe says one event in a line.
func describe(p *plan.Plan, ev engine.Event) string {
	s := p.Steps[ev.Step]
	step := strings.TrimRight(fmt.Sprintf("%d %s %s %s", ev.Step+1, s.Kind, s.Name, s.Side), " ")
	switch ev.Kind {
	case engine.StepBegan:
		easier := ""
		if ev.Easier {
			easier = ", easier"
		}
		if ev.Taken > 0 {
			easier += ", " + secs(ev.Taken) + " of it passed"
		}
		return fmt.Sprintf("%s %s, %s%s", ev.Kind, step, secs(ev.Length), easier)
	case engine.StepEnded:
		return fmt.Sprintf("%s %s by %s, taken %s of %s, halted %s", ev.Kind, step, ev.Cause, secs(ev.Taken), secs(ev.Length), secs(ev.Halted))
	case engine.SetEnded:
		r := ev.Set
		return fmt.Sprintf("%s set %d %s by %s, taken %s of %s, halted %s, reps %d, sides %v, easier %v",
			ev.Kind, r.Set+1, r.Outcome, ev.Cause, secs(ev.Taken), secs(r.Planned), secs(ev.Halted), r.Reps, r.Sides, r.Easier)
	case engine.Swapped:
		return fmt.Sprintf("%s easier %v", ev.Kind, ev.Easier)
	case engine.CountIn, engine.Extended:
		return fmt.Sprintf("%s %s", ev.Kind, secs(ev.Length))
	case engine.Paused, engine.Finished:
		return fmt.Sprintf("%s by %s", ev.Kind, ev.Cause)
	}
	return string(ev.Kind)
}
