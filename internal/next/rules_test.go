package next

import (
	"slices"
	"strings"
	"testing"
	"time"
)

var now = time.Date(2027, 1, 3, 20, 0, 0, 0, time.UTC)

// fine is a week against which nothing speaks; change makes it another.
func fine(change func(*Facts)) Facts {
	f := Facts{Player: "Ida", Now: now, Next: 5, Planned: 3, Done: 3, RoundsDone: 20, RoundsPrescribed: 20,
		Rests: 20, Efforts: []Effort{{"Hallway power", 5, 5, 4}}, Last: now.AddDate(0, 0, -1)}
	if change != nil {
		change(&f)
	}
	return f
}

func level(n int) *int { return &n }

// hurts returns a change that reports pain.
func hurts(p Pain) func(*Facts) {
	p.At = now.AddDate(0, 0, -1)
	return func(f *Facts) { f.Pain = []Pain{p} }
}

// TestLimits holds every rule on both sides of its limit. The limits are those
// that DefaultLimits names the sources of; the rest is common practice, no
// source.
func TestLimits(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Facts)
		want   Kind
		rule   string // that must be among the reasons; empty: none but "as planned"
	}{
		{"nothing", nil, AsPlanned, ""},
		{"18 of 20 rounds", func(f *Facts) { f.RoundsDone = 18 }, AsPlanned, ""},
		{"17 of 20 rounds", func(f *Facts) { f.RoundsDone = 17 }, Hold, "rounds"},
		{"rounds not known", func(f *Facts) { f.RoundsDone, f.RoundsPrescribed = 0, 0 }, AsPlanned, ""},
		{"4 of 20 rests cut", func(f *Facts) { f.RestsCut = 4 }, AsPlanned, ""},
		{"5 of 20 rests cut", func(f *Facts) { f.RestsCut = 5 }, Hold, "rests cut"},
		{"4 of 4 rests cut", func(f *Facts) { f.Rests, f.RestsCut = 4, 4 }, AsPlanned, ""},
		{"5 of 5 rests cut", func(f *Facts) { f.Rests, f.RestsCut = 5, 5 }, Hold, "rests cut"},
		{"effort 1.5 above", func(f *Facts) { f.Efforts = []Effort{{"A", 6.5, 5, 3}} }, AsPlanned, ""},
		{"effort 2 above", func(f *Facts) { f.Efforts = []Effort{{"A", 7, 5, 3}} }, Hold, "effort"},
		{"effort 2 above two ratings", func(f *Facts) { f.Efforts = []Effort{{"A", 7, 5, 2}} }, AsPlanned, ""},
		{"1 of 3 missed", func(f *Facts) { f.Missed, f.Done = 1, 2 }, AsPlanned, ""},
		{"1 of 2 missed", func(f *Facts) { f.Planned, f.Missed, f.Done = 2, 1, 1 }, Hold, "missed"},
		{"pain without a number", hurts(Pain{Where: "left knee"}), Less, "pain"},
		{"pain 0", hurts(Pain{Where: "left knee", Level: level(0)}), AsPlanned, ""},
		{"pain 1", hurts(Pain{Where: "left knee", Level: level(1)}), Less, "pain"},
		{"13 days off", func(f *Facts) { f.Last = now.AddDate(0, 0, -13) }, AsPlanned, ""},
		{"14 days off", func(f *Facts) { f.Last = now.AddDate(0, 0, -14) }, Less, "break"},
		{"back three weeks after 13 days", func(f *Facts) { f.BackSince, f.BackAfter = now.AddDate(0, 0, -20), 13 }, AsPlanned, ""},
		{"back two weeks", func(f *Facts) { f.BackSince, f.BackAfter = now.AddDate(0, 0, -20), 14 }, Less, "break"},
		{"back three weeks", func(f *Facts) { f.BackSince, f.BackAfter = now.AddDate(0, 0, -21), 14 }, AsPlanned, ""},
		{"nothing logged ever", func(f *Facts) { *f = Facts{Now: now, Planned: 3, Missed: 3} }, Ask, "too little known"},
		{"nothing logged this week", func(f *Facts) { f.Done = 0 }, Ask, "too little known"},
		{"neither rounds nor effort", func(f *Facts) { f.RoundsDone, f.RoundsPrescribed, f.Efforts = 0, 0, nil }, Ask, "too little known"},
		{"pain outweighs rounds", func(f *Facts) { f.RoundsDone = 1; hurts(Pain{})(f) }, Less, "rounds"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := Propose(fine(c.change), DefaultLimits)
			if p.Kind != c.want {
				t.Errorf("proposes %q, want %q: %+v", p.Kind, c.want, p.Reasons)
			}
			rule := c.rule
			if rule == "" {
				rule = "as planned"
			}
			if !slices.ContainsFunc(p.Reasons, func(r Reason) bool { return r.Rule == rule }) {
				t.Errorf("no reason %q in %+v", rule, p.Reasons)
			}
			for _, r := range p.Reasons {
				if r.Source == "" || r.Text == "" {
					t.Errorf("a reason without text or source: %+v", r)
				}
			}
		})
	}
}

// TestWhatIsNotAnswered: a question that nobody answered is not one answered
// with no.
func TestWhatIsNotAnswered(t *testing.T) {
	said := Propose(fine(func(f *Facts) { f.Efforts = nil }), DefaultLimits).Reasons[0].Text
	if !strings.Contains(said, "effort not rated") || !strings.Contains(said, "pain not answered") {
		t.Errorf("says %q", said)
	}
	said = Propose(fine(func(f *Facts) { f.PainAsked = true }), DefaultLimits).Reasons[0].Text
	if !strings.Contains(said, "no pain reported") {
		t.Errorf("says %q", said)
	}
}

// TestReturnSteps: of 120 contacts 60, 84, 96, 108 in the weeks back
// (Caterisano et al., Strength Cond J 2019;41(3):1–23, second-hand; the
// products are computed, their use for contacts is our own).
func TestReturnSteps(t *testing.T) {
	want := []int{60, 84, 96, 108}
	p := Propose(fine(func(f *Facts) { f.Last = now.AddDate(0, 0, -20) }), DefaultLimits)
	var got []int
	for _, k := range p.Keep {
		got = append(got, 120*k/100)
	}
	if !slices.Equal(got, want) {
		t.Errorf("contacts %v, want %v", got, want)
	}
	// Each later week begins one step further on.
	for week := 1; week <= 3; week++ {
		p := Propose(fine(func(f *Facts) { f.BackSince, f.BackAfter = now.AddDate(0, 0, -7*(week-1)), 20 }), DefaultLimits)
		if !slices.Equal(p.Keep, DefaultLimits.Return[week:]) {
			t.Errorf("week %d back: keep %v", week, p.Keep)
		}
	}
}

// TestStop: new pain, and pain of 6 and more, wants a licensed practitioner.
func TestStop(t *testing.T) {
	for _, c := range []struct {
		pain Pain
		want bool
	}{
		{Pain{Level: level(5)}, false},
		{Pain{Level: level(6)}, true},
		{Pain{New: true}, true},
		{Pain{New: true, Level: level(2)}, true},
		{Pain{New: true, Level: level(0)}, false},
		{Pain{}, false},
	} {
		p := Propose(fine(hurts(c.pain)), DefaultLimits)
		said := strings.Contains(p.Reasons[0].Text, "licensed practitioner before the next session")
		if p.Stop != c.want || said != c.want {
			t.Errorf("%+v: stop %v, said %v, want %v", c.pain, p.Stop, said, c.want)
		}
	}
}

// TestKeepIsTheLeast: pain during a return keeps the lesser of both.
func TestKeepIsTheLeast(t *testing.T) {
	p := Propose(fine(func(f *Facts) {
		f.BackSince, f.BackAfter = now.AddDate(0, 0, -7), 20
		hurts(Pain{Level: level(3)})(f)
	}), DefaultLimits)
	if !slices.Equal(p.Keep, []int{50, 90}) {
		t.Errorf("keep %v, want 50 then 90", p.Keep)
	}
}

// TestPartsByTheirLimits: a part that is beyond a limit is not written as the limit.
func TestPartsByTheirLimits(t *testing.T) {
	l := DefaultLimits
	l.Rounds = .125
	p := Propose(fine(func(f *Facts) {
		f.Rests, f.RestsCut = 49, 10
		f.RoundsDone, f.RoundsPrescribed = 12, 97
	}), l)
	for i, want := range []string{"12 of 97 rounds done, 12 % (under 12.5 %)", "10 of 49 rests cut short, 20.4 % (over 20 %)"} {
		if got := p.Reasons[i].Text; got != want {
			t.Errorf("says %q, want %q", got, want)
		}
	}
}
