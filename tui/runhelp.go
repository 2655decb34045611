package tui

import (
	"slices"
	"strings"
)

// fullHelp returns every key with what it does.
func (m runScreen) fullHelp() *helping {
	all := m.keys.FullHelp()
	k := &m.style.lang.Keys
	return &helping{keys: slices.Concat(all...), plain: strings.Split(m.style.help.FullHelpView(all), "\n"), other: []string{k.StopToo, k.AnyOther}, page: m.page}
}

// helpPages returns how many pages the keys take.
func (m runScreen) helpPages() int {
	if !m.small() {
		return 1
	}
	return len(frame{width: m.width, height: m.height, help: m.fullHelp()}.helpPages())
}

// helpFoot says what the key that lists the keys does next.
func (m runScreen) helpFoot() string {
	if of := m.helpPages(); m.page < of-1 {
		return m.style.lang.Screen.HelpMore(m.page+1, of)
	}
	return m.style.lang.Screen.HelpBack
}

// turnHelp lists the keys, or turns to the next page of them, and after the last
// one goes back to the session.
func (m runScreen) turnHelp() runScreen {
	if m.helping && m.page < m.helpPages()-1 {
		m.page++
		return m
	}
	m.helping, m.page = !m.helping, 0
	return m
}
