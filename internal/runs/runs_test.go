package runs

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal/journaltest"
	"coldfloor/internal/journalgen"
)

var monday = time.Date(2026, 1, 5, 18, 0, 0, 0, time.FixedZone("", 3600))

// made returns a made-up journal's lines, each with its end.
func made(t testing.TB, player string, sessions int, seed uint64) []string {
	t.Helper()
	var buf bytes.Buffer
	if _, err := journalgen.Write(&buf, journalgen.Options{Player: player, Sessions: sessions, First: monday, Seed: seed}); err != nil {
		t.Fatal(err)
	}
	// Without their checksums, so that a test can change a line.
	text := regexp.MustCompile(`,"crc":"[0-9a-f]{8}"`).ReplaceAllString(buf.String(), "")
	lines := strings.SplitAfter(text, "\n")
	return lines[:len(lines)-1]
}

// folder writes files into a new folder.
func folder(t testing.TB, files map[string][]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, lines := range files {
		path := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(strings.Join(lines, "")), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// gather returns all runs in the order given, as text, and the pile closed.
func gather(t testing.TB, o Options, paths ...string) ([]Run, *Pile) {
	t.Helper()
	p, err := Gather(paths, o)
	if err != nil {
		t.Fatal(err)
	}
	var all []Run
	if err := p.Each(func(r Run) error { all = append(all, r); return nil }); err != nil {
		t.Fatal(err)
	}
	if err := p.Close(); err != nil {
		t.Fatal(err)
	}
	return all, p
}

// wholly is a run as JSON, with its player.
func wholly(t testing.TB, runs []Run) []string {
	t.Helper()
	var all []string
	for _, r := range runs {
		text, err := json.Marshal(r.Run)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, r.Player+" "+string(text))
	}
	slices.Sort(all)
	return all
}

// A journal that arrives whole, twice, grown, in pieces, shuffled, above the
// bound or below it: the runs are those that the journal's own reader folds.
func TestRunsCountOnce(t *testing.T) {
	lines := made(t, "Ana", 6, 1)
	plain, problems, err := journaltest.Fold(strings.NewReader(strings.Join(lines, "")))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	var want []Run
	for _, r := range plain {
		r.Started.Text = ""
		want = append(want, Run{Run: r, Player: "Ana"})
	}
	rapid.Check(t, func(rt *rapid.T) {
		files := map[string][]string{"whole.jsonl": rapid.Permutation(lines).Draw(rt, "order")}
		for i := range rapid.IntRange(0, 3).Draw(rt, "copies") {
			from := rapid.IntRange(0, len(lines)).Draw(rt, "from")
			files[fmt.Sprintf("copy-%d.jsonl", i)] = lines[from:rapid.IntRange(from, len(lines)).Draw(rt, "to")]
		}
		dir := folder(t, files)
		bound := rapid.SampledFrom([]int{1, 500, 3000, 1 << 20}).Draw(rt, "bound")
		got, pile := gather(t, Options{Bound: bound, TempDir: dir}, dir)
		if !slices.Equal(wholly(t, got), wholly(t, want)) {
			rt.Fatalf("%d runs, want %d\n%v\n%v", len(got), len(want), wholly(t, got), wholly(t, want))
		}
		for _, r := range got {
			if r.Differ != 0 {
				rt.Fatalf("run %s has lines that differ", r.ID)
			}
		}
		if left, _ := filepath.Glob(filepath.Join(dir, "*.tmp")); len(left) > 0 {
			rt.Fatalf("temporary files were left: %v", left)
		}
		_ = pile
	})
}

// Spilled or not, the runs come in the same order.
func TestOrderDoesNotDependOnBound(t *testing.T) {
	dir := folder(t, map[string][]string{"a.jsonl": made(t, "", 9, 1), "b.jsonl": made(t, "", 9, 2)})
	small, _ := gather(t, Options{Bound: 2000}, dir)
	large, _ := gather(t, Options{}, dir)
	for i := range large {
		if small[i].ID != large[i].ID || small[i].File != large[i].File {
			t.Fatalf("run %d is %s of %s, and %s of %s", i, small[i].ID, small[i].File, large[i].ID, large[i].File)
		}
	}
}

func TestLinesThatDiffer(t *testing.T) {
	lines := made(t, "Ana", 1, 1)
	other := slices.Clone(lines)
	at := slices.IndexFunc(other, func(l string) bool { return strings.Contains(l, `"event":"set"`) })
	other[at] = strings.Replace(other[at], `"reps":`, `"reps":1`, 1)
	dir := folder(t, map[string][]string{"1.jsonl": lines, "2.jsonl": other})
	got, _ := gather(t, Options{}, dir)
	alone, _ := gather(t, Options{}, filepath.Join(dir, "1.jsonl"))
	if len(got) != 1 || got[0].Differ != 1 || got[0].Reps() != alone[0].Reps() {
		t.Errorf("got %d runs, %d differing lines, reps %v; the first file says %v", len(got), got[0].Differ, got[0].Reps(), alone[0].Reps())
	}
}

func TestDamageIsCounted(t *testing.T) {
	lines := made(t, "Ana", 2, 1)
	lines[3] = lines[3][:20] + "\n"
	lines[5] = strings.Replace(lines[5], `"v":1`, `"v":2`, 1)
	dir := folder(t, map[string][]string{"a.jsonl": lines})
	got, p := gather(t, Options{}, dir)
	f := p.Files[0]
	if len(got) != 2 || f.Damaged != 1 || f.Unknown != 1 || f.Lines != len(lines)-2 {
		t.Errorf("%d runs, %+v", len(got), f)
	}
	if f.First == nil || !strings.HasPrefix(f.First.Error(), "line 4 ") {
		t.Errorf("the first is %v", f.First)
	}
}

func TestOwners(t *testing.T) {
	named, unnamed := made(t, " Ana  Lind ", 1, 1), made(t, "", 2, 2)
	n := len(unnamed) / 2
	for name, c := range map[string]struct {
		files map[string][]string
		want  []string
	}{
		"by the settings' name, however it is spelt": {
			map[string][]string{"x.jsonl": slices.Concat(named, made(t, "ana lind", 1, 3))}, []string{"Ana Lind", "Ana Lind"}},
		"two of one name, with no run in common": {
			map[string][]string{"x/journal.jsonl": named, "y/journal.jsonl": made(t, "ana lind", 1, 3)},
			[]string{"Ana Lind (x/journal.jsonl)", "Ana Lind (y/journal.jsonl)"}},
		"one of one name, with a run in common": {
			map[string][]string{"x.jsonl": named, "y.jsonl": slices.Concat(named, made(t, "ana lind", 1, 3))}, []string{"Ana Lind", "Ana Lind"}},
		"one of one name, with an unnamed run in common": {
			map[string][]string{"x.jsonl": slices.Concat(unnamed[:n], named), "y.jsonl": slices.Concat(unnamed[:n], made(t, "ana lind", 1, 3))},
			[]string{"Ana Lind", "Ana Lind", "Ana Lind"}},
		"two unnamed files of one name, in two folders": {
			map[string][]string{"club/a/bea.jsonl": unnamed[:n], "club/b/bea.jsonl": unnamed[n:]}, []string{"bea (a/bea.jsonl)", "bea (b/bea.jsonl)"}},
		"an unnamed file and a name": {
			map[string][]string{"bea.jsonl": unnamed[:n], "c.jsonl": made(t, "Bea", 1, 4)}, []string{"Bea (c.jsonl)", "bea (bea.jsonl)"}},
		"by the file": {map[string][]string{"bea.jsonl": unnamed}, []string{"bea", "bea"}},
		"by the folder, if the file has the common name": {
			map[string][]string{"bea/journal.jsonl": unnamed[:n], "cleo/journal.jsonl": unnamed[n:]}, []string{"bea", "cleo"}},
		"by the one name in the file": {
			map[string][]string{"x.jsonl": slices.Concat(unnamed, named)}, []string{"Ana Lind", "Ana Lind", "Ana Lind"}},
		"by the file if it has two names": {
			map[string][]string{"x.jsonl": slices.Concat(unnamed[:n], named, made(t, "Bea", 1, 4))}, []string{"Ana Lind", "Bea", "x"}},
		"by the first of two files that share an unnamed run": {
			map[string][]string{"bea-1.jsonl": unnamed[:n], "bea-2.jsonl": unnamed}, []string{"bea-1", "bea-1"}},
		"by a name that came later": {
			map[string][]string{"bea-1.jsonl": unnamed[:n], "bea-2.jsonl": slices.Concat(unnamed, named)},
			[]string{"Ana Lind", "Ana Lind", "Ana Lind"}},
	} {
		t.Run(name, func(t *testing.T) {
			got, _ := gather(t, Options{Bound: 1000}, folder(t, c.files))
			var players []string
			for _, r := range got {
				players = append(players, r.Player)
			}
			slices.Sort(players)
			if !slices.Equal(players, c.want) {
				t.Errorf("players %q, want %q", players, c.want)
			}
		})
	}
}

// Somebody who says so makes one player of two of one name.
func TestSameName(t *testing.T) {
	dir := folder(t, map[string][]string{"x.jsonl": made(t, "Ana", 1, 1), "y.jsonl": made(t, "Ana", 1, 2), "z.jsonl": made(t, "Bea", 1, 3)})
	got, _ := gather(t, Options{Same: []string{" ana"}}, dir)
	var players []string
	for _, r := range got {
		players = append(players, r.Player)
	}
	if slices.Sort(players); !slices.Equal(players, []string{"Ana", "Ana", "Bea"}) {
		t.Errorf("players %q", players)
	}
}

func TestFind(t *testing.T) {
	dir := folder(t, map[string][]string{"b.jsonl": nil, "a/journal.JSONL": nil, ".hidden/x.jsonl": nil, ".y.jsonl": nil, "notes.txt": nil})
	files, err := find([]string{dir, filepath.Join(dir, "b.jsonl"), filepath.Join(dir, "notes.txt")})
	var got []string
	for _, f := range files {
		got = append(got, f.Path)
	}
	want := []string{filepath.Join(dir, "a", "journal.JSONL"), filepath.Join(dir, "b.jsonl"), filepath.Join(dir, "notes.txt")}
	if err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("found %v, %v; want %v", got, err, want)
	}
	if _, err := find([]string{filepath.Join(dir, "none")}); err == nil || !strings.Contains(err.Error(), "there is no journal") {
		t.Errorf("a missing file: %v", err)
	}
	if _, err := find([]string{t.TempDir()}); err == nil || !strings.Contains(fault.Text(err), "hint: ") {
		t.Errorf("an empty folder: %v", err)
	}
}

func TestProgress(t *testing.T) {
	lines := made(t, "", 20, 1)
	dir := folder(t, map[string][]string{"a.jsonl": lines})
	last, of := int64(0), int64(0)
	folded, whole := int64(0), int64(0)
	gather(t, Options{Folding: func(done, total int64) {
		if done <= folded {
			t.Errorf("%d were folded after %d", done, folded)
		}
		folded, whole = done, total
	}, Progress: func(read, total int64) {
		if read < last || read > total {
			t.Errorf("%d of %d after %d", read, total, last)
		}
		last, of = read, total
	}}, dir)
	if folded != whole || whole == 0 {
		t.Errorf("%d of %d are folded in the end", folded, whole)
	}
	if want := int64(len(strings.Join(lines, ""))); last != want || of != want {
		t.Errorf("%d of %d in the end, want %d", last, of, want)
	}
}
