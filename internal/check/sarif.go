package check

import (
	"io"
	"net/url"
	"path/filepath"
	"strings"

	"github.com/owenrumney/go-sarif/v3/pkg/report/v210/sarif"
)

// WriteSARIF writes the findings of all files as a SARIF 2.1.0 log (OASIS
// Static Analysis Results Interchange Format), for editors and code hosts.
func WriteSARIF(w io.Writer, files []FileFindings) error {
	return sarifOf(files).PrettyWrite(w)
}

// sarifOf returns the log of one run over the files.
func sarifOf(files []FileFindings) *sarif.Report {
	driver := sarif.NewToolComponent().WithName("coldfloor")
	index := map[string]int{ProblemRule: len(rules)}
	for i, r := range rules {
		index[r.Name] = i
		driver.AddRule(descriptor(r.Name, r.Title, r.Reason+" "+strings.Join(r.Sources, " ")))
	}
	driver.AddRule(descriptor(ProblemRule, "a file that is no valid session", "The file cannot be read as a session."))
	run := sarif.NewRun().WithTool(sarif.NewTool().WithDriver(driver)).WithColumnKind("unicodeCodePoints")
	for _, file := range files {
		where := sarif.NewArtifactLocation().WithURI(uriOf(file.File))
		run.AddArtifact(sarif.NewArtifact().WithLocation(where))
		for _, f := range file.Findings {
			run.AddResult(result(f, where).WithRuleIndex(index[f.Rule]))
		}
	}
	return sarif.NewReport().AddRun(run)
}

func descriptor(name, title, full string) *sarif.ReportingDescriptor {
	return sarif.NewReportingDescriptor().WithID(name).
		WithShortDescription(sarif.NewMultiformatMessageString().WithText(title)).
		WithFullDescription(sarif.NewMultiformatMessageString().WithText(full))
}

// result returns one finding; the severities have SARIF's own names.
func result(f Finding, where *sarif.ArtifactLocation) *sarif.Result {
	text := f.Message
	if f.Hint != "" {
		text += " (hint: " + f.Hint + ")"
	}
	place := sarif.NewPhysicalLocation().WithArtifactLocation(where)
	if f.Pos.Line > 0 {
		place.WithRegion(sarif.NewRegion().WithStartLine(f.Pos.Line).WithStartColumn(max(f.Pos.Column, 1)))
	}
	r := sarif.NewRuleResult(f.Rule).WithLevel(string(f.Severity)).WithMessage(sarif.NewTextMessage(text)).
		AddLocation(sarif.NewLocationWithPhysicalLocation(place))
	if len(f.Figures) > 0 {
		bag := sarif.NewPropertyBag()
		for name, v := range f.Figures {
			bag.Add(name, v)
		}
		r.WithProperties(bag)
	}
	return r
}

// uriOf returns the URI of a file: relative where its path is.
func uriOf(file string) string {
	u := url.URL{Path: filepath.ToSlash(file)}
	if filepath.IsAbs(file) {
		u.Scheme = "file"
		u.Path = "/" + strings.TrimPrefix(u.Path, "/")
	}
	return u.String()
}
