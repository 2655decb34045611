package mutate

import (
	"bytes"
	"math/rand/v2"
	"testing"
)

// The same seed gives the same inputs, and hardly any is a sample as it was.
func TestBytes(t *testing.T) {
	samples := [][]byte{[]byte("title: Hops\n"), []byte("rest: 90s\n")}
	a, b := rand.New(rand.NewPCG(1, 2)), rand.New(rand.NewPCG(1, 2))
	same := 0
	for range 1000 {
		x, y := Bytes(a, samples, YAML), Bytes(b, samples, YAML)
		if !bytes.Equal(x, y) {
			t.Fatalf("%q and %q of one seed", x, y)
		}
		if bytes.Equal(x, samples[0]) || bytes.Equal(x, samples[1]) {
			same++
		}
	}
	if same > 100 || string(samples[0]) != "title: Hops\n" {
		t.Errorf("%d of 1000 are as they were; the sample is %q", same, samples[0])
	}
}
