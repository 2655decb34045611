package sessionstest_test

import (
	"testing"

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
			Easier, Harder, Load, Floor, Travel, Overhead      string
			Reps, Contacts                                     int
			RepsPerSide                                        int    `yaml:"reps_per_side"`
			Time                                               string `yaml:"time"`
			TimePerSide                                        string `yaml:"time_per_side"`
			Cues                                               []string
		}
	}
}

// BenchmarkRead reads the built-in sessions to their plans, and has yaml.v3
// decode the same bytes. The ratio of the two is the figure.
func BenchmarkRead(b *testing.B) {
	list := sessions.Builtins()
	bytes := 0
	for _, s := range list {
		bytes += len(s.Source)
	}
	b.Run("plan", func(b *testing.B) {
		b.SetBytes(int64(bytes))
		for b.Loop() {
			for _, s := range list {
				parsed, err := s.Session()
				if err != nil {
					b.Fatal(err)
				}
				plan.Of(parsed)
			}
		}
	})
	b.Run("yaml", func(b *testing.B) {
		b.SetBytes(int64(bytes))
		for b.Loop() {
			for _, s := range list {
				var f file
				if err := yaml.Unmarshal(s.Source, &f); err != nil {
					b.Fatal(err)
				}
			}
		}
	})
}
