package journal

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// long writes a journal of n runs, long enough for its index to be kept, and
// returns its path.
func long(t testing.TB, n int) string {
	t.Helper()
	var out bytes.Buffer
	for i := range n {
		for _, l := range everything(t, fmt.Sprintf("RUN%05d", i)) {
			l.At = l.At.AddDate(0, 0, i)
			write(t, &out, l)
		}
	}
	path := filepath.Join(t.TempDir(), "journal.jsonl")
	if err := os.WriteFile(path, out.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// agrees fails unless the overview says what the whole journal does.
func agrees(t interface {
	Helper()
	Fatalf(string, ...any)
}, o *Overview, path string) {
	t.Helper()
	answers(t, o)
	want, problems, err := loadFile(path)
	if err != nil {
		t.Fatalf("%v", err)
	}
	if len(o.Runs()) != len(want) || len(o.Problems) != len(problems) {
		t.Fatalf("%d runs and %v, want %d and %v", len(o.Runs()), o.Problems, len(want), problems)
	}
	runs := o.Runs()
	for i, w := range want {
		got := runs[i]
		full, err := o.Full(got)
		if err != nil || !reflect.DeepEqual(full[0], w) {
			t.Fatalf("in full %+v, %v; want %+v", full, err, w)
		}
		gotAt, gotJumped := got.Jumped()
		at, jumped := w.Jumped()
		load, rated := w.Load()
		gotLoad, gotRated := got.Load()
		for name, pair := range map[string][2]any{
			"id": {got.ID, w.ID}, "rounds": {got.RoundsDone(), w.RoundsDone()}, "counted": {got.RoundsCounted(), w.RoundsCounted()},
			"sets": {got.SetsDone(), w.SetsDone()}, "reps": {got.Reps(), w.Reps()}, "contacts": {got.Contacts(), w.Contacts()},
			"fate": {got.Fate(), w.Fate()}, "title": {got.Title(), w.Title()}, "elapsed": {got.Elapsed, w.Elapsed},
			"end": {got.End().UnixNano(), w.End().UnixNano()}, "start": {got.Start.Format(time.RFC3339Nano), w.Start.Format(time.RFC3339Nano)},
			"jumped": {gotJumped, jumped}, "jumps at": {gotAt.UnixNano(), at.UnixNano()}, "load": {gotLoad, load}, "rated": {gotRated, rated},
			"rating": {got.Rating, w.Rating}, "state": {got.State, w.State}, "days": {fmt.Sprint(got.Days()), fmt.Sprint(w.Days())},
			"said": {len(got.Said), len(w.Said)}, "blocks": {got.Blocks(), w.Blocks()}, "n": {got.LastN, w.LastN},
			"missing": {got.Missing, w.Missing}, "differ": {got.Differ, w.Differ},
		} {
			if !reflect.DeepEqual(pair[0], pair[1]) {
				t.Fatalf("%s of run %s is %v, want %v", name, w.ID, pair[0], pair[1])
			}
		}
	}
}

// An overview says what the whole journal does, whatever stands in it and in
// whatever order, whether it was kept, has grown, or was cut in parts.
func TestOverviewAgreesWithTheJournal(t *testing.T) {
	keepFrom = 1000
	defer func() { keepFrom = 256 << 10 }()
	text, err := os.ReadFile(long(t, 6))
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.SplitAfter(strings.Repeat(string(text), 1), "\n")
	lines = lines[:len(lines)-1]
	dir := t.TempDir()
	n := 0
	rapid.Check(t, func(t *rapid.T) {
		n++
		path := filepath.Join(dir, fmt.Sprintf("%d.jsonl", n))
		mixed := append([]string{}, lines...)
		r := rand.New(rand.NewPCG(1, rapid.Uint64().Draw(t, "seed")))
		for range rapid.IntRange(0, 30).Draw(t, "swaps") {
			i, j := r.IntN(len(mixed)), r.IntN(len(mixed))
			mixed[i], mixed[j] = mixed[j], mixed[i]
		}
		for range rapid.IntRange(0, 5).Draw(t, "damages") {
			i := r.IntN(len(mixed))
			b, _ := damaged(r, []byte(mixed[i]))
			mixed[i] = string(b)
		}
		whole := strings.Join(mixed, "")
		cut := rapid.IntRange(0, len(whole)).Draw(t, "first seen of it")
		for _, part := range []string{whole[:cut], whole, whole} {
			if err := os.WriteFile(path, []byte(part), 0o600); err != nil {
				t.Fatal(err)
			}
			o, err := ReadOverview(path)
			if err != nil {
				t.Fatal(err)
			}
			agrees(t, o, path)
		}
		f, err := os.Open(path)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		parts, err := cutAndJoin(f, int64(len(whole)), rapid.IntRange(1, 5).Draw(t, "parts"))
		if err != nil {
			t.Fatal(err)
		}
		o, err := overviewOf(path, f, parts)
		if err != nil {
			t.Fatal(err)
		}
		agrees(t, o, path)
	})
}

// cutAndJoin indexes a file in n parts.
func cutAndJoin(f *os.File, size int64, n int) (*index, error) {
	parts, err := cut(f, extent{size: size}, n)
	if err != nil {
		return nil, err
	}
	var x *index
	for _, p := range parts {
		one, err := indexPart(f, p)
		if err != nil {
			return nil, err
		}
		if x == nil {
			x = one
		} else {
			x = x.join(one)
		}
	}
	return x, x.renew(f)
}

// What is kept beside the journal is never trusted over it: whatever happens to
// either, the overview says what the journal says.
func TestKeptIndexIsNotTrusted(t *testing.T) {
	path := long(t, 60)
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := ReadOverview(path); err != nil {
		t.Fatal(err)
	}
	index, err := os.ReadFile(keptPath(path))
	if err != nil {
		t.Fatal("no index is kept:", err)
	}
	if info, err := os.Stat(keptPath(path)); err != nil || info.Mode().Perm()&0o077 != 0 {
		t.Error("others can read the index")
	}
	put := func(file string, b []byte) {
		if err := os.WriteFile(file, b, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	look := func() {
		t.Helper()
		o, err := ReadOverview(path)
		if err != nil {
			t.Fatal(err)
		}
		agrees(t, o, path)
	}
	look()
	// The journal is changed, cut, or another of the same length.
	put(path, bytes.Replace(text, []byte(`"reps":10`), []byte(`"reps":11`), 1))
	look()
	put(path, text[:len(text)/2])
	look()
	put(path, text)
	// The same file is written to in place, with the index knowing its stamp.
	settle := func() {
		time.Sleep(60 * time.Millisecond) // the clock that files are stamped with is coarse
		look()
		look()
	}
	settle()
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	at := int64(bytes.Index(text, []byte(`"reps":10`)))
	if _, err := f.WriteAt([]byte(`"reps":12`), at); err != nil {
		t.Fatal(err)
	}
	look()
	if _, err := f.WriteAt([]byte(`"reps":10`), at); err != nil {
		t.Fatal(err)
	}
	settle()
	// What this program appends leaves the index known to be good.
	j := &Journal{path: path}
	if err := j.Append(paused("LATER", 1)); err != nil {
		t.Fatal(err)
	}
	look()
	// The index is damaged at random, cut, of another journal, or of another version.
	r := rand.New(rand.NewPCG(7, 7))
	for range 12 {
		b := bytes.Clone(index)
		b[r.IntN(len(b))] ^= 1 << r.IntN(8)
		put(keptPath(path), b)
		look()
		put(keptPath(path), index[:r.IntN(len(index))])
		look()
	}
	put(keptPath(path), append([]byte("coldfloor index 0\n"), index[len(keptHead):]...))
	look()
	if err := os.Remove(keptPath(path)); err != nil {
		t.Fatal(err)
	}
	look()
}

// One process reads a journal once, and what is appended when it is appended.
func TestOverviewIsReadOnce(t *testing.T) {
	j := &Journal{path: long(t, 30)}
	first, err := j.Overview()
	if err != nil {
		t.Fatal(err)
	}
	again, err := j.Overview()
	if err != nil || again != first {
		t.Errorf("read again though nothing was appended: %v", err)
	}
	id := first.Runs()[0].ID
	if err := j.Amend(id, Line{Event: EventRating, Rating: &Rating{RPE: ptr(3.0)}}); err != nil {
		t.Fatal(err)
	}
	later, err := j.Overview()
	if err != nil {
		t.Fatal(err)
	}
	agrees(t, later, j.path)
	if *later.Runs()[0].Rating.RPE != 3 || *first.Runs()[0].Rating.RPE == 3 {
		t.Error("what was appended is not seen, or changed an earlier overview")
	}
	if err := os.WriteFile(j.path, twoRuns(t), 0o600); err != nil {
		t.Fatal(err)
	}
	if o, err := j.Overview(); err != nil || len(o.Runs()) != 2 {
		t.Errorf("another journal in its place: %v", err)
	}
}
