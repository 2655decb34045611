// Package review is the screen of what was done: a squad's table, a player's
// weeks, rests, load, pain and sessions, and a session set by set.
package review

import (
	"errors"
	"slices"

	"github.com/charmbracelet/bubbles/help"
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"coldfloor/internal/review"
	"coldfloor/internal/safetext"
	"coldfloor/tui/glyph"
	"coldfloor/tui/onscreen"
)

// The smallest window that everything fits into; in a narrower one
// lines are cut off, in a lower one fewer are shown.
const (
	MinWidth  = 40
	MinHeight = 12
)

// Options says what is shown, and on what.
type Options struct {
	Squad   *review.Squad // one player or more
	By      review.Column // that the squad is sorted by
	Reverse bool
	Glyphs  glyph.Set
	Font    safetext.Repertoire // what the terminal's font has; nil: not known
	Look    *lipgloss.Renderer
}

// screen is which one is shown.
type screen int

const (
	onSquad screen = iota
	onPlayer
	onSession
)

// Model is the whole review on the screen. It is a tea.Model; make it with New.
type Model struct {
	opts          Options
	style         style
	keys          keys
	help          help.Model
	width, height int // what is set for: no narrower than MinWidth
	cut           int // width of the window

	screen  screen
	player  int // in the squad
	view    view
	session int  // in the player's recent ones
	allKeys bool // the keys are listed

	page page // of the screen that is shown
}

// New returns the review's first screen: the squad's table, or the player if
// there is one alone.
func New(o Options) Model {
	o.Squad.Sort(o.By, o.Reverse)
	s := newStyle(o.Look, o.Glyphs, o.Font)
	m := Model{opts: o, style: s, keys: newKeys(), help: s.help(), width: 80, height: 24, cut: 80}
	if len(o.Squad.Players) == 1 {
		m.screen = onPlayer
	}
	return m.laidOut()
}

// Init implements tea.Model.
func (m Model) Init() tea.Cmd { return nil }

// Update implements tea.Model.
func (m Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.width, m.height, m.cut = max(msg.Width, MinWidth), msg.Height, msg.Width
		return m.laidOut(), nil
	case tea.KeyMsg:
		return m.typed(msg)
	}
	return m, nil
}

// typed acts on keys. Letters that are typed fast arrive as one message.
func (m Model) typed(k tea.KeyMsg) (tea.Model, tea.Cmd) {
	if k.Type != tea.KeyRunes || len(k.Runes) < 2 || k.Paste {
		return m.pressed(k)
	}
	for _, r := range k.Runes {
		next, cmd := m.pressed(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}, Alt: k.Alt})
		if cmd != nil {
			return next, cmd
		}
		m = next.(Model)
	}
	return m, nil
}

// pressed acts on a key.
func (m Model) pressed(k tea.KeyMsg) (tea.Model, tea.Cmd) {
	if key.Matches(k, m.keys.Quit) {
		return m, tea.Quit
	}
	if m.allKeys {
		return m.amongKeys(k), nil
	}
	switch {
	case key.Matches(k, m.keys.Help):
		m.allKeys, m.page = true, page{}
	case key.Matches(k, m.keys.Back):
		return m.back()
	case key.Matches(k, m.keys.Open):
		return m.open(), nil
	case m.screen == onSquad && key.Matches(k, m.keys.Sort):
		return m.sorted(nextColumn(m.opts.By), m.opts.Reverse), nil
	case m.screen == onSquad && key.Matches(k, m.keys.Reverse):
		return m.sorted(m.opts.By, !m.opts.Reverse), nil
	case key.Matches(k, m.keys.Left):
		return m.sideways(-1), nil
	case key.Matches(k, m.keys.Right):
		return m.sideways(+1), nil
	default:
		m.moved(k)
	}
	return m.laidOut(), nil
}

// amongKeys acts on a key while the keys are listed: any but those that move
// through a list too long for the window leaves it.
func (m Model) amongKeys(k tea.KeyMsg) Model {
	if m.page.longer(m.room()) && key.Matches(k, m.keys.Up, m.keys.Down, m.keys.PageUp, m.keys.PageDown, m.keys.Top, m.keys.Bottom) {
		m.moved(k)
		return m.laidOut()
	}
	m.allKeys, m.page = false, page{}
	return m.laidOut()
}

// moved scrolls, or moves the cursor if there is one.
func (m *Model) moved(k tea.KeyMsg) {
	by := 0
	switch screenful := max(1, m.room()-1); {
	case key.Matches(k, m.keys.Up):
		by = -1
	case key.Matches(k, m.keys.Down):
		by = +1
	case key.Matches(k, m.keys.PageUp):
		by = -screenful
	case key.Matches(k, m.keys.PageDown):
		by = screenful
	case key.Matches(k, m.keys.Top):
		by = -len(m.page.lines)
	case key.Matches(k, m.keys.Bottom):
		by = len(m.page.lines)
	}
	if at, n := m.cursor(); at != nil {
		*at = min(max(*at+by, 0), max(n-1, 0))
		return
	}
	m.page.top += by
}

// cursor returns the cursor of the screen that is shown and the number of its
// rows, or nil if it has none.
func (m *Model) cursor() (at *int, n int) {
	switch {
	case m.allKeys:
		return nil, 0
	case m.screen == onSquad:
		return &m.player, len(m.opts.Squad.Players)
	case m.screen == onPlayer && m.view == sessionsView:
		return &m.session, len(m.current().Recent)
	}
	return nil, 0
}

// current returns the player that is shown, or that the cursor is on.
func (m *Model) current() *review.Player { return m.opts.Squad.Players[m.player] }

// open goes from the squad to a player, from a player to their sessions, and
// from there to one of them.
func (m Model) open() Model {
	switch {
	case m.screen == onSquad:
		m.screen, m.view, m.session = onPlayer, overviewView, 0
	case m.screen == onPlayer && m.view != sessionsView:
		m.view = sessionsView
	case m.screen == onPlayer && len(m.current().Recent) > 0:
		m.screen = onSession
	}
	m.page = page{}
	return m.laidOut()
}

// back goes to where open came from; from the first screen it leaves.
func (m Model) back() (tea.Model, tea.Cmd) {
	m.page = page{}
	switch {
	case m.screen == onSession:
		m.screen = onPlayer
	case m.screen == onPlayer && len(m.opts.Squad.Players) > 1:
		m.screen = onSquad
	default:
		return m, tea.Quit
	}
	return m.laidOut(), nil
}

// sideways goes to another view of a player, or moves what is too wide.
func (m Model) sideways(by int) Model {
	switch m.screen {
	case onPlayer:
		m.view = view((int(m.view) + by + len(viewNames)) % len(viewNames))
		m.page = page{}
	case onSession:
		m.page.left += by * sidestep
	}
	return m.laidOut()
}

// sidestep is how many cells a wide page moves at once.
const sidestep = 12

// sorted sorts the squad; the cursor stays on its player.
func (m Model) sorted(by review.Column, reverse bool) Model {
	on := m.current()
	m.opts.By, m.opts.Reverse = by, reverse
	squad := *m.opts.Squad
	squad.Players = slices.Clone(squad.Players)
	squad.Sort(by, reverse)
	m.opts.Squad = &squad
	m.player = slices.Index(m.opts.Squad.Players, on)
	return m.laidOut()
}

// nextColumn returns the column after by, and after the last one the first.
func nextColumn(by review.Column) review.Column {
	return review.Columns[(slices.Index(review.Columns, by)+1)%len(review.Columns)]
}

// Run shows the review on the terminal until the player leaves it.
func Run(o Options) error {
	_, err := onscreen.New(New(o), o.Look, false).Run()
	if errors.Is(err, tea.ErrInterrupted) {
		return nil
	}
	return err
}
