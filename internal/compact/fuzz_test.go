package compact

import (
	"bytes"
	"testing"
	"time"

	"coldfloor/internal/mutate"
)

// records is records as they are written.
func records() (all [][]byte) {
	n := 70000
	for _, r := range []record{{}, {n: -3, u: 1 << 63, yes: true, f: 1.0 / 3, word: "Pogo hops", text: "how", at: time.Unix(1.8e9, 5).UTC(), maybe: &n, list: []string{"", "left"}}} {
		var w Coder
		r.code(&w)
		all = append(all, w.Buf)
	}
	return all
}

// decodes fails if bytes are neither refused nor read as what is written as
// bytes that read the same.
func decodes(t testing.TB, src []byte) {
	read := func(src []byte) (record, error) {
		c, r := Coder{Reading: true, Buf: src}, record{}
		r.code(&c)
		return r, c.Err
	}
	written := func(r record) []byte {
		var c Coder
		r.code(&c)
		return c.Buf
	}
	r, err := read(src)
	if err != nil {
		return
	}
	once := written(r)
	again, err := read(once)
	if err != nil || !bytes.Equal(written(again), once) {
		t.Fatalf("%+v is read back as %+v, %v", r, again, err)
	}
}

// FuzzDecode looks for bytes that break the decoder.
func FuzzDecode(f *testing.F) {
	for _, r := range records() {
		f.Add(r)
	}
	f.Fuzz(func(t *testing.T, src []byte) { decodes(t, src) })
}

// TestMutated is FuzzDecode with records that were changed a little.
func TestMutated(t *testing.T) {
	mutate.Run(t, 5000, records(), []string{"\x00", "\x01", "\xff", "\x80\x80\x01", "\xff\xff\xff\xff\xff\xff\xff\xff\xff\x01"}, decodes)
}
