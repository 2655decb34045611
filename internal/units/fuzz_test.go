package units

import (
	"testing"

	"coldfloor/internal/mutate"
)

var samples = [][]byte{[]byte("90s"), []byte("1min30s"), []byte("1.5s"), []byte("700ms"), []byte("1:02:30"), []byte("1h 5 min"), []byte("12.250"),
	[]byte("2m"), []byte("35cm"), []byte("1.8 m"), []byte("4.5x1.2x2.4m"), []byte("4.5m × 120 cm"), []byte("2026-12-07"), []byte("18:30")}

// tokens is what lengths and dates are made of.
var tokens = []string{"0", "1", "9", "00", "59", "60", "9223372036854775807", ".", ":", "-", "+", " ", "s", "ms", "m", "min", "h", "cm", "x", "×", "e", "_", "inf", "NaN", "\xff", "٣", "\x00"}

// read fails unless whatever is read is written as what reads the same.
func read(t testing.TB, src []byte) {
	s := string(src)
	if d, err := ParseDuration(s); err == nil {
		if back, err := ParseDuration(FormatDuration(d)); d < 0 || err != nil || back != d {
			t.Fatalf("%v is written %s, read back as %v, %v", d, FormatDuration(d), back, err)
		}
		Sentence(d)
		Clock(d)
		Hours(d)
	}
	if l, err := ParseLength(s); err == nil {
		if back, err := ParseLength(l.String()); l < 0 || err != nil || back != l {
			t.Fatalf("%d is written %v, read back as %d, %v", int64(l), l, int64(back), err)
		}
	}
	for n := 2; n <= 3; n++ {
		if all, err := ParseSize(s, n); err == nil && len(all) != n {
			t.Fatalf("%v of %d", all, n)
		}
	}
	if d, err := ParseDate(s); err == nil && d.String() != s {
		t.Fatalf("%v", d)
	}
	if at, err := ParseTimeOfDay(s); err == nil {
		if back, err := ParseTimeOfDay(at.String()); err != nil || back != at {
			t.Fatalf("%v is read back as %v, %v", at, back, err)
		}
	}
}

// FuzzRead looks for a text that is not read as it is written.
func FuzzRead(f *testing.F) {
	for _, s := range samples {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, src []byte) { read(t, src) })
}

// TestMutated is FuzzRead with texts that were changed a little.
func TestMutated(t *testing.T) { mutate.Run(t, 20_000, samples, tokens, read) }
