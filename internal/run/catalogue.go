package run

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"sync"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// maxFiles is how many files of a folder are read at most.
const maxFiles = 200

// sessionKey is the key that a session file cannot do without.
var sessionKey = regexp.MustCompile(`(?m)^coldfloor\s*:`)

// Offer is a session to choose.
type Offer struct {
	Plan *plan.Plan
	File string // the file that it is in; empty: built in
	Last time.Time
}

// Catalogue returns the built-in sessions and then those in the files of the
// folder that can be read as one. The problems are the files that are meant as
// sessions and cannot.
func Catalogue(dir string) (offers []Offer, problems []string) {
	for _, p := range builtins() {
		offers = append(offers, Offer{Plan: p})
	}
	files, _ := filepath.Glob(filepath.Join(dir, "*.y*ml"))
	slices.Sort(files)
	for _, f := range files[:min(len(files), maxFiles)] {
		o, err := weeks.Open(f)
		switch {
		case err == nil && o.Session == nil: // a plan of weeks, which is run by its name
		case err == nil:
			offers = append(offers, Offer{Plan: plan.Of(o.Session), File: f})
		case meant(f):
			problems = append(problems, f)
		}
	}
	return offers, problems
}

// builtins returns the plans of the built-in sessions. They are read side by
// side, for the first screen waits for them.
func builtins() []*plan.Plan {
	all := sessions.Builtins()
	plans := make([]*plan.Plan, len(all))
	var reading sync.WaitGroup
	for i, b := range all {
		reading.Go(func() {
			if s, err := b.Session(); err == nil {
				plans[i] = plan.Of(s)
			}
		})
	}
	reading.Wait()
	return slices.DeleteFunc(plans, func(p *plan.Plan) bool { return p == nil })
}

// meant reports whether a file begins as a session file does, comments apart:
// other programs keep YAML about too.
func meant(file string) bool {
	f, err := os.Open(file)
	if err != nil {
		return false
	}
	defer f.Close()
	head := make([]byte, 4096)
	n, _ := f.Read(head)
	return sessionKey.Match(head[:n])
}

// When fills in when each offer was last done, from the log.
func (f *Flow) When(offers []Offer) error {
	if f.log.Journal == nil {
		return nil
	}
	o, err := f.log.Journal.Overview()
	if err != nil {
		return err
	}
	names := make([]string, len(offers))
	for i, offer := range offers {
		names[i] = offer.source()
	}
	last := o.LastDone(names...)
	for i := range offers {
		offers[i].Last = last[names[i]]
	}
	return nil
}

// source returns what the log calls the offered session by.
func (o *Offer) source() string {
	name := o.Plan.Session.Name
	if o.File == "" {
		return name
	}
	if abs, err := filepath.Abs(name); err == nil {
		return abs
	}
	return name
}
