// Package handout writes all that a player needs for a week, with the program
// or without it: the week and its sessions on paper, a track a session, the
// sessions as files, the calendar, and how to send back what was done.
package handout

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"coldfloor/internal/check"
	"coldfloor/internal/paper"
	"coldfloor/internal/plan"
	"coldfloor/internal/players"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/internal/wholefile"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
	"coldfloor/sound"
)

// Options says what is handed out.
type Options struct {
	Plan    *weeks.Plan
	Week    int // from 1
	Folder  string
	Players []players.Player // a folder each; nil: one handout, for the settings' own player
	Own     settings.Player  // whose language, level, room and limits apply if there are no Players
	Now     time.Time

	Paper paper.Size
	Alarm time.Duration // before sessions at a time of day, in the calendar; 0: none
	// Heard returns what is heard in the track of a plan, for a player; nil: no
	// tracks are written.
	Heard    func(ctx context.Context, p *plan.Plan, player *settings.Player) (Heard, error)
	Progress func(done, all int) // called after each file; may be nil
}

// Heard is what is heard in a track. Words take long to render, and so are asked
// for only if the track is made.
type Heard struct {
	Cues  sound.Options                               // without words
	Print []byte                                      // stands for the words: while it is the same, so are they
	Speak func(context.Context, *sound.Options) error // renders the words and adds them; nil: none are spoken
}

// Given is what one player was handed.
type Given struct {
	Player  string // empty: nobody is named
	Folder  string
	Written []string // files that are new or were changed, by name
	Kept    int      // files that were right already
	Found   []Found  // what the check has against a session, for this player and room
	Err     error    // what kept the rest from being written
}

// Found is the findings of one session.
type Found struct {
	Day      weeks.Planned
	Title    string
	Findings []check.Finding // errors and warnings
}

// Write writes the handouts of a week. A player whose handout fails stops
// nobody else's: each Given has its own error. The error is one that stops all,
// such as a folder that cannot be made.
func Write(ctx context.Context, o Options) ([]Given, error) {
	if err := wholefile.Folder(o.Folder, 0o755); err != nil {
		return nil, err
	}
	temp, err := os.MkdirTemp("", "coldfloor-handout")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(temp)
	all := o.Players
	if all == nil {
		own := o.Own
		own.Name = ""
		all = []players.Player{{Player: own}}
	}
	w := &writer{Options: o, tracks: trackStore{folder: temp, known: map[string]*trackOf{}}, taken: map[string]int{}}
	w.all = len(all) * w.filesEach()
	var given []Given
	for i := range all {
		if ctx.Err() != nil {
			return given, ctx.Err()
		}
		given = append(given, w.player(ctx, &all[i]))
	}
	return given, ctx.Err()
}

// errInterrupted is what keeps the rest of a handout from being written if its
// writing was interrupted.
var errInterrupted = errors.New("it was interrupted")

// writer writes the handouts one after the other.
type writer struct {
	Options
	tracks    trackStore
	done, all int
	taken     map[string]int // folders by name in small letters: how many players have it
}

// freeName returns the name, with a number behind it if another player has it.
func (w *writer) freeName(name string) string {
	key := strings.ToLower(name)
	w.taken[key]++
	if n := w.taken[key]; n > 1 {
		return fmt.Sprintf("%s %d", name, n)
	}
	return name
}

// filesEach returns how many files a handout has.
func (w *writer) filesEach() int {
	days := len(w.Plan.Weeks()[w.Week-1].Days)
	if w.Heard == nil {
		return days + 3
	}
	return 2*days + 3
}

// step reports one more file.
func (w *writer) step() {
	w.done++
	if w.Progress != nil {
		w.Progress(min(w.done, w.all), w.all)
	}
}

// player writes one handout.
func (w *writer) player(ctx context.Context, p *players.Player) Given {
	g := Given{Player: p.Name, Folder: w.Folder}
	if p.Name != "" {
		g.Folder = filepath.Join(w.Folder, w.freeName(folderName(p.Name)))
	}
	if g.Err = w.fill(ctx, p, &g); g.Err != nil && ctx.Err() != nil {
		g.Err = errInterrupted
	}
	return g
}

// fill writes the files of one handout.
func (w *writer) fill(ctx context.Context, p *players.Player, g *Given) error {
	own, err := w.Plan.ForPlayer(p.Away)
	if err != nil {
		return fmt.Errorf("with this player's days away the plan is not valid: %w", err)
	}
	week := own.Weeks()[w.Week-1]
	var days []day
	for _, d := range week.Days {
		s, err := own.WrittenFor(d, p.Easier)
		if err != nil {
			return fmt.Errorf("%s of %s: %w", d.Slot.Session, d.Date, err)
		}
		days = append(days, day{Planned: d, session: s, plan: plan.Of(s)})
	}
	for _, d := range days {
		found := w.check(d, &p.Player)
		if len(found) > 0 {
			g.Found = append(g.Found, Found{d.Planned, d.session.Title, found})
		}
	}
	l := text.In(p.Language)
	words := &l.Handout
	files := files{folder: g.Folder, inputs: own.Files(), given: g, told: w.step}
	return errors.Join(files.sessions(days), w.paper(&files, own, week, p, days), w.calendar(&files, own, l),
		files.text(words.FileName, sendBack(p.Name, words)), w.sound(ctx, &files, &p.Player, days))
}

// day is a session of the week with its plan.
type day struct {
	weeks.Planned
	session *sessions.Session
	plan    *plan.Plan
}

// check returns the errors and warnings of a session for a player.
func (w *writer) check(d day, p *settings.Player) []check.Finding {
	var found []check.Finding
	for _, f := range check.Run(d.plan, check.Options{Player: *p, Now: w.Now}) {
		if f.Severity != check.Note {
			found = append(found, f)
		}
	}
	return found
}
