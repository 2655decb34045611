// Package units reads and writes the durations and lengths that a coach types
// by hand, in session files and in settings alike. Nothing passes through a
// float: what is read is exact, or refused.
package units

import (
	"errors"
	"math"
	"strings"
)

// errTooLarge is the refusal of a value that the types here cannot hold.
var errTooLarge = errors.New("is too large")

// decimal reads a plain decimal number, such as 12 or 1.5, and returns it in
// units of 1/scale. It refuses a sign, an exponent, a missing digit, a value
// finer than 1/scale and one that an int64 cannot hold. The scale is a power
// of ten.
func decimal(s string, scale int64) (int64, error) {
	whole, fraction, dotted := strings.Cut(s, ".")
	if !digits(whole) || dotted && !digits(fraction) {
		return 0, errors.New("is not a plain number")
	}
	n, err := appendDigits(0, whole)
	if err != nil {
		return 0, err
	}
	for fraction = strings.TrimRight(fraction, "0"); scale > 1; scale /= 10 {
		next := "0"
		if fraction != "" {
			next, fraction = fraction[:1], fraction[1:]
		}
		if n, err = appendDigits(n, next); err != nil {
			return 0, err
		}
	}
	if fraction != "" {
		return 0, errors.New("is too fine")
	}
	return n, nil
}

// appendDigits returns the number whose decimal digits are those of n and
// then those of s.
func appendDigits(n int64, s string) (int64, error) {
	for i := range len(s) {
		d := int64(s[i] - '0')
		if n > (math.MaxInt64-d)/10 {
			return 0, errTooLarge
		}
		n = n*10 + d
	}
	return n, nil
}

// digits reports whether s is one or more ASCII digits.
func digits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}

// number splits the longest prefix of digits and dots off s.
func number(s string) (n, rest string) {
	i := 0
	for i < len(s) && (s[i] == '.' || s[i] >= '0' && s[i] <= '9') {
		i++
	}
	return s[:i], s[i:]
}

// fraction writes n/scale as a decimal number without trailing zeros. The
// scale is a power of ten, n is not negative.
func fraction(n, scale int64) string {
	var b strings.Builder
	b.WriteString(itoa(n / scale))
	if n %= scale; n > 0 {
		b.WriteByte('.')
	}
	for ; n > 0; n %= scale {
		scale /= 10
		b.WriteString(itoa(n / scale))
	}
	return b.String()
}
