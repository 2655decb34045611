package weeks

import (
	"fmt"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// The keys of each mapping of a file.
var (
	planKeys    = []string{"coldfloor", "title", "for", "level", "starts", "weeks", "days", "grow", "lighter", "hold", "matches", "away", "move"}
	slotKeys    = []string{"session", "at", "only"}
	growKeys    = []string{"in", "block", "exercise", "what", "by", "every", "from", "until", "limit", "each"}
	lighterKeys = []string{"week", "keep"}
)

// Finder returns the session that a plan names, as it is written there. Its
// error is a yamlread.Problems if the session's file is itself wrong.
type Finder func(name string) (*sessions.Session, error)

// Parse reads a plan of weeks, which the user knows as name; find gives the
// sessions that it names, each asked for once. The error, if any, is a
// yamlread.Problems with everything that is wrong.
func Parse(name string, src []byte, find Finder) (*Plan, error) {
	if len(src) > MaxBytes {
		return nil, yamlread.Problems{{File: name, Pos: yamlread.Pos{Line: 1, Column: 1},
			Message: "the file is larger than 64 KiB", Hint: "this cannot be a plan typed by hand; is it the right file?"}}
	}
	file, m := yamlread.Parse(name, src, planKeys...)
	if m == nil {
		return nil, file.Err()
	}
	if v := m.Int("coldfloor", 1, 999, sessions.Version); v != sessions.Version {
		m.Problem("coldfloor", fmt.Sprintf("format version %d is not known", v),
			fmt.Sprintf("this program reads version %d; a newer one may read this file", sessions.Version))
		return nil, file.Err()
	}
	r := reader{m: m, find: find, p: &Plan{Name: name, Source: src, Marks: m.Marks(),
		bases: map[string]*sessions.Session{}, made: map[sessionWeek]*sessions.Session{}, full: map[sessionWeek]*sessions.Session{}}}
	r.read()
	if err := file.Err(); err != nil {
		return nil, err
	}
	return r.p, nil
}

// reader is one reading of a file.
type reader struct {
	m       *yamlread.Mapping
	p       *Plan
	find    Finder
	dated   bool // starts and weeks can be relied on
	unread  bool // a session of days could not be read, which was said: another place may name it
	grow    []*yamlread.Mapping
	lighter []*yamlread.Mapping
	moves   []yamlread.Pair
	scratch *sessions.Session // a clone of the session at work
}

// read reads every key, and then judges what the keys mean together.
func (r *reader) read() {
	m, p := r.m, r.p
	m.Need("coldfloor", "title", "starts", "weeks", "days")
	p.Title = m.Text("title", sessions.MaxLabel)
	p.For = m.Text("for", sessions.MaxText)
	p.Level = sessions.Level(m.Enum("level", "", string(sessions.Beginner), string(sessions.Intermediate), string(sessions.Advanced)))
	starts := r.readStart()
	p.Count = m.Int("weeks", 1, MaxWeeks, 0)
	r.dated = starts && p.Count > 0
	if r.dated && p.End() > lastDate {
		m.Problem("starts", "the plan ends after the year 9999", "check the year")
		r.dated = false
	}
	r.readDays()
	r.readGrow()
	r.readLighter()
	r.readHold()
	r.readMatches()
	r.readAway()
	r.readMoves()
	r.judge()
}

// lastDate is the last day that can be written with a year of four digits.
var lastDate, _ = units.ParseDate("9999-12-31")

// readStart reads the first day of week 1, and reports whether it could.
func (r *reader) readStart() (ok bool) {
	r.m.Scalar("starts", units.DateHint, func(text string) (err error) {
		r.p.Starts, err = units.ParseDate(text)
		ok = err == nil
		return err
	})
	return ok
}

// weeks is how many weeks there may be: those of the plan, or the most if
// the file does not say.
func (r *reader) weeks() int {
	if r.p.Count == 0 {
		return MaxWeeks
	}
	return r.p.Count
}
