package review

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"coldfloor/internal/journal"
)

// club is a folder of journals that changes at random: they grow, are copied,
// part, are edited and damaged, and so is what is kept beside them.
type club struct {
	*rand.Rand
	t    *testing.T
	dir  string
	now  time.Time
	next int // series of runs
}

// newClub makes a folder of a few players' journals.
func newClub(t *testing.T, seed uint64) *club {
	c := &club{Rand: rand.New(rand.NewPCG(seed, 5)), t: t, dir: t.TempDir(), now: time.Date(2026, 3, 26, 20, 0, 0, 0, zones[0])}
	for i := range 1 + c.IntN(3) {
		c.write(fmt.Sprintf("p%d.jsonl", i), c.sessions(c.player(), 8+c.IntN(12)))
	}
	return c
}

func (c *club) chance(part float64) bool { return c.Float64() < part }

func (c *club) player() string { return []string{"Ana", "Bea", "ana ", ""}[c.IntN(4)] }

// sessions returns the lines of new sessions, now and then not in order.
func (c *club) sessions(player string, n int) []byte {
	c.next++
	m := &maker{Rand: c.Rand, now: c.now, player: player, series: fmt.Sprintf("%03d", c.next)}
	for i := range n {
		m.session(i)
	}
	return c.text(m.lines, c.chance(.1))
}

// text encodes lines; some are sealed.
func (c *club) text(lines []journal.Line, shuffled bool) []byte {
	var all [][]byte
	for i := range lines {
		text, err := json.Marshal(lines[i])
		if err == nil && c.chance(.5) {
			text, err = journal.Encode(&lines[i])
			text = bytes.TrimSpace(text)
		}
		if err != nil {
			c.t.Fatal(err)
		}
		all = append(all, text)
	}
	if shuffled {
		c.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	}
	return append(bytes.Join(all, []byte("\n")), '\n')
}

func (c *club) write(name string, text []byte) {
	if err := os.WriteFile(filepath.Join(c.dir, name), text, 0o600); err != nil {
		c.t.Fatal(err)
	}
}

// one returns a file of those that fit a pattern, and its text; empty: there is
// none.
func (c *club) one(pattern string) (name string, text []byte) {
	all, err := filepath.Glob(filepath.Join(c.dir, pattern))
	if err != nil {
		c.t.Fatal(err)
	}
	if len(all) == 0 {
		return "", nil
	}
	path := all[c.IntN(len(all))]
	if text, err = os.ReadFile(path); err != nil {
		c.t.Fatal(err)
	}
	return filepath.Base(path), text
}

// part returns so many lines from the beginning of a journal.
func (c *club) part(text []byte) []byte {
	lines := bytes.SplitAfter(text, []byte("\n"))
	return bytes.Join(lines[:c.IntN(len(lines))], nil)
}

// amendment returns a line about a run of a journal.
func (c *club) amendment(text []byte) []byte {
	var l journal.Line
	lines := bytes.Split(text, []byte("\n"))
	if json.Unmarshal(lines[c.IntN(len(lines))], &l) != nil {
		return nil
	}
	rpe := float64(c.IntN(11))
	more := journal.Line{V: journal.Version, Run: l.Run, N: l.N + 1 + c.IntN(30), At: l.At.Add(time.Duration(c.IntN(100)) * time.Hour), Event: journal.EventRating, Rating: &journal.Rating{RPE: &rpe}}
	if c.chance(.2) {
		more.Event, more.Rating = journal.EventWithdraw, nil
	}
	return c.text([]journal.Line{more}, false)
}

// changes are what may happen between two reviews.
var changes = []struct {
	name string
	do   func(*club)
}{
	{"nothing", func(*club) {}},
	{"a week more", func(c *club) {
		name, text := c.one("*.jsonl")
		c.write(name, append(text, c.sessions(c.player(), 3)...))
	}},
	{"a word about an earlier session", func(c *club) {
		name, text := c.one("*.jsonl")
		c.write(name, append(text, c.amendment(text)...))
	}},
	{"a copy", func(c *club) {
		name, text := c.one("*.jsonl")
		if c.chance(.5) {
			text = c.part(text)
		}
		c.write([]string{"z-", "a-"}[c.IntN(2)]+name, text)
	}},
	{"copies that part", func(c *club) {
		name, text := c.one("*.jsonl")
		c.write("b-"+name, append(slices.Clone(text), c.amendment(text)...))
		c.write(name, append(text, c.amendment(text)...))
	}},
	{"a small file", func(c *club) { c.write(fmt.Sprintf("w%d.jsonl", c.next), c.sessions(c.player(), 1+c.IntN(4))) }},
	{"an edit that keeps the length", func(c *club) {
		name, text := c.one("*.jsonl")
		for range 50 {
			if i := c.IntN(max(1, len(text))); i < len(text) && text[i] >= '1' && text[i] <= '8' {
				text[i]++
				break
			}
		}
		c.write(name, text)
	}},
	{"a line taken out", func(c *club) {
		name, text := c.one("*.jsonl")
		lines := bytes.SplitAfter(text, []byte("\n"))
		i := c.IntN(len(lines))
		c.write(name, bytes.Join(slices.Delete(lines, i, i+1), nil))
	}},
	{"half a line, and then the rest", func(c *club) {
		name, text := c.one("*.jsonl")
		more := c.sessions(c.player(), 1)
		at := c.IntN(len(more))
		if c.chance(.5) {
			at = len(more) - 1 // only its end is wanting
		}
		c.write(name, append(slices.Clone(text), more[:at]...))
		c.hold("half a line")
		c.write(name, append(text, more...))
	}},
	{"a journal gone", func(c *club) {
		if all, _ := filepath.Glob(filepath.Join(c.dir, "*.jsonl")); len(all) > 1 {
			name, _ := c.one("*.jsonl")
			_ = os.Remove(filepath.Join(c.dir, name))
		}
	}},
	{"what is kept gone", func(c *club) {
		if name, _ := c.one(".*.review"); name != "" {
			_ = os.Remove(filepath.Join(c.dir, name))
		}
	}},
	{"what is kept cut", func(c *club) {
		if name, text := c.one(".*.review"); name != "" {
			c.write(name, text[:c.IntN(len(text)+1)])
		}
	}},
	{"what is kept damaged", func(c *club) {
		if name, text := c.one(".*.review"); len(text) > 0 {
			text[c.IntN(len(text))] ^= 1 << c.IntN(8)
			c.write(name, text)
		}
	}},
	{"what is kept of another", func(c *club) {
		a, _ := c.one(".*.review")
		if _, text := c.one(".*.review"); a != "" {
			c.write(a, text)
		}
	}},
}
