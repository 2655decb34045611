package review

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/report"
	"coldfloor/internal/review"
	"coldfloor/internal/safetext"
	"coldfloor/tui/keyline"
)

// page is what a screen has to show, and which part of it is shown.
type page struct {
	lines     []string
	fixed     int // of lines, stay at the top
	selected  int // line that the cursor is on; -1: none
	top, left int
}

// The lines around a page: the title and the views above it, the keys below.
const around = 3

// room returns how many lines of a page are shown.
func (m *Model) room() int { return max(1, m.height-around-len(m.detail())) }

// detail is what stands below a squad: all that is to be said first of every
// player, as far as there is room, the one that the cursor is on before the
// others if not all fit.
func (m *Model) detail() []string {
	const least, header = 16, 2 // lines: of a window that has room for it, and of the squad's header
	if m.screen != onSquad || m.allKeys || m.height < least {
		return nil
	}
	every := []*review.Player{}
	for _, p := range m.opts.Squad.Players {
		if report.Troubled(p) != "" {
			every = append(every, p)
		}
	}
	room := m.height - around - header - len(m.opts.Squad.Players) - 1
	switch lines := m.saidOf(every); {
	case len(lines) <= room:
		return append([]string{""}, lines...)
	case len(lines) == room+1: // better no line between than one unsaid
		return lines
	}
	lines := m.said(m.current())
	others := slices.DeleteFunc(every, func(p *review.Player) bool { return p == m.current() })
	for len(others) > 0 && len(lines)+len(m.said(others[0])) < room {
		lines = append(lines, m.said(others[0])...)
		others = others[1:]
	}
	if len(others) > 0 && len(lines) < room {
		lines = append(lines, fmt.Sprintf("and %d more to look at", len(others)))
	}
	return append([]string{""}, lines...)
}

// saidOf is what is to be said first of some players.
func (m *Model) saidOf(players []*review.Player) []string {
	var lines []string
	for _, p := range players {
		lines = append(lines, m.said(p)...)
	}
	return lines
}

// said is what is to be said first of a player.
func (m *Model) said(p *review.Player) []string {
	text := report.Troubled(p)
	if text == "" {
		text = "nothing to look at"
	}
	return safetext.Wrap(p.Name+": "+text, m.width, 4)
}

// laidOut sets the page again for the window, and keeps the cursor in sight.
func (m Model) laidOut() Model {
	top, left := m.page.top, m.page.left
	switch {
	case m.allKeys:
		m.page = m.keyPage()
	case m.screen == onSquad:
		m.page = m.squadPage()
	case m.screen == onPlayer:
		m.page = m.playerPage()
	default:
		m.page = m.sessionPage()
	}
	m.page.top, m.page.left = top, left
	m.page.settle(m.width, m.room())
	return m
}

// settle keeps the part that is shown within the page, and the cursor in it.
func (p *page) settle(width, room int) {
	room -= p.fixed
	rest := len(p.lines) - p.fixed
	if p.selected >= 0 {
		at := p.selected - p.fixed
		p.top = min(p.top, at)
		p.top = max(p.top, at-room+1)
	}
	p.top = min(max(p.top, 0), max(rest-room, 0))
	widest := 0
	for _, l := range p.lines {
		widest = max(widest, ansi.StringWidth(l))
	}
	p.left = min(max(p.left, 0), max(widest-width, 0))
}

// longer reports whether there is more of the page than can be shown at once.
func (p *page) longer(room int) bool { return len(p.lines) > room }

// shown returns the lines of the page that are in sight, with a sign on those
// that go on beside it.
func (p *page) shown(width, room int) []string {
	fixed := min(p.fixed, room)
	lines := append([]string{}, p.lines[:min(fixed, len(p.lines))]...)
	from := min(p.fixed+p.top, len(p.lines))
	lines = append(lines, p.lines[from:min(from+room-fixed, len(p.lines))]...)
	for i, l := range lines {
		lines[i] = ansi.Truncate(rightOf(l, p.left), width, safetext.Ellipsis)
	}
	return lines
}

// rightOf returns what of a line is right of so many cells, with a sign in the
// first cell if anything is left of it.
func rightOf(line string, left int) string {
	if left == 0 {
		return line
	}
	if strings.TrimSpace(ansi.Strip(ansi.Truncate(line, left, ""))) == "" {
		return ansi.TruncateLeft(line, left, "")
	}
	return ansi.TruncateLeft(line, left+1, safetext.Ellipsis)
}

// View implements tea.Model.
func (m Model) View() string {
	lines := []string{m.titleLine(), m.viewLine()}
	shown := m.page.shown(m.width, m.room())
	lines = append(lines, shown...)
	detail := m.detail()
	for len(lines) < m.height-1-len(detail) {
		lines = append(lines, "")
	}
	lines = append(lines, detail...)
	lines = append(lines[:max(0, min(len(lines), m.height-1))], m.keyLine())
	return m.style.frame(lines, m.cut, m.height)
}

// between sets left and right at the ends of a line, the right one kept whole.
func (m *Model) between(left, right string) string {
	space := m.width - ansi.StringWidth(right)
	if space < 1 {
		return ansi.Truncate(right, m.width, "")
	}
	left = ansi.Truncate(left, max(0, space-1), safetext.Ellipsis)
	return left + strings.Repeat(" ", max(0, space-ansi.StringWidth(left))) + right
}

// position says which lines are in sight if not all are.
func (m *Model) position() string {
	if !m.page.longer(m.room()) {
		return ""
	}
	from := m.page.fixed + m.page.top
	return fmt.Sprintf("%d–%d of %d", from+1, min(from+m.room()-m.page.fixed, len(m.page.lines)), len(m.page.lines))
}

// keyLine names the keys of the screen, as many as find room.
func (m Model) keyLine() string {
	switch {
	case m.allKeys && m.page.longer(m.room()):
		return m.style.quiet.Render(safetext.Fit("↓ ↑ move, any other key: back", m.width))
	case m.allKeys:
		return m.style.quiet.Render(safetext.Fit("any key: back", m.width))
	}
	line, _ := keyline.Fit(m.help, m.shownKeys(), m.cut)
	return line
}

// shownKeys returns the keys that do something now.
func (m *Model) shownKeys() []key.Binding {
	all := m.keys.of(m.screen)
	var shown []key.Binding
	for _, b := range all {
		if b.Help().Key == m.keys.Back.Help().Key && m.screen == onPlayer && len(m.opts.Squad.Players) == 1 {
			continue
		}
		shown = append(shown, b)
	}
	return shown
}

// keyPage lists the keys.
func (m *Model) keyPage() page {
	p := page{lines: []string{m.style.strong.Render("Keys"), ""}, selected: -1}
	for _, b := range m.shownKeys() {
		p.lines = append(p.lines, m.style.strong.Render(safetext.Pad(names(b), 18))+b.Help().Desc)
	}
	return p
}

// names returns what all keys of a binding are called, the one that is shown at
// the foot first.
func names(b key.Binding) string {
	all := []string{b.Help().Key}
	for _, k := range b.Keys()[1:] {
		if k == " " {
			k = "space"
		}
		all = append(all, k)
	}
	return strings.Join(all, ", ")
}
