package rating

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"coldfloor/internal/journal"
	"coldfloor/internal/safetext"
	"coldfloor/internal/text"
)

// narrow is how wide the scale is set, in cells: terminals are wider.
const narrow = 38

// Ask asks for a rating of run in a language, a line a question. An empty answer
// skips its question, the end of the input all that are left; after a wrong one
// the question is asked again.
func Ask(in io.Reader, out io.Writer, run *journal.Run, l *text.Language) (journal.Rating, error) {
	var r journal.Rating
	fmt.Fprintln(out, l.Plain.LeaveAsIs)
	a := asker{in: bufio.NewScanner(in), out: out, words: &l.Plain}
	if blocks := run.Blocks(); len(blocks) > 0 {
		a.ask(l.Plain.AskRounds(roundsOf(run, l), mostRounds(blocks)), l.Plain.RoundsMust(mostRounds(blocks)), func(s string) (err error) {
			r.Rounds, err = ParseRounds(s, blocks)
			return err
		})
	}
	fmt.Fprintln(out, ScaleLines(l, narrow))
	a.ask(l.Plain.AskEffort, l.Plain.EffortMust, func(s string) error {
		v, err := ParseRPE(s)
		if err == nil {
			r.RPE = &v
		}
		return err
	})
	a.ask(l.Plain.AskPain, "", func(s string) error { return SetPain(&r, s) })
	a.ask(l.Plain.AskNote, "", func(s string) error { r.Note = &s; return nil })
	return r, a.in.Err()
}

// asker asks questions of somebody who types.
type asker struct {
	in    *bufio.Scanner
	out   io.Writer
	words *text.Plain
	ended bool
}

// ask asks until take takes the answer, or there is none. Must is what an answer
// must be.
func (a *asker) ask(question, must string, take func(string) error) {
	for !a.ended {
		fmt.Fprint(a.out, question, ": ")
		if a.ended = !a.in.Scan(); a.ended {
			fmt.Fprintln(a.out)
			return
		}
		answer := strings.TrimSpace(a.in.Text())
		if answer == "" {
			return
		}
		if take(answer) == nil {
			return
		}
		fmt.Fprintln(a.out, a.words.Wrong(safetext.Clean(answer), must))
	}
}

// mostRounds returns how many rounds each block has: "3, 3, 2".
func mostRounds(blocks []journal.PlannedBlock) string {
	parts := make([]string, len(blocks))
	for i, b := range blocks {
		parts[i] = fmt.Sprint(b.Rounds)
	}
	return strings.Join(parts, ", ")
}

// roundsOf says how many rounds of each block are held to be done.
func roundsOf(run *journal.Run, l *text.Language) string {
	done := run.RoundsDone()
	parts := make([]string, len(run.Blocks()))
	for i, b := range run.Blocks() {
		parts[i] = safetext.Clean(l.Name(b.Title)) + " " + l.Screen.Of(b.Rounds)
		if i < len(done) {
			parts[i] = fmt.Sprintf("%s %d %s", safetext.Clean(l.Name(b.Title)), done[i], l.Screen.Of(b.Rounds))
		}
	}
	return strings.Join(parts, ", ")
}
