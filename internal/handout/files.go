package handout

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"coldfloor/internal/calendar"
	"coldfloor/internal/plan"
	"coldfloor/internal/players"
	"coldfloor/internal/sheet"
	"coldfloor/internal/text"
	"coldfloor/internal/wholefile"
	"coldfloor/sessions/weeks"
)

// files is the folder of one handout. A file that has the right content
// already is left alone, so that a second time only what changed is written.
type files struct {
	folder string
	inputs []string // what is read, and so never written over
	given  *Given
	told   func() // after each file
}

// put puts content at a name in the folder.
func (f *files) put(name string, content []byte) error {
	defer f.told()
	path := filepath.Join(f.folder, name)
	if was, err := os.ReadFile(path); err == nil && bytes.Equal(was, content) {
		f.given.Kept++
		return nil
	}
	if err := wholefile.Folder(f.folder, 0o755); err != nil {
		return err
	}
	if err := wholefile.Write(path, content, wholefile.Options{Mode: 0o644, Force: true, Inputs: f.inputs}); err != nil {
		return err
	}
	f.given.Written = append(f.given.Written, name)
	return nil
}

// text puts a text.
func (f *files) text(name, content string) error { return f.put(name, []byte(content)) }

// sessions puts the sessions of the week as files.
func (f *files) sessions(days []day) error {
	var errs []error
	for _, d := range days {
		errs = append(errs, f.put(d.FileName()+".yaml", d.session.Source))
	}
	return errors.Join(errs...)
}

// paper puts the week and its sheets as one document.
func (w *writer) paper(f *files, own *weeks.Plan, week weeks.Week, p *players.Player, days []day) error {
	l := text.In(p.Language)
	var docs []*sheet.Doc
	for _, d := range days {
		docs = append(docs, sheet.Of(d.plan, l))
	}
	var out bytes.Buffer
	if _, err := sheet.Together(&out, w.Paper, front(own, week, p, l, days), docs); err != nil {
		return err
	}
	return f.put(weekName(w.Week)+".pdf", out.Bytes())
}

// calendar puts the whole plan as a calendar: a week alone would take the others
// out of a calendar that has them.
func (w *writer) calendar(f *files, own *weeks.Plan, l *text.Language) error {
	var out bytes.Buffer
	o := calendar.Options{Alarm: w.Alarm, Changed: own.Changed(), Language: l}
	if err := calendar.Write(&out, plan.OfWeeks(own), o); err != nil {
		return err
	}
	return f.put("calendar.ics", out.Bytes())
}

// folderName makes a folder's name of a player's: letters, digits, spaces and
// hyphens, on every system the same.
func folderName(name string) string {
	text := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) || r == ' ' || r == '-' {
			return r
		}
		return '-'
	}, name)
	text = strings.Trim(text, " -")
	switch strings.ToLower(text) {
	case "", "con", "prn", "aux", "nul": // device names on Windows
		return strings.TrimSpace("player " + text)
	}
	return text
}
