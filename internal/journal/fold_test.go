package journal

import (
	"bytes"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func foldText(t testing.TB, text string) ([]*Run, []error) {
	t.Helper()
	runs, problems, err := foldAll(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return runs, problems
}

// A journal that arrives twice, grown, or in another order counts once.
func TestFoldCountsALineOnce(t *testing.T) {
	text := string(twoRuns(t))
	want, _ := foldText(t, text)
	lines := strings.SplitAfter(text, "\n")
	rapid.Check(t, func(t *rapid.T) {
		again := append(slices.Clone(lines), lines[:rapid.IntRange(0, len(lines)).Draw(t, "again")]...)
		got, problems, err := foldAll(strings.NewReader(strings.Join(rapid.Permutation(again).Draw(t, "order"), "")))
		if err != nil || len(problems) > 0 {
			t.Fatal(err, problems)
		}
		if !reflect.DeepEqual(got, want) {
			t.Fatalf("got %+v, want %+v", got[0], want[0])
		}
	})
}

func TestFoldTellsOfTwoLinesOfOneNumber(t *testing.T) {
	const head = `{"v":1,"run":"A","n":1,"at":"2026-07-14T18:30:00Z","t_s":0,"event":"set","set":{"outcome":"done","reps":`
	runs, problems := foldText(t, head+`3}}`+"\n"+head+`4}}`+"\n"+head+`3}}`)
	if len(problems) != 1 || problems[0].Error() != "run A has two lines 1 that differ, a set in line 1 and a set in line 2; the first counts" {
		t.Errorf("problems %v", problems)
	}
	if r := runs[0]; r.Reps() != CountOf(3) || r.Differ != 1 {
		t.Errorf("%+v", runs[0])
	}
}

// Two copies of a journal that were both amended: every statement counts, in
// the order of time from the number on at which they parted.
func TestFoldOfCopiesThatParted(t *testing.T) {
	line := func(n int, at, rating string) string {
		return fmt.Sprintf(`{"v":1,"run":"A","n":%d,"at":"2026-07-14T%sZ","t_s":0,"event":"rating","rating":%s}`+"\n", n, at, rating)
	}
	here := line(1, "18:00:00", `{"rpe":3}`) + line(2, "18:10:00", `{"pain":true,"where":"left knee"}`)
	there := line(1, "18:00:00", `{"rpe":3}`) + line(2, "18:05:00", `{"rpe":5}`) + line(3, "18:07:00", `{"rpe":6,"note":"sore"}`)
	for _, text := range []string{here + there, there + here} {
		runs, problems := foldText(t, text)
		r := runs[0]
		if len(problems) > 0 || r.Differ > 0 || len(r.Amendments) != 4 || *r.Rating.RPE != 6 || !r.Painful() {
			t.Errorf("problems %v, %+v", problems, r)
		}
		if len(r.Said) != 2 || r.Said[0].Note != "sore" || r.Said[1].Where != "left knee" {
			t.Errorf("said %+v", r.Said)
		}
	}
	withSet := `{"v":1,"run":"A","n":2,"at":"2026-07-14T18:01:00Z","t_s":9,"event":"set","set":{"outcome":"done","reps":3}}` + "\n"
	if runs, problems := foldText(t, here+withSet); len(problems) > 0 || len(runs[0].Sets) != 1 || !runs[0].Painful() {
		t.Errorf("a set and a rating of one number: problems %v, %+v", problems, runs[0])
	}
}

// Pain that was stated is not rewritten by what is said later.
func TestPainIsNotRewritten(t *testing.T) {
	var r Run
	at := start
	say := func(v Rating) { at = at.Add(time.Minute); r.say(&v, at) }
	say(Rating{Pain: ptr(true), Where: ptr("left knee"), Note: ptr("sharp on landing")})
	say(Rating{Pain: ptr(true), Where: ptr("right hip"), PainLevel: ptr(4)})
	if p := r.Pains(); len(p) != 2 || p[0].Where != "left knee" || p[0].Note != "sharp on landing" || p[1].Where != "right hip" || p[1].Note != "" || *p[1].Level != 4 {
		t.Errorf("%+v", p)
	}
	if *r.PainWhere() != "left knee; right hip" || *r.Notes() != "left knee: sharp on landing" {
		t.Errorf("%q, %q", *r.PainWhere(), *r.Notes())
	}
	say(Rating{Pain: ptr(false), Where: ptr("")})
	if !r.Painful() {
		t.Error("none took earlier pain back")
	}
	say(Rating{NoPain: true})
	if r.Painful() || len(r.Pains()) != 0 || len(r.Said) != 3 || !r.Said[0].Slip || !r.Said[1].Slip {
		t.Errorf("after a slip: %+v", r.Said)
	}
}

func TestFoldWithoutItsStart(t *testing.T) {
	_, rest, _ := bytes.Cut(twoRuns(t), []byte("\n"))
	runs, problems := foldText(t, string(rest))
	i := slices.IndexFunc(runs, func(r *Run) bool { return r.Started == nil })
	if len(problems) != 1 || problems[0].Error() != "line 1 of run A is missing" || len(runs) != 2 || i < 0 || runs[i].Missing != 1 {
		t.Fatalf("%d runs, problems %v", len(runs), problems)
	}
	r := runs[i]
	if r.Title() != "(start lost)" || r.RoundsDone() != nil || len(r.Sets) == 0 || r.Contacts().N == 0 {
		t.Errorf("%+v", r)
	}
}

func TestFoldMergesAmendments(t *testing.T) {
	j := openTemp(t)
	const id = "RUN"
	lines := everything(t, id)
	lines[len(lines)-1].Rating = &Rating{Rounds: []int{2, 1}, RPE: ptr(5.0), Pain: ptr(true), Where: ptr("left knee")}
	if err := j.Append(lines...); err != nil {
		t.Fatal(err)
	}
	began := time.Date(2026, 7, 13, 7, 0, 0, 0, time.UTC)
	for _, l := range []Line{
		{Event: EventRating, Rating: &Rating{RPE: ptr(7.0), Note: ptr("felt it later")}},
		{Event: EventRating, Rating: &Rating{Pain: ptr(false), Where: ptr("")}},
		{Event: EventCorrect, Correct: &Correct{LengthS: ptr(600.0)}},
		{Event: EventCorrect, Correct: &Correct{At: &began}},
	} {
		if err := j.Amend(id, l); err != nil {
			t.Fatal(err)
		}
	}
	got := only(t, j)
	if want := (Rating{Rounds: []int{2, 1}, RPE: ptr(7.0), Pain: ptr(true)}); !reflect.DeepEqual(got.Rating, want) {
		t.Errorf("rating %+v", got.Rating)
	}
	if got.Elapsed != 10*time.Minute || !got.Start.Equal(began) || len(got.Amendments) != 5 || got.Withdrawn {
		t.Errorf("%+v", got)
	}
	if !reflect.DeepEqual(got.RoundsDone(), []int{2, 1}) || !reflect.DeepEqual(got.RoundsCounted(), []int{1, 2}) {
		t.Errorf("rounds %v, counted %v", got.RoundsDone(), got.RoundsCounted())
	}
	// Foster's load: RPE times minutes.
	if load, ok := got.Load(); !ok || load != 70 {
		t.Errorf("load %v, %v; want 7 × 10 min", load, ok)
	}
	if err := j.Amend(id, Line{Event: EventWithdraw}); err != nil {
		t.Fatal(err)
	}
	if got = only(t, j); !got.Withdrawn {
		t.Error("not withdrawn")
	}
	if err := j.Amend(id, Line{Event: EventRestore}); err != nil {
		t.Fatal(err)
	}
	if got = only(t, j); got.Withdrawn {
		t.Error("not restored")
	}
}

// A round counts when all its sets were done, and only then.
func TestRoundsCounted(t *testing.T) {
	r := &Run{Started: &Started{Blocks: []PlannedBlock{{Rounds: 3, Sets: 6}, {Rounds: 1, Sets: 1}}}}
	set := func(block, round, exercise int, outcome string) {
		r.Sets = append(r.Sets, Set{Place: Place{block, round, exercise}, Outcome: outcome})
	}
	set(1, 1, 1, "done")
	set(1, 1, 2, "done")
	set(1, 2, 1, "done")
	set(1, 2, 2, "partial")
	set(1, 3, 1, "skipped")
	set(1, 3, 2, "done")
	set(2, 1, 1, "done")
	set(7, 1, 1, "done") // no such block
	set(2, 9, 1, "done") // no such round
	if got := r.RoundsDone(); !reflect.DeepEqual(got, []int{1, 1}) {
		t.Errorf("rounds %v, want [1 1]", got)
	}
}
