package tui

import (
	"fmt"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/journal"
	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/safetext"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
	"coldfloor/tui/keyline"
)

// planChosen is sent when a session was chosen.
type planChosen struct{ plan *plan.Plan }

// chooseScreen lists the sessions.
type chooseScreen struct {
	offers   []run.Offer
	problems []string // files that are meant as sessions and cannot be read
	now      time.Time
	style    *style
	keys     listKeys
	at       int

	width, height int
}

// newChooseScreen returns the list of what can be chosen. Now is what the days
// since a session are counted to.
func newChooseScreen(offers []run.Offer, problems []string, now time.Time, s *style) chooseScreen {
	return chooseScreen{offers: offers, problems: problems, now: now, style: s, keys: newListKeys(&s.lang.Keys)}
}

// Update acts on a key.
func (m chooseScreen) Update(k tea.KeyMsg) (chooseScreen, tea.Cmd) {
	switch {
	case key.Matches(k, m.keys.Up):
		m.at = max(0, m.at-1)
	case key.Matches(k, m.keys.Down):
		m.at = max(0, min(len(m.offers)-1, m.at+1))
	case key.Matches(k, m.keys.Choose):
		if m.at < len(m.offers) {
			p := m.offers[m.at].Plan
			return m, func() tea.Msg { return planChosen{p} }
		}
	case key.Matches(k, m.keys.Stop):
		return m, tea.Quit
	}
	return m, nil
}

// View draws the list, with more about the session at the cursor below it.
func (m chooseScreen) View() string {
	var lines []string
	if m.height >= titledList {
		lines = append(lines, titleBar(m.style, m.style.lang.Choose.Title, m.width))
	}
	if m.height >= MinHeight {
		lines = append(lines, m.style.quiet.Render(m.row("  ", m.columns(nil))))
	}
	about := m.about()
	room := max(1, m.height-len(lines)-len(about)-1)
	lines = append(lines, m.list(room)...)
	lines = append(lines, about...)
	keys, _ := keyline.Fit(*m.style.help, m.keys.ShortHelp(), m.width)
	lines = append(lines, keys)
	return m.style.screen(lines, m.width, m.height)
}

// list draws so many lines of the list around the cursor.
func (m chooseScreen) list(room int) []string {
	all := make([]string, len(m.offers))
	for i := range all {
		all[i] = m.offer(i)
	}
	top := max(0, min(m.at-room/2, len(all)-room))
	return m.style.inSight(all, top, room, m.width)
}

// offer draws one line of the list.
func (m chooseScreen) offer(i int) string {
	if i == m.at {
		return m.style.strong.Render(m.row("> ", m.columns(&m.offers[i])))
	}
	return m.row("  ", m.columns(&m.offers[i]))
}

// columns returns the title, length, blocks, contacts and last day of a
// session, or the columns' names for nil.
func (m chooseScreen) columns(o *run.Offer) [5]string {
	if o == nil {
		return [5]string{m.style.lang.Choose.Session, m.style.lang.Choose.Length, m.style.lang.Choose.Blocks, m.style.lang.Choose.Contacts, m.style.lang.Choose.LastDone}
	}
	p := o.Plan
	return [5]string{safetext.Clean(m.style.lang.Title(p.Session.Title)), units.Clock(p.Total), strconv.Itoa(len(p.Blocks)),
		journal.Count{N: p.Contacts, Known: jumps.AllCounted(p.Session.Blocks...)}.Cell(), ago(o.Last, m.now, &m.style.lang.Choose)}
}

// row lays the columns out. In a narrow window it has the title and the length,
// and the last day if that costs no title a letter.
func (m chooseScreen) row(mark string, c [5]string) string {
	right := fmt.Sprintf("%8s", c[1])
	switch {
	case m.width >= wideList:
		right = fmt.Sprintf("%8s %7s %9s   %-12s", c[1], c[2], c[3], c[4])
	case m.showsDays():
		right += fmt.Sprintf("  %-12s", c[4])
	}
	return safetext.Fit(mark+safetext.Pad(c[0], min(50, max(10, m.width-ansi.StringWidth(right)-3)))+right, m.width)
}

// titledList is the least height at which the list has a title: in a lower window
// each line is a session's, or says how many are out of sight.
const titledList = 7

// wideList is from which width on the list has all its columns, and daysWidth is
// what the length and the last day take.
const (
	wideList  = 64
	daysWidth = 8 + 2 + 12
)

// showsDays reports whether the list has room for when each session was done
// last. If not, it is said of the session at the cursor.
func (m chooseScreen) showsDays() bool {
	if m.width >= wideList {
		return true
	}
	for _, o := range m.offers {
		if ansi.StringWidth(safetext.Clean(m.style.lang.Title(o.Plan.Session.Title))) > m.width-daysWidth-3 {
			return false
		}
	}
	return true
}

// ago says how long ago a day was, in days of the calendar.
func ago(t, now time.Time, l *text.Choose) string {
	if t.IsZero() {
		return l.NotYet
	}
	day := func(t time.Time) time.Time {
		y, mo, d := t.Local().Date()
		return time.Date(y, mo, d, 0, 0, 0, 0, time.UTC)
	}
	switch n := int(day(now).Sub(day(t)).Hours() / 24); {
	case n <= 0:
		return l.Today
	case n == 1:
		return l.Yesterday
	default:
		return l.DaysAgo(n)
	}
}

// about says more of the session at the cursor, and of files that cannot be
// read.
func (m chooseScreen) about() []string {
	if m.height < MinHeight || m.at >= len(m.offers) {
		return nil
	}
	l := m.style.lang
	s := l.Session(m.offers[m.at].Plan.Session)
	level := l.Choose.Level(l.Choose.Levels[string(s.Level)])
	about := []string{"", s.For + ". " + level}
	switch {
	case s.For == "" && s.Level == "":
		about[1] = ""
	case s.For == "":
		about[1] = level
	case s.Level == "":
		about[1] = s.For
	}
	if file := m.offers[m.at].File; file != "" { // a copy has the title of what it was copied from
		about[1] = strings.TrimSuffix(filepath.Base(file)+". "+about[1], ". ")
	}
	if !m.showsDays() {
		about[1] = strings.TrimSuffix(l.Choose.LastDone+": "+ago(m.offers[m.at].Last, m.now, &l.Choose)+"; "+about[1], "; ")
	}
	titles := make([]string, len(s.Blocks))
	for i, b := range s.Blocks {
		titles[i] = b.Title
		if b.Rounds > 1 {
			titles[i] += fmt.Sprintf(" ×%d", b.Rounds)
		}
	}
	about = append(about, safetext.Wrap(strings.Join(titles, ", "), m.width-4, max(1, m.height/8))...)
	if n := len(m.problems); n > 0 {
		broken := m.style.lang.Choose.CannotRead(strings.Join(m.problems, ", "))
		about = append(about, safetext.Wrap(broken, m.width-4, 2)...)
	}
	for i, l := range about[1:] {
		about[i+1] = m.style.quiet.Render("  " + safetext.Fit(l, m.width-2))
	}
	return append(about, "")
}
