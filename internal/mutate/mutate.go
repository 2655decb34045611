// Package mutate gives readers of foreign input samples that were changed a
// little, as damage and slips of the hand do: many a second, beside the fuzzing
// that is guided by coverage.
package mutate

import (
	"bytes"
	"flag"
	"math/rand/v2"
	"runtime/debug"
	"slices"
	"testing"
)

var (
	count = flag.Int("mutations", 0, "how many mutated inputs a reader is given; 0: a few")
	seed  = flag.Uint64("mutationseed", 9, "which mutated inputs they are")
)

// YAML is what makes a text of YAML another one, or none.
var YAML = []string{":", ": ", "-", "- ", "\n", "\n  ", "\t", " ", "#", "\"", "'", "[", "]", "{", "}", "{}", "[]", ",", "&x ", "*x", "<<: *x", "|", ">", "!!str ", "? ", "---\n", "...\n", "%",
	"~", "null", "true", "0", "-1", "1e9", "0x10", ".inf", ".nan", "9223372036854775808", "1:30", "90s", "1min30s", "0.0001s", "2m x 1m", "50%", "mon", "2026-02-30", "2026-12-07", "\r\n", "\x00", "\xff", "\u202e", "\u0301", "é", "\ufeff"}

// Bytes returns one of the samples with one to three changes: a bit turned, a
// token put in, some bytes taken out, or a part of another sample in place of
// some. None of the samples may be empty.
func Bytes(r *rand.Rand, samples [][]byte, tokens []string) []byte {
	b := bytes.Clone(samples[r.IntN(len(samples))])
	for range 1 + r.IntN(3) {
		at := r.IntN(len(b) + 1)
		switch r.IntN(4) {
		case 0:
			if at < len(b) {
				b[at] ^= 1 << r.IntN(8)
			}
		case 1:
			b = slices.Insert(b, at, []byte(tokens[r.IntN(len(tokens))])...)
		case 2:
			b = slices.Delete(b, at, min(len(b), at+1+r.IntN(8)))
		case 3:
			other := samples[r.IntN(len(samples))]
			from := r.IntN(len(other))
			b = slices.Replace(b, at, min(len(b), at+r.IntN(30)), other[from:min(len(other), from+r.IntN(30))]...)
		}
	}
	return b
}

// Run gives read mutated samples: a few, or as many as -mutations says. What
// read fails or panics at is said.
func Run(t *testing.T, few int, samples [][]byte, tokens []string, read func(testing.TB, []byte)) {
	t.Helper()
	if *count > 0 {
		few = *count
	}
	samples = slices.DeleteFunc(slices.Clone(samples), func(b []byte) bool { return len(b) == 0 })
	r := rand.New(rand.NewPCG(3, *seed))
	for range few {
		one(t, Bytes(r, samples, tokens), read)
	}
	t.Logf("%d mutated inputs", few)
}

// one gives read one input.
func one(t *testing.T, src []byte, read func(testing.TB, []byte)) {
	t.Helper()
	defer func() {
		if p := recover(); p != nil {
			t.Fatalf("panic at %q: %v\n%s", src, p, debug.Stack())
		}
		if t.Failed() {
			t.Fatalf("at %q", src)
		}
	}()
	read(t, src)
}
