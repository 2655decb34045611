package calendar

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"pgregory.net/rapid"

	"coldfloor/internal/plan"
	"coldfloor/internal/text"
	"coldfloor/internal/text/texttest"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// planOf reads a plan of two weeks of a short session with the lines given.
func planOf(t *testing.T, title, more string) *plan.Weeks {
	t.Helper()
	src := fmt.Sprintf("coldfloor: 1\ntitle: %q\nstarts: 2026-12-07\nweeks: 2\n%s", title, more)
	p, err := weeks.Parse("plan.yaml", []byte(src), func(string) (*sessions.Session, error) {
		return sessions.Parse("a.yaml", []byte("coldfloor: 1\ntitle: Hops, and; more\nblocks: [{title: Up, exercises: [{name: Hop, reps: 3, rep: 700ms, contacts: 1}]}]"))
	})
	if err != nil {
		t.Fatal(err)
	}
	return plan.OfWeeks(p)
}

func written(t *testing.T, p *plan.Weeks, o Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, p, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestCalendar holds a whole calendar against the text that RFC 5545 asks for.
func TestCalendar(t *testing.T) {
	p := planOf(t, "Two weeks", `days: {mon: {session: a.yaml, at: "18:30"}, thu: a.yaml}
away: [2026-12-17]
matches: [2026-12-19, "2026-12-20 14:00"]
move: {2026-12-10: 2026-12-11}
`)
	got := written(t, p, Options{Revision: 1, Alarm: 30 * time.Minute, Changed: time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)})
	for _, want := range []string{
		// 3.3.5, form 1: no Z and no TZID. The plan is 12.1 s long, in whole seconds 13.
		"DTSTAMP:20261125T090000Z\r\nSEQUENCE:1\r\nDTSTART:20261207T183000\r\nDURATION:PT13S\r\nSTATUS:CONFIRMED\r\nSUMMARY:Hops\\, and\\; more\\, week 1\r\n",
		"BEGIN:VALARM\r\nACTION:DISPLAY\r\nDESCRIPTION:Hops\\, and\\; more\\, week 1\r\nTRIGGER:-PT1800S\r\nEND:VALARM\r\n",
		"DTSTART;VALUE=DATE:20261211\r\nTRANSP:TRANSPARENT\r\nSTATUS:CONFIRMED\r\n",
		"DTSTART;VALUE=DATE:20261217\r\nTRANSP:TRANSPARENT\r\nSTATUS:CANCELLED\r\n",
		"DTSTART;VALUE=DATE:20261219\r\nTRANSP:TRANSPARENT\r\nSTATUS:CONFIRMED\r\nSUMMARY:Match\r\n",
		"DTSTART:20261220T140000\r\nSTATUS:CONFIRMED\r\nSUMMARY:Match\r\n",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("lacks %q in\n%s", want, got)
		}
	}
	if n := strings.Count(got, "BEGIN:VEVENT"); n != 6 {
		t.Errorf("%d events, want 4 sessions and 2 matches", n)
	}
	if again := written(t, p, Options{Revision: 1, Alarm: 30 * time.Minute, Changed: time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)}); again != got {
		t.Error("the same plan gives other bytes")
	}
	if first := written(t, p, Options{}); strings.Contains(first, "CANCELLED") || strings.Count(first, "BEGIN:VEVENT") != 5 {
		t.Errorf("the first edition cancels something:\n%s", first)
	}
}

// uids returns the UID of each event by its day.
func uids(t *testing.T, p *plan.Weeks) map[string]string {
	all := map[string]string{}
	uid := ""
	for line := range strings.SplitSeq(written(t, p, Options{}), "\r\n") {
		if v, ok := strings.CutPrefix(line, "UID:"); ok {
			uid = v
		}
		if v, ok := strings.CutPrefix(line, "DTSTART;VALUE=DATE:"); ok {
			all[v] = uid
		}
	}
	return all
}

// TestMovedKeepsItsName holds that a session that is moved stays the same
// event, and that no two events share a name.
func TestMovedKeepsItsName(t *testing.T) {
	const days = "days: {mon: a.yaml, thu: a.yaml}\nmatches: [2026-12-19, 2026-12-20]\n"
	before, after := uids(t, planOf(t, "T", days)), uids(t, planOf(t, "T", days+"move: {2026-12-10: 2026-12-12}\n"))
	if before["20261210"] == "" || before["20261210"] != after["20261212"] {
		t.Errorf("moved from %q to %q", before["20261210"], after["20261212"])
	}
	seen := map[string]bool{}
	for _, id := range before {
		if seen[id] {
			t.Errorf("two events are called %s", id)
		}
		seen[id] = true
	}
	if len(seen) != 6 {
		t.Errorf("%d events, want 6", len(seen))
	}
}

// TestLines holds random titles against section 3.1: no line of more than 75
// octets, none broken within a rune, and unfolded and unescaped the same text.
func TestLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.RuneFrom([]rune("abc ,;\\\n跳箱ü🦵"))).Draw(t, "text")
		var b bytes.Buffer
		l := lines{w: &b}
		l.add("SUMMARY", escape(text))
		for line := range strings.SplitSeq(strings.TrimSuffix(b.String(), "\r\n"), "\r\n") {
			if len(line) > 75 || !utf8.ValidString(line) {
				t.Fatalf("the line %q", line)
			}
		}
		unfolded := strings.ReplaceAll(strings.TrimSuffix(b.String(), "\r\n"), "\r\n ", "")
		unescaped := strings.NewReplacer(`\\`, `\`, `\;`, ";", `\,`, ",", `\n`, "\n").Replace(strings.TrimPrefix(unfolded, "SUMMARY:"))
		if unescaped != text {
			t.Fatalf("%q is read as %q", text, unescaped)
		}
	})
}

// TestLanguage: an event holds no word that is neither the language's nor the
// plan's, and is the same event in any language.
func TestLanguage(t *testing.T) {
	p := planOf(t, "Two weeks", `days: {mon: {session: a.yaml, at: "18:30"}, thu: a.yaml}
lighter: [{week: 2, keep: 60%}]
matches: [2026-12-19]
move: {2026-12-10: 2026-12-11}
`)
	l := texttest.Marked()
	for line := range strings.SplitSeq(strings.ReplaceAll(written(t, p, Options{Language: l}), "\r\n ", ""), "\r\n") {
		what, said, _ := strings.Cut(line, ":")
		if what != "SUMMARY" && what != "DESCRIPTION" && what != "X-WR-CALNAME" {
			continue
		}
		if words := texttest.Unmarked(strings.ReplaceAll(said, `\n`, " "), "Two weeks Hops and more"); len(words) > 0 {
			t.Errorf("%q in %s", words, line)
		}
	}
	for id := range uids(t, p) {
		if !strings.Contains(written(t, p, Options{Language: l}), uids(t, p)[id]) {
			t.Errorf("the event of %s has another name", id)
		}
	}
}

// Contacts that nobody counted make those of the event a least figure.
func TestContactsAtLeast(t *testing.T) {
	p, err := weeks.Parse("plan.yaml", []byte("coldfloor: 1\ntitle: T\nstarts: 2026-12-07\nweeks: 1\ndays: {mon: a.yaml}\n"), func(string) (*sessions.Session, error) {
		return sessions.Parse("a.yaml", []byte("coldfloor: 1\ntitle: S\nblocks: [{title: Up, exercises: [{name: Hop, reps: 3, contacts: 1}, {name: Tuck jumps, reps: 5}]}]"))
	})
	if err != nil {
		t.Fatal(err)
	}
	for l, want := range map[*text.Language]string{&text.English: "at least 3 foot contacts", &text.German: "mindestens 3 Bodenkontakte"} {
		if got := strings.ReplaceAll(written(t, plan.OfWeeks(p), Options{Language: l}), "\r\n ", ""); !strings.Contains(got, want) {
			t.Errorf("lacks %q in\n%s", want, got)
		}
	}
}
