package units

import (
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestParseDuration(t *testing.T) {
	const s, m, h = time.Second, time.Minute, time.Hour
	for text, want := range map[string]time.Duration{
		"90s": 90 * s, "1m30s": 90 * s, "1.5s": 1500 * time.Millisecond, "700ms": 700 * time.Millisecond,
		"1:30": 90 * s, "90": 90 * s, "0": 0, "0s": 0, "0.25": 250 * time.Millisecond, "1.50": 1500 * time.Millisecond,
		"1h": h, "1h5min": 65 * m, "1h30s": h + 30*s, "2m": 2 * m, "1.5m": 90 * s, "0.1s": 100 * time.Millisecond,
		"1m 30s": 90 * s, "90 s": 90 * s, " 90s ": 90 * s, "0:05": 5 * s, "61:00": 61 * m, "1:02:30": h + 2*m + 30*s,
		"1:30.5": 90*s + 500*time.Millisecond, "0.000000001": 1, "1.000000000000s": s, "010": 10 * s,
		"9223372036.854775807": math.MaxInt64, "0.1ms": 100 * time.Microsecond, "0.1m": 6 * s,
	} {
		if got, err := ParseDuration(text); err != nil || got != want {
			t.Errorf("ParseDuration(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
}

func TestParseDurationRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"": "is not a duration", "s": "is not a duration", "ten": "is not a duration", "1x": "is not a duration",
		"1s1m": "is not a duration", "1m1m": "is not a duration", "1m30": "is not a duration", "1e3": "is not a duration",
		"1 2s": "is not a duration", "1_000": "is not a duration", "0x10": "is not a duration", "+5s": "is not a duration",
		"1:5": "is not a duration", "1:60": "more than 59", ":30": "is not a duration", "1:00:00:00": "is not a duration",
		"1.5:30": "is not a duration", "1:30s": "is not a duration", "1:90:00": "more than 59", "1:-5": "is not a duration",
		"-5s": "negative", "-1": "negative", "-0": "negative", "-.inf": "negative",
		".inf": "finite", "inf": "finite", ".nan": "finite", "NaN": "finite", "+.inf": "finite", "Infinity": "finite",
		"9223372037": "too large", "99999999999999999999": "too large", "2562048h": "too large", "153722868m": "too large",
		"9223372036s1000ms": "too large", "9999999999999999999:00": "too large", "9999999999:00:00": "too large",
		"0.0000000001": "too fine", "1..5": "plain number", ".5": "plain number", "5.": "plain number", "1.2.3s": "plain number",
	} {
		if got, err := ParseDuration(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("ParseDuration(%q) = %v, %v; want an error with %q", text, got, err, want)
		}
	}
}

func TestFormatDuration(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0s", 45 * time.Second: "45s", 90 * time.Second: "90s", 2 * time.Minute: "2min", 1500 * time.Millisecond: "1.5s",
		700 * time.Millisecond: "700ms", 65 * time.Minute: "1h5min", time.Hour + 500*time.Millisecond: "1h0.5s",
		1: "0.000001ms", -90 * time.Second: "-90s", time.Minute + 1: "60.000000001s",
	} {
		if got := FormatDuration(d); got != want {
			t.Errorf("FormatDuration(%d) = %q, want %q", d, got, want)
		}
	}
}

func TestClock(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0:00.000", 59*time.Second + 999*time.Millisecond: "0:59.999", 75 * time.Second: "1:15.000",
		time.Hour: "1:00:00.000", 25*time.Hour + 61*time.Second: "25:01:01.000", -90 * time.Second: "-1:30.000",
		1999 * time.Microsecond: "0:00.001",
	} {
		if got := ClockMillis(d); got != want {
			t.Errorf("ClockMillis(%v) = %q, want %q", d, got, want)
		}
	}
	for d, want := range map[time.Duration]string{
		0: "0:00", 499 * time.Millisecond: "0:00", 500 * time.Millisecond: "0:01", 59*time.Second + 500*time.Millisecond: "1:00", 54*time.Minute + 50500*time.Millisecond: "54:51",
		time.Hour - time.Millisecond: "1:00:00", 25*time.Hour + 61*time.Second: "25:01:01", -90500 * time.Millisecond: "-1:31",
	} {
		if got := Clock(d); got != want {
			t.Errorf("Clock(%v) = %q, want %q", d, got, want)
		}
	}
}

func TestDurationRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := time.Duration(rapid.Int64Min(0).Draw(t, "d"))
		if got, err := ParseDuration(FormatDuration(d)); err != nil || got != d {
			t.Fatalf("%d written as %q reads as %d, %v", d, FormatDuration(d), got, err)
		}
		// The standard library reads the same notation, with m for minutes.
		std, err := time.ParseDuration(strings.ReplaceAll(FormatDuration(d), "min", "m"))
		if err != nil || std != d {
			t.Fatalf("time.ParseDuration(%q) = %d, %v, want %d", FormatDuration(d), std, err, d)
		}
		d = d.Truncate(time.Millisecond)
		if got, err := ParseDuration(ClockMillis(d)); err != nil || got != d {
			t.Fatalf("%d written as %q reads as %d, %v", d, ClockMillis(d), got, err)
		}
	})
}

func TestParseLength(t *testing.T) {
	for text, want := range map[string]Length{
		"2m": 2 * Metre, "35cm": 35 * Centimetre, "1.8 m": 1800, "1.8m": 1800, "5mm": 5, "0m": 0, "0.5cm": 5, "4.500m": 4500,
	} {
		if got, err := ParseLength(text); err != nil || got != want {
			t.Errorf("ParseLength(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
	for text, want := range map[string]string{
		"": "not a length", "m": "not a length", "2": "no unit", "2km": "not a length", "2 ft": "not a length", "x": "not a length",
		"-2m": "negative", "1.5mm": "too fine", "0.0001m": "too fine", "99999999999999999m": "too large", "2m1": "not a length",
		"1.2.3m": "plain number",
	} {
		if got, err := ParseLength(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("ParseLength(%q) = %v, %v; want an error with %q", text, got, err, want)
		}
	}
}

func TestLengthString(t *testing.T) {
	for l, want := range map[Length]string{
		0: "0m", 2000: "2m", 1850: "1.85m", 350: "35cm", 355: "35.5cm", 5: "5mm", -350: "-35cm", math.MinInt64: "-9223372036854775.807m",
	} {
		if got := l.String(); got != want {
			t.Errorf("Length(%d).String() = %q, want %q", int64(l), got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.Int64Min(0).Draw(t, "l"))
		if got, err := ParseLength(l.String()); err != nil || got != l {
			t.Fatalf("%d written as %q reads as %d, %v", l, l, got, err)
		}
	})
}

func TestParseSize(t *testing.T) {
	for _, text := range []string{"2m x 1.5m", "2mx1.5m", "2 x 1.5 m", "200cm×1.5m"} {
		got, err := ParseSize(text, 2)
		if err != nil || got[0] != 2*Metre || got[1] != 1500 {
			t.Errorf("ParseSize(%q) = %v, %v; want 2m and 1.5m", text, got, err)
		}
	}
	if got, err := ParseSize("4.5x1.2x2.4m", 3); err != nil || got[0] != 4500 || got[1] != 1200 || got[2] != 2400 {
		t.Errorf("ParseSize(4.5x1.2x2.4m) = %v, %v", got, err)
	}
	for _, text := range []string{"", "2m", "2m x 1m x 1m", "2 x 1", "2m x", "0m x 1m", "2m x -1m", "2m by 1m"} {
		if got, err := ParseSize(text, 2); err == nil {
			t.Errorf("ParseSize(%q) = %v, want an error", text, got)
		}
	}
}
