package plan_test

import (
	"slices"
	"testing"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

const s = time.Second

// block returns a block with the format's defaults, in n rounds.
func block(n int, rest time.Duration, es ...sessions.Exercise) sessions.Block {
	return sessions.Block{Title: "B", Rounds: n, Rest: rest, RestAfter: rest, Change: sessions.DefaultChange, Exercises: es}
}

// reps and others return exercises with the format's defaults.
func reps(n int) sessions.Exercise {
	return sessions.Exercise{Name: "hops", Reps: n, Rep: 2 * s, Switch: sessions.DefaultSwitch}
}

func perSide(n int, order sessions.Sides) sessions.Exercise {
	return sessions.Exercise{Name: "squat", RepsPerSide: n, Rep: 5 * s, Switch: 4 * s, Sides: order}
}

func timed(d time.Duration) sessions.Exercise { return sessions.Exercise{Name: "plank", Time: d} }

func of(leadIn time.Duration, blocks ...sessions.Block) *plan.Plan {
	return plan.Of(&sessions.Session{Title: "S", LeadIn: leadIn, Blocks: blocks})
}

// row is what the sentences below speak of.
type row struct {
	kind   plan.Kind
	length time.Duration
	side   plan.Side
	reps   int
}

func rows(p *plan.Plan) []row {
	var rs []row
	for _, st := range p.Steps {
		rs = append(rs, row{st.Kind, st.Length, st.Side, st.Reps})
	}
	return rs
}

// TestSentences holds one case for each sentence of the format's section on
// the plan, which it quotes.
func TestSentences(t *testing.T) {
	own := reps(3)
	rest := 30 * s
	own.Rest = &rest
	hand := reps(4)
	hand.Finish = sessions.ByHand
	noSwitch := perSide(1, sessions.LeftFirst)
	noSwitch.Switch = 0
	perTime := sessions.Exercise{Name: "side plank", TimePerSide: 20 * s, Switch: 3 * s, Sides: sessions.RightFirst}
	altTime := perTime
	altTime.Sides = sessions.AlternateReps
	two := block(1, 0, reps(1))
	two.RestAfter = 2 * time.Minute
	for _, c := range []struct {
		sentence string
		p        *plan.Plan
		want     []row
	}{
		{"`lead-in` once, of `lead_in`.",
			of(10*s, block(1, 0, reps(1)), block(1, 0, reps(1))),
			[]row{{plan.LeadIn, 10 * s, "", 0}, {plan.Work, 2 * s, plan.Both, 1}, {plan.Work, 2 * s, plan.Both, 1}}},
		{"Between two exercises of the same round a `change`,",
			of(0, block(1, 0, reps(1), reps(2))),
			[]row{{plan.Work, 2 * s, plan.Both, 1}, {plan.Change, 10 * s, "", 0}, {plan.Work, 4 * s, plan.Both, 2}}},
		{"or a `rest` where the first of them has its own.",
			of(0, block(1, 0, own, reps(1))),
			[]row{{plan.Work, 6 * s, plan.Both, 3}, {plan.Rest, 30 * s, "", 0}, {plan.Work, 2 * s, plan.Both, 1}}},
		{"After each round but the block's last: a `rest` of `rest`. Nothing follows the last work step.",
			of(0, block(3, 75*s, reps(1))),
			[]row{{plan.Work, 2 * s, plan.Both, 1}, {plan.Rest, 75 * s, "", 0}, {plan.Work, 2 * s, plan.Both, 1},
				{plan.Rest, 75 * s, "", 0}, {plan.Work, 2 * s, plan.Both, 1}}},
		{"After the last round of every block but the last: a `rest` of `rest_after`.",
			of(0, two, two),
			[]row{{plan.Work, 2 * s, plan.Both, 1}, {plan.Rest, 2 * time.Minute, "", 0}, {plan.Work, 2 * s, plan.Both, 1}}},
		{"A step of length 0 is left out.",
			of(0, block(2, 0, noSwitch)),
			[]row{{plan.Work, 5 * s, plan.Left, 1}, {plan.Work, 5 * s, plan.Right, 1},
				{plan.Work, 5 * s, plan.Left, 1}, {plan.Work, 5 * s, plan.Right, 1}}},
		{"`reps: n` is one `work` step of n × rep.",
			of(0, block(1, 0, reps(7))),
			[]row{{plan.Work, 14 * s, plan.Both, 7}}},
		{"`time: t` is one of t.",
			of(0, block(1, 0, timed(40*s))),
			[]row{{plan.Work, 40 * s, plan.Both, 0}}},
		{"`reps_per_side: n` is two work steps of n × rep, one a side, with a `switch` between them;",
			of(0, block(1, 0, perSide(5, sessions.LeftFirst))),
			[]row{{plan.Work, 25 * s, plan.Left, 5}, {plan.Switch, 4 * s, plan.Right, 0}, {plan.Work, 25 * s, plan.Right, 5}}},
		{"`time_per_side` likewise.",
			of(0, block(1, 0, perTime)),
			[]row{{plan.Work, 20 * s, plan.Right, 0}, {plan.Switch, 3 * s, plan.Left, 0}, {plan.Work, 20 * s, plan.Left, 0}}},
		{"`alternate-reps` makes `reps_per_side: n` one step of 2n × rep,",
			of(0, block(1, 0, perSide(5, sessions.AlternateReps))),
			[]row{{plan.Work, 50 * s, plan.Alternate, 10}}},
		{"and `time_per_side: t` one of 2t, with no switch.",
			of(0, block(1, 0, altTime)),
			[]row{{plan.Work, 40 * s, plan.Alternate, 0}}},
		{"`swap-each-round` starts left in odd rounds and right in even ones.",
			of(0, block(2, 9*s, perSide(1, sessions.SwapEachRound))),
			[]row{{plan.Work, 5 * s, plan.Left, 1}, {plan.Switch, 4 * s, plan.Right, 0}, {plan.Work, 5 * s, plan.Right, 1},
				{plan.Rest, 9 * s, "", 0},
				{plan.Work, 5 * s, plan.Right, 1}, {plan.Switch, 4 * s, plan.Left, 0}, {plan.Work, 5 * s, plan.Left, 1}}},
		{"A step with `finish: hand` counts in the plan with its paced length.",
			of(0, block(1, 0, hand)),
			[]row{{plan.Work, 8 * s, plan.Both, 4}}},
	} {
		if got := rows(c.p); !slices.Equal(got, c.want) {
			t.Errorf("%s\n got %v\nwant %v", c.sentence, got, c.want)
		}
	}
}

// TestTotals works one session out by hand: two rounds of hops and a squat a
// side, then a plank.
func TestTotals(t *testing.T) {
	hops := reps(10)
	hops.Contacts = 2
	up := block(2, 60*s, hops, perSide(5, sessions.LeftFirst))
	up.RestAfter = 90 * s
	p := of(10*s, up, block(1, 0, timed(30*s)))
	want := plan.Totals{
		Work:     2*(20+25+25)*s + 30*s,
		Rest:     60*s + 90*s,
		Change:   10*s + 2*(10+4)*s,
		Sets:     5,             // "A set is one exercise in one round, its two sides counted once."
		Reps:     2 * (10 + 10), // "Reps count both sides."
		Contacts: 2 * 10 * 2,    // "Contacts = reps × contacts."
	}
	want.Total = want.Work + want.Rest + want.Change // "total = work + rest + change"
	if p.Totals != want {
		t.Errorf("got  %+v\nwant %+v", p.Totals, want)
	}
	// "Lead-in belongs to no block." "A block's rest includes its `rest_after`."
	b := p.Blocks[0]
	if b.Start != 10*s || b.Change != 28*s || b.Rest != 150*s || b.Total != 140*s+28*s+150*s {
		t.Errorf("first block: %+v", b)
	}
	if got, want := p.Blocks[1].Start, b.Start+b.Total; got != want {
		t.Errorf("second block starts at %v, want %v", got, want)
	}
	// "a rest carries the block and round it follows"
	for _, st := range p.Steps {
		if st.Kind == plan.Rest && (st.Block != 1 || st.Exercise != 0) {
			t.Errorf("rest %+v", st)
		}
	}
}

func TestAt(t *testing.T) {
	p := of(10*s, block(2, 5*s, reps(1)))
	for i, st := range p.Steps {
		for _, at := range []time.Duration{st.Start, st.End() - 1} {
			if got := p.At(at); got != i {
				t.Errorf("At(%v) = %d, want %d", at, got, i)
			}
		}
	}
	if p.At(-s) != 0 || p.At(p.Total+s) != len(p.Steps)-1 {
		t.Error("At outside the plan")
	}
}
