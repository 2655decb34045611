// Package soundtest holds what tests of sound and of its rooms share: the
// contract that every streamer passes, and plans to play.
package soundtest

import (
	"testing"

	"github.com/gopxl/beep/v2"
)

// second is how many samples a streamer that never ends is held to at a time.
const second = 44100

// AssertStreamer holds a streamer, made again by each call of fresh, against
// beep's contract: the three valid return patterns of Stream in their order,
// no sample touched that was not streamed, and the same samples whatever the
// block size. Length is in samples; a streamer of length -1 never ends.
func AssertStreamer(t testing.TB, fresh func() beep.Streamer, length int) {
	t.Helper()
	limit := length
	if length < 0 {
		limit = 3 * second
	}
	want := drain(t, fresh(), limit, limit+1)
	if length < 0 {
		want = want[:limit]
	}
	if length >= 0 && len(want) != length {
		t.Errorf("streamed %d samples, want %d", len(want), length)
	}
	for _, block := range []int{1, 7, 512, 44100} {
		got := drain(t, fresh(), limit, block)
		if len(got) < len(want) {
			t.Fatalf("in blocks of %d it streamed %d samples, want %d", block, len(got), len(want))
		}
		for i, v := range want {
			if got[i] != v {
				t.Fatalf("in blocks of %d sample %d is %v, want %v", block, i, got[i], v)
			}
		}
	}
}

// drain streams at least limit samples, or to the end.
func drain(t testing.TB, s beep.Streamer, limit, block int) (out [][2]float64) {
	t.Helper()
	mark := [2]float64{7, 7}
	for len(out) < limit {
		b := make([][2]float64, block+3)
		for i := range b {
			b[i] = mark
		}
		n, ok := s.Stream(b[:block])
		for i, v := range b[n:] {
			if v != mark {
				t.Fatalf("touched sample %d of %d streamed", n+i, n)
			}
		}
		out = append(out, b[:n]...)
		switch {
		case n == block && ok:
			continue
		case 0 < n && n < block && ok, n == 0 && !ok:
			if n, ok := s.Stream(make([][2]float64, block)); n != 0 || ok {
				t.Fatalf("streamed %d, %v after the end", n, ok)
			}
			return out
		default:
			t.Fatalf("%d of %d and %v is not a valid return", n, block, ok)
		}
	}
	if s.Err() != nil {
		t.Fatal(s.Err())
	}
	return out
}
