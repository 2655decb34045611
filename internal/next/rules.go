package next

import (
	"fmt"
	"strings"
	"time"

	"coldfloor/internal/units"
)

// Who says so.
const (
	practice    = "common practice, no source"
	painSource  = "Silbernagel et al., Am J Sports Med 2007;35:897–906, second-hand: up to 5 of 10 in a known tendon trouble, gone by the next morning, not rising; the share kept is common practice, no source"
	breakSource = "Caterisano et al. (CSCCa and NSCA), Strength Cond J 2019;41(3):1–23, second-hand: weekly conditioning volume; its use for sessions of jumps is our own"
)

// rules are all the rules, each tested on both sides of its limits.
var rules = []func(Facts, Limits) []Reason{pain, onBreak, rounds, restsCut, effort, missed, unknown}

// pain speaks for less after any pain. How much pain may be trained with is
// not for a program to say.
func pain(f Facts, l Limits) []Reason {
	var reasons []Reason
	for _, x := range f.Pain {
		if x.Level != nil && *x.Level == 0 {
			continue
		}
		text := units.DateOf(x.At).Short() + ": pain " + painWords(x)
		switch {
		case wantsPractitioner(x, l):
			text += "; stop, and see a licensed practitioner before the next session"
		case x.Level == nil:
			text += ", no number given; ask how much"
		default:
			text += "; for you and the player to judge, with a licensed practitioner if in doubt"
		}
		reasons = append(reasons, Reason{"pain", Less, text, painSource})
	}
	return reasons
}

// painWords says where it hurts and how much, and how that has changed.
func painWords(x Pain) string {
	text := "at a place not named"
	if x.Where != "" {
		text = "(" + x.Where + ")"
	}
	if x.Level != nil {
		text += fmt.Sprintf(" %d of 10", *x.Level)
	}
	switch {
	case x.New:
		text += ", new there"
	case x.Level != nil && x.Before != nil && *x.Level > *x.Before:
		text += fmt.Sprintf(", up from %d", *x.Before)
	}
	return text
}

// wantsPractitioner reports whether the pain is above what any published rule
// accepts, or new: hospital pages on exercise safety say to stop and get help
// with new joint pain.
func wantsPractitioner(x Pain, l Limits) bool {
	if x.Level != nil {
		return *x.Level >= l.StopPain || x.New && *x.Level > 0
	}
	return x.New
}

// onBreak speaks for less after two weeks or more without training, for as
// many weeks as the published steps last.
func onBreak(f Facts, l Limits) []Reason {
	days, week := breakOf(f, l)
	if week == 0 || week > len(l.Return) {
		return nil
	}
	return []Reason{{"break", Less, fmt.Sprintf("%d days without training (%d or more count): week %d back keeps %d %% of the usual",
		days, l.Break, week, l.Return[week-1]), breakSource}}
}

// breakOf returns how long the player was away and which week back the next
// one is, from 1; 0 if there was no break that counts.
func breakOf(f Facts, l Limits) (days, week int) {
	if f.Last.IsZero() {
		return 0, 0
	}
	if away := daysBetween(f.Last, f.Now); away >= l.Break {
		return away, 1
	}
	if f.BackSince.IsZero() || f.BackAfter < l.Break {
		return 0, 0
	}
	return f.BackAfter, daysBetween(f.BackSince, f.Now)/7 + 2
}

// daysBetween counts calendar days, each moment in its own zone.
func daysBetween(a, b time.Time) int { return int(units.DateOf(b) - units.DateOf(a)) }

// keep returns what to keep of the coming weeks, in percent: the least that
// any reason gives.
func keep(f Facts, l Limits) []int {
	var kept []int
	if _, week := breakOf(f, l); week > 0 && week <= len(l.Return) {
		kept = append(kept, l.Return[week-1:]...)
	}
	if len(pain(f, l)) == 0 {
		return kept
	}
	if len(kept) == 0 {
		return []int{l.PainKeep}
	}
	kept[0] = min(kept[0], l.PainKeep)
	return kept
}

// rounds speaks for holding if too many rounds were left out.
func rounds(f Facts, l Limits) []Reason {
	if f.RoundsPrescribed <= 0 {
		return nil
	}
	share := float64(f.RoundsDone) / float64(f.RoundsPrescribed)
	if share >= l.Rounds {
		return nil
	}
	return []Reason{{"rounds", Hold, fmt.Sprintf("%d of %d rounds done, %s (under %s)",
		f.RoundsDone, f.RoundsPrescribed, units.Percent(share, l.Rounds), limit(l.Rounds)), practice}}
}

// restsCut speaks for holding if rests were cut short: for power the rest is
// the prescription, and more work on less rest is another session.
func restsCut(f Facts, l Limits) []Reason {
	if f.Rests < l.RestsKnown {
		return nil
	}
	share := float64(f.RestsCut) / float64(f.Rests)
	if share <= l.RestsCut {
		return nil
	}
	return []Reason{{"rests cut", Hold, fmt.Sprintf("%d of %d rests cut short, %s (over %s)",
		f.RestsCut, f.Rests, units.Percent(share, l.RestsCut), limit(l.RestsCut)), practice}}
}

// effort speaks for holding if a session felt harder than it usually does. The
// rating measures no volume alone (Kraft et al., J Strength Cond Res
// 2014;28:2042–2046), so each session is held against itself.
func effort(f Facts, l Limits) []Reason {
	var reasons []Reason
	for _, e := range f.Efforts {
		if e.Of < l.Ratings || e.RPE-e.Usual < l.Effort {
			continue
		}
		reasons = append(reasons, Reason{"effort", Hold, fmt.Sprintf("%s felt %s of 10, usually %s (%s; %s or more above)",
			e.Session, number(e.RPE), number(e.Usual), units.Count(e.Of, "rating"), number(l.Effort)), practice})
	}
	return reasons
}

// missed speaks for holding if much of the week was missed: what is missed is
// not made up by doubling the next.
func missed(f Facts, l Limits) []Reason {
	if f.Planned <= 0 || f.Last.IsZero() {
		return nil
	}
	if share := float64(f.Missed) / float64(f.Planned); f.Missed == 0 || share < l.Missed {
		return nil
	}
	return []Reason{{"missed", Hold, fmt.Sprintf("%d of %d sessions missed (%s or more)",
		f.Missed, f.Planned, limit(l.Missed)), practice}}
}

// unknown speaks for a question if the log says too little to judge by.
func unknown(f Facts, _ Limits) []Reason {
	ask := func(text string) []Reason { return []Reason{{"too little known", Ask, text, practice}} }
	switch {
	case f.Last.IsZero():
		return ask("no session is logged: ask what was done")
	case f.Planned == 0:
		return nil
	case f.Done == 0 && f.Planned == 1:
		return ask("the one session that the week had so far is not logged")
	case f.Done == 0:
		return ask(fmt.Sprintf("none of the week's %s is logged", units.Count(f.Planned, "session")))
	case f.RoundsPrescribed <= 0 && len(f.Efforts) == 0:
		return ask("neither rounds nor effort are known of any session of the week")
	}
	return nil
}

// asPlanned says what speaks for the plan.
func asPlanned(f Facts) Reason {
	seen := []string{fmt.Sprintf("%d of %s done", f.Done, units.Count(f.Planned, "session"))}
	if f.Planned == 0 {
		seen[0] = "nothing was planned in the week before"
	}
	if f.RoundsPrescribed > 0 {
		seen = append(seen, fmt.Sprintf("%d of %d rounds", f.RoundsDone, f.RoundsPrescribed))
	}
	if f.Rests > 0 {
		seen = append(seen, fmt.Sprintf("%d of %d rests cut short", f.RestsCut, f.Rests))
	}
	for _, e := range f.Efforts {
		text := fmt.Sprintf("%s felt %s of 10", e.Session, number(e.RPE))
		if e.Of > 0 {
			text += ", usually " + number(e.Usual)
		}
		seen = append(seen, text)
	}
	if len(f.Efforts) == 0 {
		seen = append(seen, "effort not rated")
	}
	if f.PainAsked {
		return Reason{"as planned", AsPlanned, strings.Join(append(seen, "no pain reported"), "; "), practice}
	}
	return Reason{"as planned", AsPlanned, strings.Join(append(seen, "pain not answered"), "; "), practice}
}

// limit writes a share that others are held against, just as it was set.
func limit(share float64) string { return units.Percent(share, share) }

func number(v float64) string {
	return strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0")
}
