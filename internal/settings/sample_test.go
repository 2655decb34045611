package settings

import (
	"bytes"
	"regexp"
	"testing"
)

// The sample says nothing as it is, and every key once the comment signs before
// the keys are taken off, with the limits as they are by default.
func TestSample(t *testing.T) {
	src := Sample()
	asItIs, err := Parse("settings.yaml", src)
	if err != nil || asItIs.Marks != nil {
		t.Errorf("%v, %v", asItIs.Marks, err)
	}
	s, err := Parse("settings.yaml", regexp.MustCompile(`(?m)^# `).ReplaceAll(src[bytes.Index(src, []byte("\n\n")):], nil))
	if err != nil {
		t.Fatalf("%v\n%s", err, src)
	}
	for _, key := range keys {
		if _, ok := s.Marks[key]; !ok {
			t.Errorf("the sample has no %s", key)
		}
	}
	for _, d := range AllLimits {
		if s.Limits.Changed(d.Key) || s.limitMarks[d.Key].Line == 0 {
			t.Errorf("the limit %s of the sample is %v", d.Key, s.Limits[d.Key])
		}
	}
	for line := range bytes.Lines(src) {
		if len([]rune(string(line))) > 81 {
			t.Errorf("too long: %s", line)
		}
	}
}
