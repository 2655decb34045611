// Package voice makes the spoken cues: what is said and when, and the clips
// that say it, rendered ahead of time by the system's own speech.
package voice

import (
	"fmt"
	"strings"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// Language is everything that is said, in one language. Names and cues come
// from the session and are said as the coach wrote them.
type Language struct {
	Code string // ISO 639-1

	next      string // %s: the exercise with its dose and side
	left      string // the left side
	right     string
	alternate string // one rep a side in turn
	rest      string // %s: how long
	lastRound string
	second    string // one second, as a length of work
	seconds   string // %d
	minute    string // one minute
	minutes   string // %d
	done      string
	counted   [3]string // the last reps of a set: the one before the one before the last, and so on
	headings  map[sessions.Heading]string
}

// languages is the table of all that is said.
var languages = []Language{
	{
		Code: "en", next: "Next: %s.", left: "left side", right: "right side", alternate: "each side, alternating",
		rest: "Rest, %s.", lastRound: "Last round.", second: "1 second", seconds: "%d seconds",
		minute: "1 minute", minutes: "%d minutes", done: "Done.",
		counted: [3]string{"three", "two", "last"},
	},
	{
		Code: "de", next: "Es folgt: %s.", left: "linke Seite", right: "rechte Seite", alternate: "Seiten im Wechsel",
		rest: "Pause, %s.", lastRound: "Letzte Runde.", second: "1 Sekunde", seconds: "%d Sekunden",
		minute: "1 Minute", minutes: "%d Minuten", done: "Fertig.",
		counted: [3]string{"drei", "zwei", "letzte"},
		headings: map[sessions.Heading]string{
			sessions.Front: "vorn", sessions.FrontRight: "vorn rechts", sessions.Right: "rechts", sessions.BackRight: "hinten rechts",
			sessions.Back: "hinten", sessions.BackLeft: "hinten links", sessions.Left: "links", sessions.FrontLeft: "vorn links",
		},
	},
}

// Languages returns the codes of the languages that are spoken.
func Languages() []string {
	codes := make([]string, len(languages))
	for i, l := range languages {
		codes[i] = l.Code
	}
	return codes
}

// Find returns the language with the given code, in any case; the error names
// those that there are.
func Find(code string) (Language, error) {
	for _, l := range languages {
		if strings.EqualFold(l.Code, code) {
			return l, nil
		}
	}
	return Language{}, fmt.Errorf("no spoken cues in %q; there are %s", code, strings.Join(Languages(), " and "))
}

// Next says what comes, from a work step.
func (l Language) Next(s plan.Step, exercise string) string {
	parts := []string{exercise}
	if s.Reps > 0 {
		parts = append(parts, fmt.Sprint(s.Reps))
	} else {
		parts = append(parts, l.length(s.Length))
	}
	if side := l.side(s.Side); side != "" {
		parts = append(parts, side)
	}
	return fmt.Sprintf(l.next, strings.Join(parts, ", "))
}

// Side says a side to change to.
func (l Language) Side(s plan.Side) string {
	side := l.side(s)
	if side == "" {
		return ""
	}
	return strings.ToUpper(side[:1]) + side[1:] + "."
}

// Rest says how long a rest is. Below two minutes the bare number of seconds
// will do.
func (l Language) Rest(d time.Duration) string {
	if d < 2*time.Minute && d != time.Minute {
		return fmt.Sprintf(l.rest, fmt.Sprint(int(d.Round(time.Second)/time.Second)))
	}
	return fmt.Sprintf(l.rest, l.length(d))
}

// LastRound says that the round to come is the block's last.
func (l Language) LastRound() string { return l.lastRound }

// Done says that the session is over.
func (l Language) Done() string { return l.done }

// Number says a number, for a countdown.
func (l Language) Number(n int) string { return fmt.Sprint(n) }

// Counted says the last reps of a set as they begin: left is how many there
// are with the one that begins. It is empty from the fourth last on.
func (l Language) Counted(left int) string {
	if left < 1 || left > len(l.counted) {
		return ""
	}
	return l.counted[len(l.counted)-left]
}

// Direction says a direction that is called: one that points somewhere in this
// language, any other as the coach wrote it.
func (l Language) Direction(direction string) string {
	if said := l.headings[sessions.HeadingOf(direction)]; said != "" {
		return said
	}
	return direction
}

func (l Language) side(s plan.Side) string {
	switch s {
	case plan.Left:
		return l.left
	case plan.Right:
		return l.right
	case plan.Alternate:
		return l.alternate
	}
	return ""
}

// length says a length of time to the second.
func (l Language) length(d time.Duration) string {
	d = max(d.Round(time.Second), time.Second)
	m, s := int(d/time.Minute), int(d%time.Minute/time.Second)
	var parts []string
	switch {
	case m == 1:
		parts = append(parts, l.minute)
	case m > 1:
		parts = append(parts, fmt.Sprintf(l.minutes, m))
	}
	switch {
	case s == 1:
		parts = append(parts, l.second)
	case s > 1:
		parts = append(parts, fmt.Sprintf(l.seconds, s))
	}
	return strings.Join(parts, " ")
}
