// Package briefing says what a player should know before a session starts, on
// one screen, and only if there is something to say: pain noted last time, time
// since the last jumps, a break, a match, and what the check finds for this
// player and room. It is never a diagnosis and stops nobody: it says whom to
// see, and offers another choice.
package briefing

import (
	"fmt"
	"slices"
	"time"

	"coldfloor/internal/check"
	"coldfloor/internal/journal"
	"coldfloor/internal/jumps"
	"coldfloor/internal/next"
	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
)

// maxFindings is how many of the check's findings are said in full.
const maxFindings = 3

// Options is what is known besides the session and the journal.
type Options struct {
	Player settings.Player
	Weeks  *weeks.Plan // the player's plan of weeks; nil: there is none
	Now    time.Time
}

// Briefing is what is to be said.
type Briefing struct {
	Text  []string // paragraphs, the gravest first; none: there is nothing to say
	Stop  bool     // a licensed practitioner comes before the session
	Jumps bool     // the session has jumps: one without may be better today
}

// Of returns what is to be said before a run of p, given the runs of the log.
func Of(p *plan.Plan, runs []*journal.Run, o Options) Briefing {
	own := ownRuns(runs, o.Player.Name)
	b := Briefing{Jumps: jumps.Any(p.Session)}
	b.pain(own, o)
	findings := check.Run(p, check.Options{Player: o.Player, Jumps: Jumped(own, o.Now), Now: o.Now})
	b.spacing(findings)
	b.afterBreak(p, own, o)
	b.match(o)
	b.findings(findings)
	return b
}

// Notice returns the notice of a run's flow that says all of this. Clock tells
// the time.
func Notice(player settings.Player, season *weeks.Plan, clock func() time.Time) run.Notice {
	return func(p *plan.Plan, runs []*journal.Run) *run.Say {
		b := Of(p, runs, Options{Player: player, Weeks: season, Now: clock()})
		if len(b.Text) == 0 {
			return nil
		}
		say := &run.Say{Title: "Before you start: " + p.Session.Title, Text: b.Text}
		if b.Stop {
			say.Title = "Stop first: " + p.Session.Title
		}
		if b.Jumps {
			say.Label = "choose a session without jumps"
			say.Only = func(o *plan.Plan) bool { return !jumps.Any(o.Session) }
		}
		return say
	}
}

// ownRuns returns the runs of a player that count, the earliest first.
func ownRuns(runs []*journal.Run, name string) []*journal.Run {
	var own []*journal.Run
	for r := range journal.Counting(runs) {
		if r.Started != nil && r.Started.Player == name {
			own = append(own, r)
		}
	}
	slices.SortStableFunc(own, func(a, b *journal.Run) int { return a.Start.Compare(b.Start) })
	return own
}

// say adds a paragraph.
func (b *Briefing) say(format string, args ...any) {
	b.Text = append(b.Text, fmt.Sprintf(format, args...))
}

// pain says what was noted of pain in the last session.
func (b *Briefing) pain(own []*journal.Run, o Options) {
	if len(own) == 0 {
		return
	}
	last := own[len(own)-1]
	stop := next.LimitsOf(o.Player.Limits).StopPain
	for _, said := range last.Pains() {
		if said.Level != nil && *said.Level == 0 {
			continue
		}
		text := "Pain was noted last time, " + units.DateOf(last.Start).Short()
		if said.Where != "" {
			text += ": " + said.Where
		}
		if said.Level != nil {
			text += fmt.Sprintf(", %d of 10", *said.Level)
		}
		if grave := said.Level != nil && *said.Level >= stop; grave || fresh(own, said) {
			b.Stop = true
			text += ". Pain that is new in a joint, or this strong: stop, and see a licensed practitioner before you train"
		} else {
			text += ". If it is still there or rising, leave the jumps out and ask a licensed practitioner"
		}
		b.say("%s.", text)
	}
}

// fresh reports whether pain at a place is new there, by all sessions before the
// last.
func fresh(own []*journal.Run, said journal.Statement) bool {
	return journal.NewPain(said.Where, said.At, func(yield func(string, time.Time) bool) {
		for _, r := range own[:len(own)-1] {
			for _, x := range r.Pains() {
				if !yield(x.Where, x.At) {
					return
				}
			}
		}
	})
}

// year is how far back the rules on jumps look at most.
const year = 366 * 24 * time.Hour

// Jumped returns those of a player's sessions of the last year that had jumps,
// as the rules take them.
func Jumped(own []*journal.Run, now time.Time) []check.Jumped {
	var list []check.Jumped
	for _, j := range journal.JumpsOf(own, now) {
		if now.Sub(j.At) < year {
			n := j.Run.Contacts()
			list = append(list, check.Jumped{End: j.At, Contacts: n.N, Unknown: !n.Known})
		}
	}
	return list
}

// spacing says how long ago the last jumps were, if that is less than the range.
func (b *Briefing) spacing(findings []check.Finding) {
	for _, f := range findings {
		if f.Rule == check.Spacing {
			b.say("%s.", capital(f.Message))
		}
	}
}

// afterBreak says what the published steps give after two weeks off or more.
func (b *Briefing) afterBreak(p *plan.Plan, own []*journal.Run, o Options) {
	if len(own) == 0 {
		return
	}
	l := next.LimitsOf(o.Player.Limits)
	days := int(units.DateOf(o.Now) - units.DateOf(own[len(own)-1].Start))
	if days < l.Break {
		return
	}
	text := fmt.Sprintf("%d days since your last session. In the first week back %d %% of the usual is enough", days, l.Return[0])
	if p.Contacts > 0 {
		text += fmt.Sprintf(": of the %d contacts here, %d", p.Contacts, p.Contacts*l.Return[0]/100)
	}
	b.say("%s; %d, %d and %d %% in the weeks after (Caterisano et al., Strength Cond J 2019;41(3):1–23, second-hand; for contacts an analogy).",
		text, l.Return[1], l.Return[2], l.Return[3])
}

// match says if there is a match today or tomorrow.
func (b *Briefing) match(o Options) {
	if o.Weeks == nil {
		return
	}
	today := units.DateOf(o.Now)
	for _, m := range o.Weeks.Matches {
		switch m.Date {
		case today:
			b.say("A match is today: jumps before it take away from it (common practice, no source).")
		case today + 1:
			b.say("A match is tomorrow: jumps today take away from it (common practice, no source).")
		}
	}
}

// findings says what the check finds for this player and room.
func (b *Briefing) findings(all []check.Finding) {
	grave := slices.DeleteFunc(slices.Clone(all), func(f check.Finding) bool { return f.Severity == check.Note || f.Rule == check.Spacing })
	slices.SortStableFunc(grave, func(x, y check.Finding) int { return rank(x.Severity) - rank(y.Severity) })
	for i, f := range grave {
		if i == maxFindings {
			b.say("%s more; coldfloor check lists them.", units.Count(len(grave)-i, "finding"))
			return
		}
		b.say("%s: %s.", capital(string(f.Severity)), f.Message)
	}
}

func rank(s check.Severity) int {
	if s == check.Error {
		return 0
	}
	return 1
}

// capital writes the first letter large.
func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}
