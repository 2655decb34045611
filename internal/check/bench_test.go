package check

import (
	"testing"
	"time"

	"gopkg.in/yaml.v3"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// BenchmarkCheck checks 1,000 files, each read again, and gives the time of
// reading and checking, and of the rules alone, as ratios to yaml.v3 decoding
// the same bytes. File by file the three take turns, so that a busy machine
// slows them alike.
func BenchmarkCheck(b *testing.B) {
	const files = 1000
	builtins := sessions.Builtins()
	o := options()
	var decoding, reading, rules time.Duration
	for b.Loop() {
		for i := range files {
			src := builtins[i%len(builtins)].Source
			start := time.Now()
			var v any
			if err := yaml.Unmarshal(src, &v); err != nil {
				b.Fatal(err)
			}
			decoded := time.Now()
			s, err := sessions.Parse("a.yaml", src)
			if err != nil {
				b.Fatal(err)
			}
			p := plan.Of(s)
			read := time.Now()
			Run(p, o)
			decoding += decoded.Sub(start)
			reading += read.Sub(decoded)
			rules += time.Since(read)
		}
	}
	b.ReportMetric(float64(reading+rules)/float64(decoding), "whole/decode")
	b.ReportMetric(float64(rules)/float64(decoding), "rules/decode")
	b.ReportMetric((reading+rules).Seconds()*1000/float64(b.N), "ms/1000files")
}
