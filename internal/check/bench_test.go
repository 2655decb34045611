package check

import (
	"fmt"
	"testing"

	"gopkg.in/yaml.v3"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// BenchmarkCheck checks 1,000 files, each read anew, and gives the time as a
// ratio to yaml.v3 decoding the same bytes in the same run.
func BenchmarkCheck(b *testing.B) {
	const files = 1000
	builtins := sessions.Builtins()
	source := func(i int) []byte { return builtins[i%len(builtins)].Source }
	o := options()
	decode := func(b *testing.B) {
		for b.Loop() {
			for i := range files {
				var v any
				if err := yaml.Unmarshal(source(i), &v); err != nil {
					b.Fatal(err)
				}
			}
		}
	}
	whole := func(b *testing.B) {
		for b.Loop() {
			for i := range files {
				s, err := sessions.Parse("a.yaml", source(i))
				if err != nil {
					b.Fatal(err)
				}
				Run(plan.Of(s), o)
			}
		}
	}
	rules := func(b *testing.B) {
		plans := make([]*plan.Plan, files)
		for i := range plans {
			s, err := sessions.Parse("a.yaml", source(i))
			if err != nil {
				b.Fatal(err)
			}
			plans[i] = plan.Of(s)
		}
		for b.Loop() {
			for _, p := range plans {
				Run(p, o)
			}
		}
	}
	var base float64
	for _, bench := range []struct {
		name string
		run  func(*testing.B)
	}{{"decode", decode}, {"parse+plan+check", whole}, {"rules", rules}} {
		b.Run(fmt.Sprintf("%s/%d files", bench.name, files), func(b *testing.B) {
			bench.run(b)
			perOp := float64(b.Elapsed().Nanoseconds()) / float64(b.N)
			if bench.name == "decode" {
				base = perOp
			}
			if base > 0 {
				b.ReportMetric(perOp/base, "×decode")
			}
		})
	}
}
