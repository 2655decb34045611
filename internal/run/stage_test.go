package run

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/cautions"
	"coldfloor/internal/engine"
	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/journal/journaltest"
	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
)

// stage plays a script: a flow, and the run that it leads to.
type stage struct {
	t       *testing.T
	clock   *clock
	journal string
	plan    *plan.Plan

	flow *Flow
	run  *Active
	out  bytes.Buffer

	language *text.Language // nil: English
	read     []string       // what a player was shown
}

// start plays one start of the program and returns what was shown. The first
// line may set options.
func (s *stage) start(script string) []byte {
	s.out.Reset()
	s.run = nil
	unread := false
	o := Options{Language: s.language, Plan: s.plan, Journal: s.journal, Clock: func(speed float64) Clock { return paced{s.clock, speed} }}
	for line := range strings.Lines(script) {
		line = strings.TrimSpace(line)
		if words, ok := strings.CutPrefix(line, "options "); ok {
			s.options(&o, words)
			unread = strings.Contains(words, "unread")
			continue
		}
		if s.flow == nil {
			if !unread {
				_ = cautions.Remember(o.Player.Name)
			}
			s.flow = NewFlow(o)
			s.flow.Open()
			if r := s.flow.PutOff(); r != nil {
				fmt.Fprintln(&s.out, "named:", s.flow.Called(r))
			}
			s.need()
		}
		name, rest, _ := strings.Cut(line, " ")
		fmt.Fprintln(&s.out, ">", line)
		s.act(name, rest)
	}
	if s.flow != nil {
		s.close()
	}
	return []byte(strings.ReplaceAll(s.out.String(), filepath.Dir(s.journal), "DATA"))
}

// options sets what the first line of a script says.
func (s *stage) options(o *Options, words string) {
	for _, w := range strings.Fields(words) {
		name, value, _ := strings.Cut(w, "=")
		switch name {
		case "player":
			o.Player = settings.Player{Name: value}
		case "speed":
			o.Speed, _ = strconv.ParseFloat(value, 64)
		case "by-hand":
			o.ByHand = true
		case "no-keys":
			o.NoKeys = true
		case "no-log":
			o.Journal = ""
		case "choose":
			o.Plan = nil
		case "unread": // the cautions were not read before
		case "later":
			s.clock.mono += s.length(value)
		case "blocked": // by a file where the journal's folder should be
			if err := os.WriteFile(filepath.Dir(s.journal), nil, 0o600); err != nil {
				s.t.Fatal(err)
			}
		case "yesterday":
			o.Before = append(o.Before, yesterday)
		default:
			s.t.Fatalf("no option %q", w)
		}
	}
}

// yesterdayTold is what yesterday says.
const yesterdayTold = "Jumps two days running. You jumped yesterday. choose one without jumps"

// yesterday says that the player jumped yesterday, and offers what has no jumps.
func yesterday(p *plan.Plan, _ []*journal.Run) *Say {
	if p.Contacts == 0 {
		return nil
	}
	return &Say{Title: "Jumps two days running", Text: []string{"You jumped yesterday."}, Label: "choose one without jumps",
		Only: func(p *plan.Plan) bool { return p.Contacts == 0 }}
}

// act does what a line says: it answers the flow, starts the run, or does
// something in it.
func (s *stage) act(name, rest string) {
	switch name {
	case "answer":
		s.answer(rest)
	case "leave":
		s.flow.Leave()
		s.need()
	case "rate":
		s.tried(s.flow.Rate(s.rating(rest)))
		s.need()
	case "rate-later":
		s.flow.RateLater()
		s.need()
	case "not-asked":
		s.flow.NotAsked()
		s.need()
	case "choose":
		s.choose()
	case "start":
		run, err := s.flow.Start(s)
		if s.tried(err); err != nil {
			return
		}
		s.run = run
		s.run.Do(engine.Start)
		s.shows()
	default:
		s.inRun(name, rest)
	}
}

// inRun does something in the run.
func (s *stage) inRun(name, rest string) {
	switch name {
	case "pass":
		for end := s.clock.mono + s.length(rest); s.clock.mono < end; {
			s.clock.mono += min(250*time.Millisecond, end-s.clock.mono)
			s.run.Tick()
		}
		s.shows()
	case "away":
		s.clock.start = s.clock.start.Add(s.length(rest))
		fmt.Fprintf(&s.out, "the machine was away %v\n", s.run.Tick())
		s.shows()
	case "nobody":
		s.run.LoseKeys()
		s.shows()
	case "mute":
		fmt.Fprintln(&s.out, "sound off:", s.run.ToggleMute(), s.run.Muted())
	case "louder":
		fmt.Fprintln(&s.out, "volume", s.run.Louder(1), "sound off:", s.run.Muted())
	case "result":
		s.result(rest)
	case "disk":
		s.disk(rest)
	case "save":
		err := s.run.Save(s.rating(rest))
		if s.tried(err); err != nil {
			fmt.Fprintln(&s.out, s.run.Trouble())
			s.read = append(s.read, s.run.Trouble())
		}
	case "elsewhere":
		file, err := s.run.SaveElsewhere(s.rating(rest))
		if s.tried(err); err == nil {
			fmt.Fprintf(&s.out, "%s holds\n%s", filepath.Base(file), journaltest.Holds(s.t, file))
		}
	case "close":
		s.close()
	default:
		s.run.Do(engine.Action(name))
		s.shows()
	}
}

// answer gives the answer that a key gives, or what is done with nobody to ask.
func (s *stage) answer(key string) {
	q := s.flow.Next().Ask
	if q == nil {
		s.t.Fatalf("nothing is asked:\n%s", s.out.String())
	}
	all := q.Answers
	if key == "nobody" {
		all, key = []Answer{q.Alone}, q.Alone.Key
	}
	for _, a := range all {
		if a.Key == key {
			s.flow.Answer(a)
			s.need()
			return
		}
	}
	s.t.Fatalf("no answer %q:\n%s", key, s.out.String())
}

// choose chooses the first built-in session that is offered.
func (s *stage) choose() {
	offers, _ := Catalogue(".")
	if err := s.flow.When(offers); err != nil {
		s.t.Fatal(err)
	}
	for _, o := range offers {
		if s.flow.Offered(o.Plan) {
			fmt.Fprintf(&s.out, "narrowed: %v; %s, contacts %d\n", s.flow.Narrowed(), o.Plan.Session.Name, o.Plan.Contacts)
			s.flow.Choose(o.Plan, nil)
			s.need()
			return
		}
	}
	s.t.Fatal("no session is offered")
}

// result says what came out of the first try that is due; "none" leaves it out.
func (s *stage) result(value string) {
	due := s.run.Due()
	if len(due) == 0 {
		s.t.Fatalf("no result is due:\n%s", s.out.String())
	}
	fmt.Fprintf(&s.out, "%s is %s\n", s.flow.Language().Try(due[0]), value)
	if x, err := strconv.ParseFloat(value, 64); err == nil {
		s.run.Measured(due[0], &x)
		return
	}
	s.run.Measured(due[0], nil)
}

// disk takes the journal's folder away at one stroke, which keeps it from being
// written as a full disk does, or brings it back.
func (s *stage) disk(what string) {
	folder := filepath.Dir(s.journal)
	from, to := folder, folder+".away"
	if what == "back" {
		from, to = to, from
	}
	if err := os.Rename(from, to); err != nil {
		s.t.Fatal(err)
	}
}

// rating returns what a line says of a run.
func (s *stage) rating(words string) journal.Rating {
	var r journal.Rating
	for _, w := range strings.Fields(words) {
		name, value, _ := strings.Cut(w, "=")
		switch name {
		case "effort":
			r.RPE = ptr(float64(value[0] - '0'))
		case "pain":
			r.Pain, r.Where = ptr(true), ptr(value)
		case "note":
			r.Note = ptr(value)
		default:
			s.t.Fatalf("no word %q", w)
		}
	}
	return r
}

// tried writes what went wrong.
func (s *stage) tried(err error) {
	if err != nil {
		fmt.Fprintln(&s.out, "error:", fault.Text(err))
		language := s.language
		if language == nil {
			language = &text.English
		}
		s.read = append(s.read, Why(language, err))
	}
}

// close ends the program.
func (s *stage) close() {
	s.tried(s.flow.Close())
	s.tried(s.flow.Err())
	s.flow, s.run = nil, nil
}
