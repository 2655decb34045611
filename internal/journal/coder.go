package journal

import (
	"slices"

	"coldfloor/internal/compact"
)

// Slim returns the run without its sets, rests, results and amendments, and with
// their figures alone.
func (r *Run) Slim() *Run {
	slim := *r
	l := &lean{ended: len(r.Sets), worked: r.anyWorked(), end: r.End(),
		own: &figures{rounds: r.RoundsCounted(), sets: r.SetsDone(), reps: r.Reps(), contacts: r.Contacts(), days: r.Days()}}
	l.jumpedAt, l.jumped = r.Jumped()
	slim.lean = l
	slim.Sets, slim.Rests, slim.Measures, slim.Amendments = nil, nil, nil, nil
	return &slim
}

// RunCoder codes lean runs, and what goes with them, in few bytes. What many of
// them have in common stands in tables, which are to be coded after the runs
// when they are written, and before them when they are read. The zero RunCoder
// writes.
type RunCoder struct {
	ID string // of the run that is read, which is not coded

	keeper
	words compact.Words
	same  map[string]*Started // each once, by how it is coded
	own   []figures           // room for those of runs that are read
}

// Tables codes what the runs have in common.
func (c *RunCoder) Tables() {
	compact.List(&c.Coder, &c.words.List, c.Text)
	compact.List(&c.Coder, &c.starts, func(s **Started) {
		if c.Reading {
			*s = &Started{}
		}
		c.started(*s)
	})
}

// Going returns a coder that writes more runs for the tables of c, which were
// read.
func (c *RunCoder) Going() *RunCoder {
	more := &RunCoder{words: compact.Words{List: slices.Clone(c.words.List)}, same: map[string]*Started{}}
	more.starts, more.number = slices.Clone(c.starts), map[*Started]int{}
	for i, s := range more.starts {
		more.number[s] = i + 1
		more.same[codeOf(s)] = s
	}
	return more
}

// Words returns the table of texts.
func (c *RunCoder) Words() *compact.Words { return &c.words }

// Word codes a text that many runs have in common.
func (c *RunCoder) Word(p *string) { c.Coder.Word(&c.words, p) }

// Run codes a lean run, except for its name and its session's seed.
func (c *RunCoder) Run(p **Run) {
	if c.Reading {
		c.readRun(p)
		return
	}
	r := **p
	r.ID, r.Started = "", c.common(r.Started)
	lean := *r.lean
	r.lean = &lean
	one := &r
	c.run(&one)
	c.weeks(*p)
}

// readRun decodes a run with its figures.
func (c *RunCoder) readRun(p **Run) {
	if len(c.space.runs) == 0 {
		c.In(NewRoom(1))
	}
	c.run(p)
	r := *p
	r.ID = c.ID
	c.weeks(r)
	if c.Err != nil {
		return
	}
	rest := c.Buf
	r.lean.own = &piece(&c.own, 1, 1)[0]
	c.Buf = r.lean.coded
	c.figures(r.lean.own, r)
	c.Buf, r.lean.coded = rest, nil
}

// Room is the memory of some runs that are read together.
type Room struct {
	space space
	own   []figures
}

// NewRoom returns room for so many runs.
func NewRoom(n int) *Room {
	return &Room{space{runs: make([]Run, n), leans: make([]lean, n), numbers: make([]int, 8*n), rpes: make([]float64, n),
		said: make([]Statement, n), days: make([]Day, 2*n), chunk: 1}, make([]figures, n)}
}

// In lets c read the next runs into r. Those that were read into it before are
// lost.
func (c *RunCoder) In(r *Room) {
	s := &r.space
	clear(s.runs)
	clear(s.leans)
	clear(s.numbers)
	clear(s.rpes)
	clear(s.said)
	clear(s.days)
	clear(r.own)
	c.space, c.own = *s, r.own
}

// common returns what a run's start has in common with others.
func (c *RunCoder) common(s *Started) *Started {
	if s == nil {
		return nil
	}
	plain := *s
	plain.Text, plain.Seed, plain.Weeks = "", 0, nil
	code := codeOf(&plain)
	if one := c.same[code]; one != nil {
		return one
	}
	if c.same == nil {
		c.same, c.number = map[string]*Started{}, map[*Started]int{}
	}
	c.same[code] = &plain
	c.learn(&plain)
	return &plain
}

func codeOf(s *Started) string {
	k := keeper{}
	k.started(s)
	return string(k.Buf)
}

// weeks codes what a run's start has alone.
func (c *RunCoder) weeks(r *Run) {
	if r.Started == nil {
		return
	}
	w := r.Started.Weeks
	compact.Optional(&c.Coder, &w, func(w *Weeks) {
		c.Word(&w.Title)
		c.Word(&w.Starts)
		c.Int(&w.Week)
		c.Word(&w.Date)
		c.Int(&w.Place)
		c.Word(&w.Session)
	})
	if c.Reading && w != nil {
		s := *r.Started
		s.Weeks = w
		r.Started = &s
	}
}
