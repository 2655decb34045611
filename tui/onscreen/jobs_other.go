//go:build !unix

package onscreen

import tea "github.com/charmbracelet/bubbletea"

// Suspend is the command that stops the program; here there is no such thing.
func Suspend() tea.Msg { return nil }

// mindJobs does nothing: no program is stopped and continued here.
func (p Program) mindJobs() (end func()) { return func() {} }
