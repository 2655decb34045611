package check

import (
	"encoding/json"
	"fmt"
	"io"
	"slices"

	"coldfloor/internal/safetext"
	"coldfloor/internal/yamlread"
)

// FileFindings is what was found in one file.
type FileFindings struct {
	File     string // as the user named it
	Findings []Finding
}

// OfProblems returns what is wrong with a file that could not be read as a
// session, as findings.
func OfProblems(ps yamlread.Problems) []Finding {
	found := make([]Finding, len(ps))
	for i, p := range ps {
		found[i] = Finding{Rule: ProblemRule, Severity: Error, Pos: p.Pos, Message: p.Message, Hint: p.Hint}
	}
	return found
}

// AllSound reports whether no file has an error or a warning.
func AllSound(files []FileFindings) bool {
	return !slices.ContainsFunc(files, func(f FileFindings) bool { return !Sound(f.Findings) })
}

// WriteText writes a finding a line, "FILE:LINE:COLUMN: severity: sentence
// [rule]", and a "hint: " line under one that has a hint.
func WriteText(w io.Writer, files []FileFindings) error {
	for _, file := range files {
		name := safetext.Clean(file.File)
		for _, f := range file.Findings {
			if _, err := fmt.Fprintf(w, "%s:%d:%d: %s: %s [%s]\n", name, f.Pos.Line, f.Pos.Column, f.Severity, f.Message, f.Rule); err != nil {
				return err
			}
			if f.Hint == "" {
				continue
			}
			if _, err := fmt.Fprintf(w, "hint: %s\n", f.Hint); err != nil {
				return err
			}
		}
	}
	return nil
}

// jsonFinding is a finding as WriteJSON writes it.
type jsonFinding struct {
	File     string         `json:"file"`
	Line     int            `json:"line"`
	Column   int            `json:"column"`
	Severity Severity       `json:"severity"`
	Rule     string         `json:"rule"`
	Message  string         `json:"message"`
	Hint     string         `json:"hint,omitempty"`
	Figures  map[string]any `json:"figures,omitempty"`
}

// WriteJSON writes the findings of all files as one JSON array.
func WriteJSON(w io.Writer, files []FileFindings) error {
	list := []jsonFinding{}
	for _, file := range files {
		for _, f := range file.Findings {
			list = append(list, jsonFinding{file.File, f.Pos.Line, f.Pos.Column, f.Severity, f.Rule, f.Message, f.Hint, f.Figures})
		}
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(list)
}
