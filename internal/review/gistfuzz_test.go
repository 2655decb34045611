package review

import (
	"bytes"
	"encoding/binary"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/journal/journaltest"
	"coldfloor/internal/journalgen"
	"coldfloor/internal/mutate"
	"coldfloor/internal/runs"
)

// begun is when the made-up journals begin.
var begun = time.Date(2026, 1, 5, 18, 0, 0, 0, time.UTC)

// codedGists is gists as they are kept: what they have in common, with its length
// before it, and the gists.
func codedGists(t testing.TB) (all [][]byte) {
	for sessions := range 3 {
		var text bytes.Buffer
		if _, err := journalgen.Write(&text, journalgen.Options{Player: "Ana", Sessions: 1 + sessions, First: begun}); err != nil {
			t.Fatal(err)
		}
		made, _, err := journaltest.Fold(&text)
		if err != nil {
			t.Fatal(err)
		}
		var c journal.RunCoder
		for _, run := range made {
			(&gistCoder{}).Code(&c, gistOf(run, DefaultTolerance))
		}
		coded := c.Buf
		c.Buf = nil
		c.Tables()
		all = append(all, append(append(binary.AppendUvarint(nil, uint64(len(c.Buf))), c.Buf...), coded...))
	}
	return all
}

// gistsDecode fails if gists, whatever they are coded as, are neither decoded and
// reviewed nor refused.
func gistsDecode(t testing.TB, coded []byte) {
	n, k := binary.Uvarint(coded)
	if k <= 0 || n > uint64(len(coded)-k) {
		return
	}
	var c journal.RunCoder
	c.Reading, c.Buf = true, bytes.Clone(coded[k:][:n])
	c.Tables()
	c.Buf = bytes.Clone(coded[k:][n:])
	r := New(Options{Now: begun.AddDate(0, 0, 20)})
	var x gistCoder
	for c.Err == nil && len(c.Buf) > 0 {
		var g gist
		if x.Code(&c, &g); c.Err == nil {
			r.take(&g, "Ana", "Ana", runs.Place{})
		}
	}
	whole := func(places []runs.Place) ([]*journal.Run, error) {
		all := make([]*journal.Run, len(places))
		for i := range all {
			all[i] = &journal.Run{}
		}
		return all, nil
	}
	if err := r.fill(whole); err != nil {
		t.Fatal(err)
	}
	r.Squad()
}

// FuzzGists looks for coded gists that break what reads them.
func FuzzGists(f *testing.F) {
	for _, g := range codedGists(f) {
		f.Add(g)
	}
	f.Fuzz(func(t *testing.T, coded []byte) { gistsDecode(t, coded) })
}

// TestMutatedGists is FuzzGists with gists that were changed a little.
func TestMutatedGists(t *testing.T) {
	mutate.Run(t, 2000, codedGists(t), []string{"\x00", "\x01", "\xff", "\x80\x80\x01", "\xff\xff\xff\xff\xff\xff\xff\xff\xff\x01", "\x80\x80\x80\x80\x80\x80\x80\x80\x80\x80\x80"}, gistsDecode)
}
