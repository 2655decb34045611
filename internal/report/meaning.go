package report

import (
	"fmt"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/review"
	"coldfloor/internal/text"
	"coldfloor/internal/trainingload"
)

// Meaning says what each figure is, where it comes from, and what it cannot
// say.
func Meaning(s *review.Squad) []Fact {
	t := s.Tolerance
	earliest, full := interval(s)
	return []Fact{
		{"rounds done", []string{"As the player said after the session, or else the rounds whose every set was done. A set that was done again counts once here, and its reps and foot contacts each time. Reps are not seen: a set that the clock ended counts as done. A session without reported rounds is in neither number."}},
		{"rest kept", []string{fmt.Sprintf("The next set began within %.0f s or %.0f %% of the rest prescribed, whichever is more: our own choice. Pauses, and a count-in after it, are part of the rest taken; a rest that no work followed is not counted, and one that any work followed is, whatever ended it. It says when work began again, not how well anybody had recovered.",
			t.Time.Seconds(), 100*t.Part)}},
		{"foot contacts", []string{"Of the reps done, as the session says how many a rep has; one foot, or both together, is 1 (NSCA, Essentials of Strength Training and Conditioning, chapter on plyometrics, second-hand). If a session has jumps that nobody counted, the figure is a minimum. They are not measured, and do not tell how hard a landing was."}},
		{"load", []string{"Effort, as session-RPE from 0 to 10, times minutes (Foster et al., J Strength Cond Res 2001;15:109–115). It is as good as the player's word. A session without an effort is not a day of rest: the load is then a minimum. A session worked at on two days is split by the time worked on each. It compares a player with themselves over weeks, not with another."}},
		{"monotony, strain", []string{"Monotony is the mean daily load of a week divided by its SD, rest days being 0; strain is the week's load times monotony (Foster, Med Sci Sports Exerc 1998;30:1164–1168). The SD is that of a sample, n−1: with n both would be 1.08 times as high. A week whose days are all alike has no monotony, and neither has one that is not over or has a session not rated. What is high differs from player to player: there is no limit here."}},
		{"weighted load", []string{fmt.Sprintf("Exponentially weighted average of the daily load over %d and %d days, λ = 2/(N+1) (Williams et al., Br J Sports Med 2017;51:209–210). The ratio of the two is left out: its terms share their data, and nothing shows that it causes injury (Lolli et al., Br J Sports Med 2019;53:921; Impellizzeri et al., Sports Med 2020).", trainingload.ShortSpan, trainingload.LongSpan)}},
		{"after jumps", []string{fmt.Sprintf("%.0f to %.0f h between two sessions with jumps%s. It knows only the journal: no match, no other training. The hours say when the interval is up, not that anybody is ready.", earliest.Hours(), full.Hours(), intervalSource(earliest, full))}},
		{"pain", []string{fmt.Sprintf("Each report as it was given, never averaged or combined; one that the player took back is left out. New: that place was not reported in the %d days before. ", journal.NewPainAfter) + text.English.Care.NotAdvice}},
	}
}

// interval returns the interval between sessions with jumps that was reviewed
// with.
func interval(s *review.Squad) (earliest, full time.Duration) {
	for _, p := range s.Players {
		if j := p.Jumps; j != nil {
			return j.Earliest.Sub(j.At), j.Full.Sub(j.At)
		}
	}
	return trainingload.EarliestAfter, trainingload.FullAfter
}

func intervalSource(earliest, full time.Duration) string {
	if earliest == trainingload.EarliestAfter && full == trainingload.FullAfter {
		return " (NSCA Essentials, from memory)"
	}
	return ", as the settings say"
}
