package briefing

import (
	"strings"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

var now = time.Date(2026, 12, 9, 18, 0, 0, 0, time.UTC)

const quiet = `coldfloor: 1
title: Evening
blocks:
  - {title: Get going, part: warm-up, exercises: [{name: March on the spot, time: 6m, cues: [Easy]}]}
  - {title: Hold, rounds: 2, rest: 60s, exercises: [{name: Side plank, time: 20s, cues: [Long]}]}
`

const jumpy = `coldfloor: 1
title: Evening
level: intermediate
blocks:
  - {title: Get going, part: warm-up, exercises: [{name: March on the spot, time: 6m, cues: [Easy]}]}
  - {title: Up, trains: [vertical power], rounds: 6, rest: 120s, exercises: [{name: Pogo hops, reps: 18, rep: 500ms, contacts: 1, cues: [Stiff]}]}
`

func planOf(t *testing.T, src string) *plan.Plan {
	t.Helper()
	s, err := sessions.Parse("evening.yaml", []byte(src))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

// done returns a session of some hours ago, with contacts and what was said.
func done(hours, contacts int, said ...journal.Statement) *journal.Run {
	at := now.Add(-time.Duration(hours) * time.Hour)
	r := &journal.Run{ID: at.String(), Start: at, State: journal.Complete, Elapsed: 20 * time.Minute, Said: said,
		Started: &journal.Started{Title: "Before", Player: "Ida"}}
	r.Sets = []journal.Set{{Place: journal.Place{Block: 1, Round: 1, Exercise: 1}, Name: "Pogo hops", Outcome: journal.Done,
		Reps: contacts, Contacts: journal.CountOf(contacts), At: at.Add(20 * time.Minute)}}
	return r
}

func pain(where string, level ...int) journal.Statement {
	yes := true
	s := journal.Statement{At: now.Add(-20 * time.Hour), Pain: &yes, Where: where}
	if len(level) > 0 {
		s.Level = &level[0]
	}
	return s
}

// TestOf: what is said, and that nothing is said without a reason.
func TestOf(t *testing.T) {
	ida := settings.Default()
	ida.Name = "Ida"
	beginner := ida
	beginner.Level, beginner.Room = sessions.Beginner, settings.Room{Along: units.Metre, Across: units.Metre}
	for _, c := range []struct {
		name   string
		text   string
		runs   []*journal.Run
		player settings.Player
		want   []string // each in a paragraph of its own, in this order; none: nothing is said
		stop   bool
	}{
		{"nothing to say", quiet, nil, ida, nil, false},
		{"nothing to say after an easy week", jumpy, []*journal.Run{done(100, 40)}, ida, nil, false},
		{"new pain", quiet, []*journal.Run{done(200, 0), done(20, 0, pain("left knee", 2))}, ida,
			[]string{"Pain was noted last time, Tue 8 Dec: left knee, 2 of 10. Pain that is new in a joint, or this strong: stop, and see a licensed practitioner"}, true},
		{"known pain of 5", quiet, []*journal.Run{done(200, 0, pain("Left knee", 5)), done(20, 0, pain("left knee", 5))}, ida,
			[]string{"ask a licensed practitioner"}, false},
		{"known pain of 6", quiet, []*journal.Run{done(200, 0, pain("left knee", 5)), done(20, 0, pain("left knee", 6))}, ida,
			[]string{"stop, and see a licensed practitioner"}, true},
		{"pain, and a session after it of which nothing was said", quiet, []*journal.Run{done(20, 0, pain("left knee", 7)), done(2, 0)}, ida,
			[]string{"Tue 8 Dec: left knee, 7 of 10"}, true},
		{"pain, and a session after it without", quiet, []*journal.Run{done(20, 0, pain("left knee", 7)), painless(done(2, 0))}, ida, nil, false},
		{"pain of 0", quiet, []*journal.Run{done(20, 0, pain("left knee", 0))}, ida, nil, false},
		{"jumps 20 h ago", jumpy, []*journal.Run{done(20, 40)}, ida, []string{"ended 19 h ago"}, false},
		{"jumps 20 h ago, none today", quiet, []*journal.Run{done(20, 40)}, ida, nil, false},
		{"somebody else's jumps and pain", jumpy, []*journal.Run{other(done(20, 40, pain("hip")))}, ida, nil, false},
		{"13 days off", quiet, []*journal.Run{done(13*24, 0)}, ida, nil, false},
		{"14 days off", jumpy, []*journal.Run{done(14*24, 40)}, ida, []string{"14 days since your last session. In the first week back 50 % of the usual is enough: of the 108 contacts here, 54"}, false},
		{"a room too small and a level too high", strings.Replace(jumpy, "contacts: 1", "contacts: 1, floor: 2m x 1m", 1), nil, beginner,
			[]string{"Error: ", "Warning: "}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := Of(planOf(t, c.text), c.runs, Options{Player: c.player, Now: now, Language: &text.English})
			text := strings.Join(b.Text, "\n")
			if len(c.want) == 0 && text != "" || b.Stop != c.stop {
				t.Errorf("stop %v, says:\n%s", b.Stop, text)
			}
			rest := text
			for _, want := range c.want {
				_, after, found := strings.Cut(rest, want)
				if !found {
					t.Errorf("%q is not said in its place:\n%s", want, text)
				}
				rest = after
			}
		})
	}
}

// painless is a run after which the player said that nothing hurt.
func painless(r *journal.Run) *journal.Run {
	no := false
	r.Rating.Pain = &no
	return r
}

// TestAgain: before a run that did not end is resumed, only pain noted
// since it began is said.
func TestAgain(t *testing.T) {
	ida := settings.Default()
	ida.Name = "Ida"
	again := Again(ida, &text.English)
	hurt := done(30, 40, pain("left knee", 7)) // it was said 20 h ago
	for hours, want := range map[int]bool{25: true, 10: false} {
		begun := done(hours, 4)
		begun.State = journal.Unfinished
		say := again(begun, planOf(t, jumpy), []*journal.Run{hurt, begun})
		if (say != nil) != want {
			t.Fatalf("begun %d h ago: says %+v", hours, say)
		}
		if want && (len(say.Text) != 1 || !strings.Contains(say.Title, "Stop") || say.Only == nil) {
			t.Errorf("says %+v", say)
		}
	}
}

// other gives a run to another player.
func other(r *journal.Run) *journal.Run {
	r.Started.Player = "Jonas"
	return r
}

// TestMatch: a match today or tomorrow is said, one the day after is not.
func TestMatch(t *testing.T) {
	for in, want := range map[string]string{"2026-12-09": "today", "2026-12-10": "tomorrow", "2026-12-11": ""} {
		p, err := weeks.Parse("w.yaml", []byte("coldfloor: 1\ntitle: W\nstarts: 2026-12-07\nweeks: 1\ndays: {mon: a.yaml}\nmatches: ["+in+"]\n"),
			func(string) (*sessions.Session, error) { return sessions.Parse("a.yaml", []byte(quiet)) })
		if err != nil {
			t.Fatal(err)
		}
		said := strings.Join(Of(planOf(t, quiet), nil, Options{Player: settings.Default(), Weeks: p, Now: now, Language: &text.English}).Text, "\n")
		if want == "" && said != "" || !strings.Contains(said, want) {
			t.Errorf("match on %s: %q", in, said)
		}
	}
}

// TestNotice offers a session without jumps in place of one with.
func TestNotice(t *testing.T) {
	ida := settings.Default()
	ida.Name = "Ida"
	notice := Notice(ida, nil, &text.English, func() time.Time { return now })
	say := notice(planOf(t, jumpy), []*journal.Run{done(20, 40)})
	if say == nil || say.Only == nil || say.Only(planOf(t, jumpy)) || !say.Only(planOf(t, quiet)) {
		t.Fatalf("says %+v", say)
	}
	if say := notice(planOf(t, quiet), nil); say != nil {
		t.Errorf("says %+v with nothing to say", say)
	}
}

// TestInGerman: what is said is in the player's language.
func TestInGerman(t *testing.T) {
	ida := settings.Default()
	ida.Name = "Ida"
	b := Of(planOf(t, jumpy), []*journal.Run{done(14*24, 40)}, Options{Player: ida, Now: now, Language: &text.German})
	if said := strings.Join(b.Text, "\n"); !strings.Contains(said, "14 Tage seit deiner letzten Einheit. In der ersten Woche danach genügen 50 % des Üblichen: von den 108 Kontakten hier also 54") {
		t.Errorf("says %q", said)
	}
}

// Contacts that nobody counted are in no share of them, and said to be left out.
func TestBreakWithUncountedJumps(t *testing.T) {
	src := strings.Replace(jumpy, "exercises: [{name: Pogo", "exercises: [{name: Tuck jumps, reps: 5, cues: [High]}, {name: Pogo", 1)
	ida := settings.Default()
	ida.Name = "Ida"
	for l, want := range map[*text.Language]string{
		&text.English: "of the 108 contacts counted here, 54; there are jumps beside them",
		&text.German:  "von den 108 hier gezählten Kontakten also 54; dazu kommen ungezählte Sprünge",
	} {
		b := Of(planOf(t, src), []*journal.Run{done(14*24, 40)}, Options{Player: ida, Now: now, Language: l})
		if said := strings.Join(b.Text, "\n"); !strings.Contains(said, want) {
			t.Errorf("lacks %q in %q", want, said)
		}
	}
}
