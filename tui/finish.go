package tui

import (
	"slices"
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/internal/journal"
)

// rated is sent when the form is left, with what was given.
type rated struct{ rating journal.Rating }

// maxNote bounds what can be typed into a line of the form, in characters.
const maxNote = 500

// finishScreen is the form after a session. Every line of it may be skipped.
type finishScreen struct {
	blocks  []journal.PlannedBlock
	counted []int // rounds as they were counted, a block each
	rounds  []int // as the player says
	rpe     int   // notSaid or 0 to 10
	pain    int   // notSaid, no or yes
	where   *textinput.Model
	note    *textinput.Model
	head    string // what was done, in a line

	style *style
	keys  formKeys
	at    int // the line with the cursor

	width, height int
}

// Answers of a line that has not been touched, and to yes or no.
const (
	notSaid = -1
	no      = 0
	yes     = 1
)

// newFinishScreen returns the form for a run of the blocks given in which those
// rounds were counted; nil if they are not known.
func newFinishScreen(blocks []journal.PlannedBlock, counted []int, head string, s *style) finishScreen {
	if len(counted) != len(blocks) {
		blocks, counted = nil, nil
	}
	input := func(hint string) *textinput.Model {
		t := textinput.New()
		t.Prompt, t.Placeholder, t.CharLimit = "", hint, maxNote
		t.PlaceholderStyle = s.quiet
		t.Cursor.SetMode(cursor.CursorStatic) // nothing on the screen blinks
		return &t
	}
	return finishScreen{blocks: blocks, counted: counted, rounds: slices.Clone(counted), rpe: notSaid, pain: notSaid,
		where: input(s.lang.Form.NotAnswered), note: input(s.lang.Form.NoteHint), head: head,
		style: s, keys: newFormKeys(&s.lang.Keys, &s.lang.Form), at: len(counted)}
}

// The lines of the form after those for the blocks, counted from the last
// block on. The place of the pain is passed over unless there is any.
const (
	lineRPE = iota
	linePain
	lineWhere
	lineNote
	lineSave
)

// resized returns the form for another size of the window.
func (m finishScreen) resized(width, height int) finishScreen {
	m.width, m.height = width, height
	wide := max(4, width-m.labelWidth()-5)
	m.where.Width, m.note.Width = wide, wide
	return m
}

// line returns which line has the cursor, counted from the last block on;
// below zero for a block.
func (m finishScreen) line() int { return m.at - len(m.rounds) }

// typing returns the text that is typed into, if any.
func (m *finishScreen) typing() *textinput.Model {
	switch m.line() {
	case lineWhere:
		return m.where
	case lineNote:
		return m.note
	}
	return nil
}

// Update acts on a message.
func (m finishScreen) Update(msg tea.Msg) (finishScreen, tea.Cmd) {
	k, isKey := msg.(tea.KeyMsg)
	input := m.typing()
	switch {
	case !isKey:
		return m, nil
	case key.Matches(k, m.keys.Leave), key.Matches(k, m.keys.Done), m.line() == lineSave && k.Type == tea.KeyEnter:
		return m, func() tea.Msg { return rated{m.rating()} }
	case key.Matches(k, m.keys.Up):
		return m.move(-1)
	case key.Matches(k, m.keys.Next):
		return m.move(1)
	case input != nil:
		var cmd tea.Cmd
		*input, cmd = input.Update(msg)
		return m, cmd
	case key.Matches(k, m.keys.Less):
		return m.turn(-1), nil
	case key.Matches(k, m.keys.More):
		return m.turn(1), nil
	}
	return m.typed(k), nil
}

// move moves the cursor by one line.
func (m finishScreen) move(by int) (finishScreen, tea.Cmd) {
	m.at = max(0, min(len(m.rounds)+lineSave, m.at+by))
	if m.line() == lineWhere && m.pain != yes {
		m.at += by
	}
	m.where.Blur()
	m.note.Blur()
	if input := m.typing(); input != nil {
		return m, input.Focus()
	}
	return m, nil
}

// turn changes the number or the answer at the cursor by one.
func (m finishScreen) turn(by int) finishScreen {
	switch line := m.line(); {
	case line < 0:
		return m.setRounds(m.rounds[m.at] + by)
	case line == lineRPE:
		m.rpe = max(notSaid, min(10, m.rpe+by))
	case line == linePain:
		m.pain = max(notSaid, min(yes, m.pain+by))
	}
	return m
}

// setRounds sets the rounds of the block at the cursor.
func (m finishScreen) setRounds(n int) finishScreen {
	m.rounds = slices.Clone(m.rounds)
	m.rounds[m.at] = max(0, min(m.blocks[m.at].Rounds, n))
	return m
}

// typed takes a figure, or the first letter of yes or no. A 1 and then a 0
// make ten.
func (m finishScreen) typed(k tea.KeyMsg) finishScreen {
	s := k.String()
	n, err := strconv.Atoi(s)
	figure := err == nil && len(s) == 1
	switch line := m.line(); {
	case line < 0 && figure:
		if ten := m.rounds[m.at]*10 + n; ten <= m.blocks[m.at].Rounds && m.rounds[m.at] > 0 {
			n = ten
		}
		return m.setRounds(n)
	case line == lineRPE && figure:
		if m.rpe == 1 && n == 0 {
			n = 10
		}
		m.rpe = n
	case line == linePain && key.Matches(k, m.keys.Yes):
		m.pain = yes
	case line == linePain && key.Matches(k, m.keys.No):
		m.pain = no
	}
	return m
}

// rating returns what was said; what was not touched is left out.
func (m finishScreen) rating() journal.Rating {
	var r journal.Rating
	if !slices.Equal(m.rounds, m.counted) {
		r.Rounds = m.rounds
	}
	if m.rpe != notSaid {
		v := float64(m.rpe)
		r.RPE = &v
	}
	if m.pain != notSaid {
		pain := m.pain == yes
		r.Pain = &pain
		if where := strings.TrimSpace(m.where.Value()); pain && where != "" {
			r.Where = &where
		}
	}
	if note := strings.TrimSpace(m.note.Value()); note != "" {
		r.Note = &note
	}
	return r
}
