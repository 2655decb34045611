package runs

import (
	"errors"
	"testing"
)

// Who calls Each may stop it at any run; nothing goes on behind it, and it can
// be called again.
func TestEachStops(t *testing.T) {
	dir := folder(t, map[string][]string{"a.jsonl": made(t, "Ana", 60, 1), "b.jsonl": made(t, "Bea", 60, 2)})
	for _, bound := range []int{1000, 1 << 20} {
		p, err := Gather([]string{dir}, Options{Bound: bound, TempDir: t.TempDir()})
		if err != nil {
			t.Fatal(err)
		}
		enough := errors.New("enough")
		for _, stopAt := range []int{1, 31, 33, 120} {
			n := 0
			err := p.Each(func(Run) error {
				if n++; n == stopAt {
					return enough
				}
				return nil
			})
			if !errors.Is(err, enough) || n != stopAt {
				t.Errorf("stopped at %d with %v, want %d", n, err, stopAt)
			}
		}
		n := 0
		if err := p.Each(func(Run) error { n++; return nil }); err != nil || n != 120 {
			t.Errorf("%d runs, %v", n, err)
		}
		if err := p.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// A temporary file that has become unreadable is an error, and no end of the runs.
func TestEachTellsOfALostTemporaryFile(t *testing.T) {
	p, err := Gather([]string{folder(t, map[string][]string{"a.jsonl": made(t, "Ana", 40, 1)})}, Options{Bound: 1000, TempDir: t.TempDir()})
	if err != nil {
		t.Fatal(err)
	}
	defer p.Close()
	if p.InMemory() {
		t.Fatal("nothing went to a file")
	}
	spilled := p.shares[0].spills[0]
	info, err := spilled.f.Stat()
	if err != nil {
		t.Fatal(err)
	}
	if err := spilled.f.Truncate(info.Size() / 2); err != nil {
		t.Fatal(err)
	}
	if err := p.Each(func(Run) error { return nil }); err == nil {
		t.Error("no error")
	}
}
