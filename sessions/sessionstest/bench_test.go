package sessionstest_test

import (
	"testing"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/sessions"

	"gopkg.in/yaml.v3"
)

// file is a session as yaml.v3 decodes it by itself: no positions, no checks,
// no durations.
type file struct {
	Coldfloor                 int
	Title, For, Level, LeadIn string `yaml:",omitempty"`
	Blocks                    []struct {
		Title, Part  string
		Trains       []string
		Rounds       int
		Rest, Change string
		RestAfter    string `yaml:"rest_after"`
		Exercises    []struct {
			Name, Rep, Tempo, How, Rest, Sides, Switch, Finish string
			Load, Floor, Travel, Overhead, Measure, Way, Tries string
			Easier, Harder                                     any // a text or a mapping
			Calls                                              []string
			Reps, Contacts                                     int
			RepsPerSide                                        int    `yaml:"reps_per_side"`
			Time                                               string `yaml:"time"`
			TimePerSide                                        string `yaml:"time_per_side"`
			Cues                                               []string
			CallEvery                                          string `yaml:"call_every"`
		}
	}
}

// BenchmarkRead reads the built-in sessions to their plans, and has yaml.v3
// decode the same bytes, in turn. The ratio of the two is the figure.
func BenchmarkRead(b *testing.B) {
	list := sessions.Builtins()
	var ours, theirs time.Duration
	for b.Loop() {
		began := time.Now()
		for _, s := range list {
			parsed, err := s.Session()
			if err != nil {
				b.Fatal(err)
			}
			plan.Of(parsed)
		}
		between := time.Now()
		for _, s := range list {
			var f file
			if err := yaml.Unmarshal(s.Source, &f); err != nil {
				b.Fatal(err)
			}
		}
		ours, theirs = ours+between.Sub(began), theirs+time.Since(between)
	}
	b.ReportMetric(ours.Seconds()/theirs.Seconds(), "×-yaml")
}
