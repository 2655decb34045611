package runs

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"sync"
	"testing"
)

// What is stopped leaves nothing: neither a temporary file nor a kept one that
// is not whole.
func TestStopped(t *testing.T) {
	stopAnywhere(t, club(t, 3, 40))
	inParts(t, 4, func() { stopAnywhere(t, club(t, 1, 120)) })
}

// stopAnywhere stops the survey of a folder at one moment after the other.
func stopAnywhere(t *testing.T, dir string) {
	t.Helper()
	temporary := t.TempDir()
	want := told(t, dir, briefly("a"), Options{})
	forgetIn(t, dir)
	enough := errors.New("enough")
	for calls := 0; ; calls += 1 + calls/2 {
		var mu sync.Mutex
		left := calls
		o := Options{Bound: 1, TempDir: temporary, Stop: func() error {
			mu.Lock()
			defer mu.Unlock()
			if left--; left < 0 {
				return enough
			}
			return nil
		}}
		s, err := Make([]string{dir}, o, briefly("a"))
		if err == nil {
			err = errors.Join(s.Each(func(*Note[brief]) error { return nil }), s.Close())
		}
		if all := files(t, temporary); len(all) > 0 {
			t.Fatalf("stopped after %d calls: %q is left", calls, all)
		}
		for _, name := range files(t, dir) {
			if filepath.Ext(name) == ".tmp" {
				t.Fatalf("stopped after %d calls: %q is left", calls, name)
			}
		}
		if err == nil {
			break
		}
		if !errors.Is(err, enough) {
			t.Fatalf("stopped after %d calls: %v", calls, err)
		}
	}
	if got := told(t, dir, briefly("a"), Options{}); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// Several may survey the same journals at once.
func TestSurveysAtOnce(t *testing.T) {
	dir := club(t, 3, 30)
	want := told(t, club(t, 3, 30), briefly("a"), Options{})
	for i := range 6 {
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			t.Parallel()
			for i, got := range told(t, dir, briefly("a"), Options{Bound: 1}) {
				if i >= 3 && got != want[i] { // the first three name the files
					t.Errorf("%q, want %q", got, want[i])
				}
			}
		})
	}
}
