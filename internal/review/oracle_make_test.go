package review

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"time"

	"coldfloor/internal/journal"
)

// maker writes a journal of one player at random: sets done again, rests cut
// and overrun, steps back, slaps, counts that nobody knows, sessions on paper,
// corrections, midnights, sessions gone on with days later, and two zones.
type maker struct {
	*rand.Rand
	now    time.Time
	player string
	series string // of the runs' names
	lines  []journal.Line

	run   string
	n     int
	at    time.Time
	clock float64
}

var zones = []*time.Location{time.FixedZone("", 3600), time.FixedZone("", -8*3600)}

func (m *maker) chance(part float64) bool { return m.Float64() < part }

// add writes a line so many seconds after the one before.
func (m *maker) add(after float64, l journal.Line) {
	m.n++
	m.at = m.at.Add(time.Duration(after * float64(time.Second)))
	m.clock += math.Round(after*.9*1000) / 1000
	l.V, l.Run, l.N, l.At, l.Clock = journal.Version, m.run, m.n, m.at, m.clock
	m.lines = append(m.lines, l)
}

// session writes one run.
func (m *maker) session(i int) {
	m.run, m.n, m.clock = fmt.Sprintf("RUN%s%03d", m.series, i), 0, 0
	m.at = m.now.Add(-time.Duration(m.IntN(45*24*60)) * time.Minute).In(zones[m.IntN(2)]).Truncate(time.Second)
	if m.chance(.2) { // so that midnight passes in it
		m.at = time.Date(m.at.Year(), m.at.Month(), m.at.Day(), 23, 58, 0, 0, m.at.Location())
	}
	s := &journal.Started{Title: "Hall", Source: "hall.yaml", Player: m.player}
	for range 1 + m.IntN(2) {
		rounds := 1 + m.IntN(3)
		b := journal.PlannedBlock{Title: "Up", Rounds: rounds, Sets: rounds, Contacts: journal.CountOf(rounds * 10 * m.IntN(2))}
		if m.chance(.15) {
			b.Contacts = journal.Count{}
		}
		s.Blocks = append(s.Blocks, b)
	}
	if m.chance(.05) {
		s.Speed = 20
	}
	paper := m.chance(.15)
	if paper {
		s.Source = journal.Paper
	}
	m.add(0, journal.Line{Event: journal.EventStarted, Started: s})
	outcome := "complete"
	if paper {
		m.at = m.at.Add(20 * time.Minute)
	} else {
		outcome = m.walk(s)
	}
	if m.chance(.9) || paper {
		m.add(5, journal.Line{Event: journal.EventFinish, Finish: &journal.Finish{Outcome: outcome, ElapsedS: math.Round(m.clock) + 60}})
	}
	m.amend(s)
}

// walk writes the sets and rests of a run and returns how it ended.
func (m *maker) walk(s *journal.Started) string {
	for b, block := range s.Blocks {
		for r := 1; r <= block.Rounds; r++ {
			p := journal.Place{Block: b + 1, Round: r, Exercise: 1}
			m.set(p, block)
			for m.chance(.8) {
				end := []string{"clock", "skip", "repeat", "back"}[m.IntN(4)]
				m.rest(p, end)
				if end == "clock" || end == "skip" {
					break
				}
				m.set(p, block)
			}
			if m.chance(.04) {
				m.at = m.at.Add(time.Duration(1+m.IntN(60)) * time.Hour)
				m.add(0, journal.Line{Event: journal.EventResume, Resume: &journal.Resume{Restart: true}})
			}
			if m.chance(.04) {
				m.rest(p, "stop")
				return "stopped"
			}
		}
	}
	return "complete"
}

func (m *maker) set(p journal.Place, b journal.PlannedBlock) {
	s := &journal.Set{Place: p, Name: "Hops", Outcome: journal.Done, End: "clock", PlannedS: 10, TakenS: float64(5 + m.IntN(10)), Reps: 10, Planned: 10, Contacts: journal.CountOf(0)}
	switch m.IntN(8) {
	case 0:
		s.Outcome, s.End, s.Reps, s.TakenS = journal.Skipped, "skip", 0, 0
	case 1:
		s.Outcome, s.End, s.Reps, s.TakenS = journal.Partial, "finish", m.IntN(5), .5
	}
	if b.Contacts.N > 0 {
		s.Contacts = journal.CountOf(s.Reps)
	}
	if !b.Contacts.Known {
		s.Contacts = journal.Count{}
	}
	m.add(s.TakenS+float64(m.IntN(3)), journal.Line{Event: journal.EventSet, Set: s})
}

func (m *maker) rest(p journal.Place, end string) {
	r := &journal.Rest{Place: p, PrescribedS: 60, TakenS: 60, End: end}
	if end != "clock" || m.chance(.3) {
		r.TakenS = float64(m.IntN(1200)) / 10
	}
	m.add(r.TakenS, journal.Line{Event: journal.EventRest, Rest: r})
}

// amend writes what was said of a run later.
func (m *maker) amend(s *journal.Started) {
	yes, no, rpe, again := true, false, float64(m.IntN(11)), float64(m.IntN(11))
	level, where, note := m.IntN(11), "left knee", "slippery"
	rate := func(r journal.Rating) { m.add(600, journal.Line{Event: journal.EventRating, Rating: &r}) }
	if m.chance(.8) {
		rate(journal.Rating{RPE: &rpe, Pain: &no})
	}
	if m.chance(.1) {
		rate(journal.Rating{RPE: &again})
	}
	if m.chance(.3) {
		var rounds []int
		for _, b := range s.Blocks {
			rounds = append(rounds, m.IntN(b.Rounds+1))
		}
		rate(journal.Rating{Rounds: rounds})
	}
	if m.chance(.2) {
		rate(journal.Rating{Pain: &yes, Where: &where, PainLevel: &level})
		if m.chance(.3) {
			rate(journal.Rating{NoPain: true})
		}
	}
	if m.chance(.1) {
		rate(journal.Rating{Note: &note})
	}
	m.correct()
}

func (m *maker) correct() {
	if m.chance(.1) {
		at := m.at.Add(-time.Duration(m.IntN(72)) * time.Hour)
		m.add(60, journal.Line{Event: journal.EventCorrect, Correct: &journal.Correct{At: &at}})
	}
	if m.chance(.1) {
		length := float64(600 + m.IntN(3000))
		m.add(60, journal.Line{Event: journal.EventCorrect, Correct: &journal.Correct{LengthS: &length}})
	}
	if m.chance(.1) {
		m.add(60, journal.Line{Event: journal.EventWithdraw})
		if m.chance(.5) {
			m.add(60, journal.Line{Event: journal.EventRestore})
		}
	}
}

// journalOf returns a journal's bytes, some of its lines twice and in any order.
func journalOf(seed uint64, now time.Time) []byte {
	m := &maker{Rand: rand.New(rand.NewPCG(seed, 3)), now: now, player: "Ana"}
	for i := range 5 + m.IntN(25) {
		m.session(i)
	}
	var all [][]byte
	for _, l := range m.lines {
		text, err := json.Marshal(l)
		if err != nil {
			panic(err)
		}
		all = append(all, text)
		if m.chance(.1) {
			all = append(all, text)
		}
	}
	m.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	return append(bytes.Join(all, []byte("\n")), '\n')
}
