package journal

import (
	"maps"
	"slices"
	"time"
)

// answers fails unless what is asked of an overview without all its runs being
// decoded is what all its runs say.
func answers(t interface {
	Helper()
	Fatalf(string, ...any)
}, o *Overview) {
	t.Helper()
	all := o.Runs()
	ids := func(runs []*Run) (names []string) {
		for _, r := range runs {
			names = append(names, r.ID)
		}
		return names
	}
	backward := slices.Collect(o.Backward())
	slices.Reverse(backward)
	if !slices.Equal(ids(backward), ids(all)) {
		t.Fatalf("backward %v, want %v", ids(backward), ids(all))
	}
	standing := slices.DeleteFunc(slices.Clone(all), func(r *Run) bool { return r.Withdrawn })
	if o.Listed() != len(standing) {
		t.Fatalf("%d are listed, want %d", o.Listed(), len(standing))
	}
	for _, r := range all {
		if found := o.Named(r.ID); found == nil || found.ID != r.ID || !found.Start.Equal(r.Start) || found.LastN != r.LastN {
			t.Fatalf("run %s is found as %v", r.ID, found)
		}
		for _, since := range []time.Time{r.Start, r.End(), r.Start.Add(time.Second)} {
			var want []string
			for _, x := range all {
				if latestOf(x) >= since.Unix() {
					want = append(want, x.ID)
				}
			}
			if got := ids(o.Since(since)); !slices.Equal(got, want) {
				t.Fatalf("since %v %v, want %v", since, got, want)
			}
		}
	}
	if o.Named("NOBODY") != nil {
		t.Fatalf("a run is found that is not there")
	}
	for i, at := range []func(*Run) (time.Time, bool){
		func(r *Run) (time.Time, bool) { return r.End(), r.Counts() },
		func(r *Run) (time.Time, bool) { return r.Removed, r.Withdrawn },
		func(r *Run) (time.Time, bool) { return r.Start, r.State == Unfinished },
		func(r *Run) (time.Time, bool) { return time.Time{}, false },
	} {
		var want *Run
		var latest time.Time
		for _, r := range all {
			if t, ok := at(r); ok && (want == nil || !t.Before(latest)) {
				want, latest = r, t
			}
		}
		got := o.Last(at)
		if (got == nil) != (want == nil) || got != nil && got.ID != want.ID {
			t.Fatalf("last %d is %v, want %v", i, got, want)
		}
	}
	asksBeforeAStart(t, o, all, ids)
}

// asksBeforeAStart is answers for what a start asks.
func asksBeforeAStart(t interface {
	Helper()
	Fatalf(string, ...any)
}, o *Overview, all []*Run, ids func([]*Run) []string) {
	t.Helper()
	if len(all) == 0 {
		return
	}
	open := slices.DeleteFunc(slices.Clone(all), func(r *Run) bool { return r.State != Unfinished || r.Withdrawn })
	if got := ids(o.Unfinished()); !slices.Equal(got, ids(open)) {
		t.Fatalf("unfinished %v, want %v", got, ids(open))
	}
	last, own := map[string]time.Time{"never done": {}}, map[string]*Run{"Nobody": nil}
	for r := range Counting(all) {
		if r.Started != nil {
			last[r.Started.Source] = later(last[r.Started.Source], r.End())
			own[r.Started.Player] = r
		}
	}
	together := o.LastDone(slices.Collect(maps.Keys(last))...)
	for source, want := range last {
		if got := o.LastDone(source)[source]; !got.Equal(want) || !together[source].Equal(want) {
			t.Fatalf("%s was done last %v, with others asked for %v, want %v", source, got, together[source], want)
		}
	}
	for player, r := range own {
		for _, since := range []time.Time{{}, all[len(all)/2].Start, all[len(all)-1].Start.AddDate(9, 0, 0)} {
			got := o.Lately(since, player)
			for _, x := range all {
				if there := slices.Contains(ids(got), x.ID); latestOf(x) >= since.Unix() && !there || there && latestOf(x) < since.Unix() && x != r {
					t.Fatalf("since %v, of %s: %v", since, player, ids(got))
				}
			}
			if r != nil && !slices.ContainsFunc(got, func(x *Run) bool { return x.Counts() && x.Started != nil && x.Started.Player == player }) || !slices.IsSortedFunc(got, compareRuns) {
				t.Fatalf("since %v, of %s: %v without %s", since, player, ids(got), r.ID)
			}
		}
	}
}
