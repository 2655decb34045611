package compose

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"coldfloor/internal/nearest"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// ErrNoAnswer is returned by Ask when the input ends before the last answer.
var ErrNoAnswer = errors.New("not all of the questions were answered")

// ParseLevel reads a level; the error reads on from the text.
func ParseLevel(text string) (sessions.Level, error) {
	return oneOf(text, sessions.Beginner, sessions.Intermediate, sessions.Advanced)
}

// ParseMinutes reads how long a session may be: a bare number is minutes,
// anything else a duration. The error reads on from the text.
func ParseMinutes(text string) (time.Duration, error) {
	d, err := units.ParseDuration(strings.TrimSpace(text))
	if err != nil {
		return 0, errors.New("is not a number of minutes")
	}
	if strings.Trim(text, "0123456789 ") == "" && d <= MaxLength {
		d *= time.Minute / time.Second
	}
	if d < MinLength || d > MaxLength {
		return 0, fmt.Errorf("is not between %s and %s", units.Sentence(MinLength), units.Sentence(MaxLength))
	}
	return d, nil
}

// ParseRoom reads a room that is large enough; the error reads on from the
// text.
func ParseRoom(text string) (settings.Room, error) {
	r, err := settings.ParseRoom(strings.TrimSpace(text))
	if err == nil && min(r.Along, r.Across) < MinSide {
		err = fmt.Errorf("is too small, it takes %s x %s of floor", MinSide.Text(), MinSide.Text())
	}
	return r, err
}

// ParseTrain reads qualities with commas between them; all is every one. The
// error reads on from the text.
func ParseTrain(text string) ([]Quality, error) {
	if strings.TrimSpace(text) == "all" {
		return Qualities(), nil
	}
	var list []Quality
	for word := range strings.SplitSeq(text, ",") {
		q, err := oneOf(word, Qualities()...)
		if err != nil {
			return nil, oneOfSeveral(text, word, err)
		}
		list = append(list, q)
	}
	return list, nil
}

// oneOf reads one of the words; the error names the nearest.
func oneOf[T ~string](text string, allowed ...T) (T, error) {
	text = strings.ToLower(strings.TrimSpace(text))
	words := make([]string, len(allowed))
	for i, w := range allowed {
		if text == string(w) {
			return w, nil
		}
		words[i] = string(w)
	}
	if near := nearest.Word(text, words); near != "" && text != "" {
		return "", fmt.Errorf("is not one of the answers; did you mean %s?", near)
	}
	last := len(words) - 1
	return "", errors.New("is not one of " + strings.Join(words[:last], ", ") + " and " + words[last])
}

// oneOfSeveral returns the error of one word of a text as one of the text.
func oneOfSeveral(text, word string, err error) error {
	if err == nil || word == text {
		return err
	}
	return fmt.Errorf("has %q in it, which %w", strings.TrimSpace(word), err)
}

// question is one line that is asked.
type question struct {
	text string
	def  string // what an empty answer means; shown in brackets
	take func(answer string) error
}

// Ask puts the questions on w and reads the answers from r, a line each; an
// empty line takes what a holds already. A wrong answer is asked for again.
func Ask(r io.Reader, w io.Writer, a Answers) (Answers, error) {
	return a, putAll(r, w, questions(&a))
}

// putAll asks one question after the other.
func putAll(r io.Reader, w io.Writer, list []question) error {
	lines := bufio.NewScanner(r)
	for _, q := range list {
		if err := q.put(lines, w); err != nil {
			return err
		}
	}
	return nil
}

// AskWeeks asks for what a plan of weeks is drafted by, as Ask does.
func AskWeeks(r io.Reader, w io.Writer, a WeeksAnswers) (WeeksAnswers, error) {
	names := make([]string, len(a.Days))
	for i, d := range a.Days {
		names[i] = dayNames[d]
	}
	return a, putAll(r, w, []question{
		{"Level of the player (beginner, intermediate, advanced)", string(a.Player.Level), func(s string) (err error) {
			a.Player.Level, err = ParseLevel(s)
			return err
		}},
		{"First day", a.Starts.String(), func(s string) (err error) {
			a.Starts, err = units.ParseDate(s)
			return err
		}},
		{"Weeks (1 to 52)", fmt.Sprint(a.Count), func(s string) (err error) {
			a.Count, err = ParseCount(s)
			return err
		}},
		{"Days with a session", strings.Join(names, ","), func(s string) (err error) {
			a.Days, err = ParseDays(s)
			return err
		}},
		{"Matches, as dates with commas between", "none", func(s string) (err error) {
			a.Matches, err = ParseMatches(s)
			return err
		}},
		{"Room, along x across x ceiling", a.Player.Room.String(), func(s string) (err error) {
			a.Player.Room, err = settings.ParseRoom(s)
			return err
		}},
	})
}

// questions returns what is asked, the answers going into a.
func questions(a *Answers) []question {
	train := "all"
	if n := len(a.Train); n > 0 && n < len(Qualities()) {
		words := make([]string, n)
		for i, q := range a.Train {
			words[i] = string(q)
		}
		train = strings.Join(words, ",")
	}
	return []question{
		{"Level of the player (beginner, intermediate, advanced)", string(a.Level), func(s string) (err error) {
			a.Level, err = ParseLevel(s)
			return err
		}},
		{"Minutes available (10 to 60)", fmt.Sprint(int(a.Length / time.Minute)), func(s string) (err error) {
			a.Length, err = ParseMinutes(s)
			return err
		}},
		{"Room, along x across x ceiling", a.Room.String(), func(s string) (err error) {
			a.Room, err = ParseRoom(s)
			return err
		}},
		{"What to train (vertical, horizontal, lateral, strength, or all)", train, func(s string) (err error) {
			a.Train, err = ParseTrain(s)
			return err
		}},
	}
}

// put asks until the answer is right.
func (q question) put(lines *bufio.Scanner, w io.Writer) error {
	for {
		if _, err := fmt.Fprintf(w, "%s [%s]: ", q.text, q.def); err != nil {
			return err
		}
		if !lines.Scan() {
			if err := lines.Err(); err != nil {
				return err
			}
			return ErrNoAnswer
		}
		answer := strings.TrimSpace(lines.Text())
		if answer == "" {
			answer = q.def
		}
		err := q.take(answer)
		if err == nil {
			return nil
		}
		if _, err := fmt.Fprintf(w, "%q %v\n", answer, err); err != nil {
			return err
		}
	}
}
