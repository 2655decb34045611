package logbook

import (
	"bytes"
	"io"
	"strings"
	"time"
	"unicode"

	"coldfloor/internal/journal"
)

// Copied is a part of a journal, as it is sent to a coach.
type Copied struct {
	Name string // for its file: the player's, and the first and the last date
	Text []byte // lines as they stand in the journal
	Runs int
}

// Copy takes out of a journal every line of the runs of which one is dated
// since then or later: a session that was rated since is among them. A zero
// since takes all. The run before these comes along uncounted, so that two
// copies that follow each other share it, and are known as one player's. Lines
// that cannot be read are left out.
func Copy(j io.ReadSeeker, since time.Time) (Copied, error) {
	wanted, shared, last := map[string]bool{}, "", time.Time{}
	for e, err := range journal.Read(j) {
		switch {
		case err != nil:
		case !e.At.Before(since):
			wanted[e.Run] = true
		case e.At.After(last):
			shared, last = e.Run, e.At
		}
	}
	if _, err := j.Seek(0, io.SeekStart); err != nil {
		return Copied{}, err
	}
	var text bytes.Buffer
	var f journal.Fold
	for e, err := range journal.Read(j) {
		if err != nil || !wanted[e.Run] && e.Run != shared {
			continue
		}
		text.Write(e.Text)
		text.WriteByte('\n')
		if wanted[e.Run] {
			f.Add(e)
		}
	}
	runs, _ := f.Runs()
	return Copied{Name: nameOf(runs), Text: text.Bytes(), Runs: len(runs)}, nil
}

// nameOf returns a file's name for the journal of runs, the earliest first.
func nameOf(runs []*journal.Run) string {
	player, last := "", time.Time{}
	for _, r := range runs {
		if r.Started != nil && r.Started.Player != "" {
			player = r.Started.Player
		}
		if end := r.End(); end.After(last) {
			last = end
		}
	}
	name := strings.Trim(strings.Map(func(c rune) rune {
		if unicode.IsLetter(c) || unicode.IsDigit(c) {
			return unicode.ToLower(c)
		}
		return '-'
	}, player), "-")
	if name == "" {
		name = "sessions"
	}
	if len(runs) == 0 {
		return name + ".jsonl"
	}
	first, to := runs[0].Start.Format(time.DateOnly), last.Format(time.DateOnly)
	if first == to {
		return name + "-" + first + ".jsonl"
	}
	return name + "-" + first + "-to-" + to + ".jsonl"
}
