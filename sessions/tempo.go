package sessions

import (
	"errors"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/units"
)

// FastRising is how long a rising as fast as possible is taken to last, the
// rep's turning round included. Common practice, no source.
const FastRising = time.Second

// FastRisings returns the names of the exercises and variants whose tempo asks
// for a rising as fast as possible, each once, in the order of the file.
func (s *Session) FastRisings() []string {
	var names []string
	add := func(name string, t Tempo) {
		if t.Fast && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for i := range s.Blocks {
		for j := range s.Blocks[i].Exercises {
			e := &s.Blocks[i].Exercises[j]
			add(e.Name, e.Tempo)
			add(e.Easier.Name, e.Easier.Tempo)
			add(e.Harder.Name, e.Harder.Tempo)
		}
	}
	return names
}

const tempoHint = "write the seconds of lowering, pause and rising, such as 3-1-1, and of a last pause if there is one, such as 3-1-1-2; X for rising is as fast as possible, and counts as 1 s"

// ParseTempo reads a tempo: three or four numbers of seconds with - between
// them, whose sum is above 0. An X in the place of the rising means as fast as
// possible, and counts as FastRising.
func ParseTempo(text string) (Tempo, error) {
	fields := strings.Split(text, "-")
	if len(fields) != 3 && len(fields) != 4 {
		return Tempo{}, errors.New("is not a tempo")
	}
	var phases [4]time.Duration
	fast := strings.EqualFold(fields[2], "x")
	if fast {
		fields[2] = "1"
	}
	for i, f := range fields {
		d, err := units.ParseDuration(f)
		if strings.Trim(f, "0123456789.") != "" || err != nil {
			return Tempo{}, errors.New("is not a tempo")
		}
		if d > MaxLength {
			return Tempo{}, errors.New("is longer than a session may be")
		}
		phases[i] = d
	}
	t := Tempo{Lowering: phases[0], Pause: phases[1], Rising: phases[2], Top: phases[3], Fast: fast}
	if t.Rep() == 0 {
		return Tempo{}, errors.New("is no time at all")
	}
	return t, nil
}

// repsHint says how to write what somebody typed for a number of reps.
func repsHint(text string) string {
	number, rest, _ := strings.Cut(strings.TrimSpace(text), " ")
	switch rest = strings.ToLower(rest); {
	case strings.EqualFold(number, "amrap"), strings.EqualFold(number, "max"):
		return "for as many as there is time for, write time: 30s in its place"
	case strings.Contains(rest, "side"), strings.Contains(rest, "each"), strings.Contains(rest, "leg"), strings.Contains(rest, "arm"):
		return "write reps_per_side: " + number
	case strings.ContainsAny(number, "-–") && strings.Trim(number, "0123456789-–") == "":
		return "write one number, and what else may be done under how"
	}
	return ""
}
