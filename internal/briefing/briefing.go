// Package briefing says what a player should know before a session starts, on
// one screen, and only if there is something to say: pain noted last time, time
// since the last jumps, a break, a match, and what the check finds for this
// player and room. It is never a diagnosis and stops nobody: it says whom to
// see, and offers another choice.
package briefing

import (
	"slices"
	"time"

	"coldfloor/internal/check"
	"coldfloor/internal/journal"
	"coldfloor/internal/jumps"
	"coldfloor/internal/next"
	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
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

	Language *text.Language // that the player reads
}

// Briefing is what is to be said.
type Briefing struct {
	Text  []string // paragraphs, the gravest first; none: there is nothing to say
	Stop  bool     // a licensed practitioner comes before the session
	Jumps bool     // the session has jumps: one without may be better today

	lang *text.Language
}

// Of returns what is to be said before a run of p, given the runs of the log.
func Of(p *plan.Plan, runs []*journal.Run, o Options) Briefing {
	own := ownRuns(runs, o.Player.Name)
	b := Briefing{Jumps: jumps.Any(p.Session), lang: o.Language}
	b.pain(own, o, o.Now.AddDate(0, 0, -journal.NewPainAfter))
	findings := check.Run(p, check.Options{Player: o.Player, Jumps: Jumped(own, o.Now), Now: o.Now, Language: o.Language})
	b.spacing(findings)
	b.afterBreak(p, own, o)
	b.match(o)
	b.findings(findings)
	return b
}

// Notice returns the notice of a run's flow that says all of this. Clock tells
// the time.
func Notice(player settings.Player, season *weeks.Plan, l *text.Language, clock func() time.Time) run.Notice {
	return func(p *plan.Plan, runs []*journal.Run) *run.Say {
		b := Of(p, runs, Options{Player: player, Weeks: season, Now: clock(), Language: l})
		if len(b.Text) == 0 {
			return nil
		}
		return b.notice(l.Title(p.Session.Title))
	}
}

// Again returns what is said before a run that did not end is resumed: pain
// noted since it began, for the rest was said then.
func Again(player settings.Player, l *text.Language) func(*journal.Run, *plan.Plan, []*journal.Run) *run.Say {
	return func(r *journal.Run, p *plan.Plan, runs []*journal.Run) *run.Say {
		b := Briefing{Jumps: jumps.Any(p.Session), lang: l}
		b.pain(ownRuns(runs, player.Name), Options{Player: player}, r.Start)
		if len(b.Text) == 0 {
			return nil
		}
		return b.notice(l.Title(p.Session.Title))
	}
}

// notice puts the briefing before a session of a title.
func (b *Briefing) notice(title string) *run.Say {
	w := &b.lang.Briefing
	say := &run.Say{Title: w.Title(title), Text: b.Text}
	if b.Stop {
		say.Title = w.StopTitle(title)
	}
	if b.Jumps {
		say.Label = w.WithoutJumps
		say.Only = func(o *plan.Plan) bool { return !jumps.Any(o.Session) }
	}
	return say
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
func (b *Briefing) say(paragraph string) { b.Text = append(b.Text, paragraph) }

// pain says what was noted of pain when the player was last asked and answered:
// a session after which nothing was said of pain was not one without it.
// Statements from before since are left out.
func (b *Briefing) pain(own []*journal.Run, o Options, since time.Time) {
	for len(own) > 0 && own[len(own)-1].Rating.Pain == nil && len(own[len(own)-1].Pains()) == 0 {
		own = own[:len(own)-1]
	}
	if len(own) == 0 {
		return
	}
	last := own[len(own)-1]
	w, stop := &b.lang.Briefing, next.LimitsOf(o.Player.Limits).StopPain
	for _, said := range last.Pains() {
		if said.Level != nil && *said.Level == 0 || said.At.Before(since) {
			continue
		}
		paragraph := w.Pain(b.lang.Date(units.DateOf(last.Start)))
		if said.Where != "" {
			paragraph += ": " + said.Where
		}
		if said.Level != nil {
			paragraph += w.PainLevel(*said.Level)
		}
		if grave := said.Level != nil && *said.Level >= stop; grave || fresh(own, said) {
			b.Stop = true
			paragraph += ". " + w.PainStop
		} else {
			paragraph += ". " + w.PainAsk
		}
		b.say(paragraph + ".")
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

// Year is how far back the rules on jumps look at most.
const Year = 366 * 24 * time.Hour

// Jumped returns those of a player's sessions of the last year that had jumps,
// as the rules take them.
func Jumped(own []*journal.Run, now time.Time) []check.Jumped {
	var list []check.Jumped
	for _, j := range journal.JumpsOf(own, now) {
		if now.Sub(j.At) < Year {
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
			b.say(capital(f.Message) + ".")
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
	paragraph := b.lang.Briefing.Break(days, l.Return[0])
	if p.Contacts > 0 {
		paragraph += b.lang.Briefing.BreakContacts(p.Contacts*l.Return[0]/100, p.Contacts, jumps.AllCounted(p.Session.Blocks...))
	}
	b.say(paragraph + b.lang.Briefing.BreakAfter(l.Return[1], l.Return[2], l.Return[3]))
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
			b.say(b.lang.Briefing.MatchToday)
		case today + 1:
			b.say(b.lang.Briefing.MatchTomorrow)
		}
	}
}

// findings says what the check finds for this player and room.
func (b *Briefing) findings(all []check.Finding) {
	grave := slices.DeleteFunc(slices.Clone(all), func(f check.Finding) bool { return f.Severity == check.Note || f.Rule == check.Spacing })
	slices.SortStableFunc(grave, func(x, y check.Finding) int { return rank(x.Severity) - rank(y.Severity) })
	for i, f := range grave {
		if i == maxFindings {
			b.say(b.lang.Briefing.More(len(grave) - i))
			return
		}
		severity := b.lang.Briefing.Warning
		if f.Severity == check.Error {
			severity = b.lang.Briefing.Error
		}
		b.say(severity + ": " + f.Message + ".")
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
