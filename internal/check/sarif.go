package check

import (
	"encoding/json"
	"io"
	"net/url"
	"path/filepath"
	"strings"
)

// The parts of a SARIF 2.1.0 log that the findings fill (OASIS Static Analysis
// Results Interchange Format, sections 3.13 and on). Everything in it that may
// be left out and says nothing is left out.
type (
	sarifLog struct {
		Schema  string     `json:"$schema"`
		Version string     `json:"version"`
		Runs    []sarifRun `json:"runs"`
	}
	sarifRun struct {
		Tool       sarifTool       `json:"tool"`
		ColumnKind string          `json:"columnKind"`
		Artifacts  []sarifArtifact `json:"artifacts,omitempty"`
		Results    []sarifResult   `json:"results"`
	}
	sarifTool struct {
		Driver sarifDriver `json:"driver"`
	}
	sarifDriver struct {
		Name  string      `json:"name"`
		Rules []sarifRule `json:"rules"`
	}
	sarifRule struct {
		ID    string    `json:"id"`
		Short sarifText `json:"shortDescription"`
		Full  sarifText `json:"fullDescription"`
	}
	sarifText struct {
		Text string `json:"text"`
	}
	sarifArtifact struct {
		Location sarifURI `json:"location"`
	}
	sarifURI struct {
		URI string `json:"uri"`
	}
	sarifResult struct {
		RuleID     string          `json:"ruleId"`
		RuleIndex  int             `json:"ruleIndex"`
		Level      Severity        `json:"level"`
		Message    sarifText       `json:"message"`
		Locations  []sarifLocation `json:"locations"`
		Properties figures         `json:"properties,omitempty"`
	}
	sarifLocation struct {
		Place sarifPlace `json:"physicalLocation"`
	}
	sarifPlace struct {
		Artifact sarifURI     `json:"artifactLocation"`
		Region   *sarifRegion `json:"region,omitempty"`
	}
	sarifRegion struct {
		StartLine   int `json:"startLine"`
		StartColumn int `json:"startColumn"`
	}
)

// sarifSchema is the address of the schema of a log.
const sarifSchema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json"

// WriteSARIF writes the findings of all files as a SARIF 2.1.0 log, for
// editors and code hosts.
func WriteSARIF(w io.Writer, files []FileFindings) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	return e.Encode(sarifOf(files))
}

// sarifOf returns the log of one run over the files. Columns count characters.
func sarifOf(files []FileFindings) sarifLog {
	driver := sarifDriver{Name: "coldfloor"}
	index := map[string]int{ProblemRule: len(rules)}
	for i, r := range rules {
		index[r.Name] = i
		driver.Rules = append(driver.Rules, sarifRule{r.Name, sarifText{r.Title}, sarifText{r.Reason + " " + strings.Join(r.Sources, " ")}})
	}
	driver.Rules = append(driver.Rules, sarifRule{ProblemRule, sarifText{"a file that is not a valid session"}, sarifText{"The file cannot be read as a session."}})
	run := sarifRun{Tool: sarifTool{driver}, ColumnKind: "unicodeCodePoints", Results: []sarifResult{}}
	for _, file := range files {
		where := sarifURI{uriOf(file.File)}
		run.Artifacts = append(run.Artifacts, sarifArtifact{where})
		for _, f := range file.Findings {
			run.Results = append(run.Results, resultOf(f, where, index[f.Rule]))
		}
	}
	return sarifLog{sarifSchema, "2.1.0", []sarifRun{run}}
}

// resultOf returns one finding; the severities have SARIF's own names.
func resultOf(f Finding, where sarifURI, rule int) sarifResult {
	text := f.Message
	if f.Hint != "" {
		text += " (hint: " + f.Hint + ")"
	}
	place := sarifPlace{Artifact: where}
	if f.Pos.Line > 0 {
		place.Region = &sarifRegion{f.Pos.Line, max(f.Pos.Column, 1)}
	}
	return sarifResult{f.Rule, rule, f.Severity, sarifText{text}, []sarifLocation{{place}}, f.Figures}
}

// uriOf returns the URI of a file: relative if its path is.
func uriOf(file string) string {
	u := url.URL{Path: filepath.ToSlash(file)}
	if filepath.IsAbs(file) {
		u.Scheme = "file"
		u.Path = "/" + strings.TrimPrefix(u.Path, "/")
	}
	return u.String()
}
