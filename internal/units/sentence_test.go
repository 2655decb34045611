package units

import (
	"testing"
	"time"
)

func TestSentence(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0 s", 700 * time.Millisecond: "0.7 s", 4740 * time.Millisecond: "4.7 s", 45 * time.Second: "45 s", time.Minute: "60 s",
		90 * time.Second: "90 s", 2 * time.Minute: "2 min", 125 * time.Second: "2:05", 10 * time.Minute: "10 min",
		48 * time.Hour: "48 h", time.Hour + 150*time.Second: "1:02:30", -90 * time.Second: "-90 s",
		59999 * time.Millisecond: "60 s", 119999 * time.Millisecond: "2 min",
	} {
		if got := Sentence(d); got != want {
			t.Errorf("Sentence(%v) = %q, want %q", d, got, want)
		}
	}
	const s = time.Second
	for _, c := range []struct {
		low, high time.Duration
		want      string
	}{
		{5 * s, 10 * s, "5–10 s"}, {60 * s, 120 * s, "1–2 min"}, {60 * s, 90 * s, "60–90 s"}, {0, 30 * s, "0–30 s"},
		{30 * s, 90 * s, "30–90 s"}, {300 * s, 600 * s, "5–10 min"}, {48 * 3600 * s, 72 * 3600 * s, "48–72 h"}, {90 * s, 90 * s, "90 s"},
	} {
		if got := SentenceRange(c.low, c.high); got != c.want {
			t.Errorf("SentenceRange(%v, %v) = %q, want %q", c.low, c.high, got, c.want)
		}
	}
	for l, want := range map[Length]string{2000: "2 m", 1850: "1.85 m", 350: "35 cm", 5: "5 mm", 0: "0 m", -50: "-5 cm", 414: "41.4 cm"} {
		if got := l.Text(); got != want {
			t.Errorf("Text of %d mm = %q, want %q", int64(l), got, want)
		}
	}
}
