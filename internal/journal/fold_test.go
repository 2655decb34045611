package journal

import (
	"bytes"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func foldText(t testing.TB, text string) ([]*Run, []error) {
	t.Helper()
	runs, problems, err := FoldAll(Read(strings.NewReader(text)))
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
		got, problems, err := FoldAll(Read(strings.NewReader(strings.Join(rapid.Permutation(again).Draw(t, "order"), ""))))
		if err != nil || len(problems) > 0 {
			t.Fatal(err, problems)
		}
		if !reflect.DeepEqual(got, want) {
			t.Fatalf("got %+v, want %+v", got[0], want[0])
		}
	})
}

func TestFoldTellsOfTwoLinesOfOneNumber(t *testing.T) {
	const head = `{"v":1,"run":"A","n":1,"at":"2026-07-14T18:30:00Z","t_s":0,"event":"rating","rating":`
	runs, problems := foldText(t, head+`{"rpe":3}}`+"\n"+head+`{"rpe":4}}`+"\n"+head+`{"rpe":3}}`)
	if len(problems) != 1 || !strings.Contains(problems[0].Error(), "lines 1 and 2 both are line 1 of run A and differ; the first counts") {
		t.Errorf("problems %v", problems)
	}
	if *runs[0].Rating.RPE != 3 || len(runs[0].Amendments) != 1 {
		t.Errorf("%+v", runs[0])
	}
}

func TestFoldWithoutItsStart(t *testing.T) {
	_, rest, _ := bytes.Cut(twoRuns(t), []byte("\n"))
	runs, problems := foldText(t, string(rest))
	i := slices.IndexFunc(runs, func(r *Run) bool { return r.Started == nil })
	if len(problems) > 0 || len(runs) != 2 || i < 0 {
		t.Fatalf("%d runs, problems %v", len(runs), problems)
	}
	r := runs[i]
	if r.Title() != "(start lost)" || r.RoundsDone() != nil || len(r.Sets) == 0 || r.Contacts() == 0 {
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
	if want := (Rating{Rounds: []int{2, 1}, RPE: ptr(7.0), Pain: ptr(false), Where: ptr(""), Note: ptr("felt it later")}); !reflect.DeepEqual(got.Rating, want) {
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
