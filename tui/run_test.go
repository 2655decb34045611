package tui

import (
	tea "github.com/charmbracelet/bubbletea"
)

// keyTypes are the keys that are no letter, by the names the tests use.
var keyTypes = map[string]tea.KeyType{
	" ": tea.KeySpace, "enter": tea.KeyEnter, "pgdown": tea.KeyPgDown, "left": tea.KeyLeft, "right": tea.KeyRight,
	"up": tea.KeyUp, "down": tea.KeyDown, "esc": tea.KeyEsc, "ctrl+c": tea.KeyCtrlC, "ctrl+z": tea.KeyCtrlZ, "tab": tea.KeyTab,
	"shift+tab": tea.KeyShiftTab, "ctrl+s": tea.KeyCtrlS, "backspace": tea.KeyBackspace, "f5": tea.KeyF5,
}

// keyMsg returns the message for a key.
func keyMsg(k string) tea.KeyMsg {
	if typ, ok := keyTypes[k]; ok {
		msg := tea.KeyMsg{Type: typ}
		if k == " " {
			msg.Runes = []rune(" ")
		}
		return msg
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)}
}

// press presses one key after the other.
func press(m runScreen, keys ...string) runScreen {
	for _, k := range keys {
		m, _ = m.Update(keyMsg(k))
	}
	return m
}
