package sessions

import (
	"errors"
	"fmt"
	"time"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
)

// Bounds of what a file may hold. Texts are counted in characters, lists in
// items. They are far above what a coach writes, and keep a screen, a page and
// the sums of reps and contacts within what they can hold.
const (
	MaxLabel    = 200               // a title, a name, a cue, a quality
	MaxText     = 2000              // how, for, easier, harder, load
	MaxWords    = 50                // cues of one exercise, qualities of one block
	MaxReps     = 10_000            // of one set
	MaxContacts = 1000              // of one rep
	MaxTravel   = 100 * units.Metre // in one rep
)

// The keys of each mapping of a file.
var (
	sessionKeys = []string{"coldfloor", "title", "for", "level", "note", "lead_in", "blocks"}
	blockKeys   = []string{"title", "part", "note", "trains", "rounds", "rest", "rest_after", "change", "exercises"}
	workKeys    = []string{"reps", "reps_per_side", "time", "time_per_side"}

	exerciseKeys = append([]string{"name"}, append(workKeys,
		"rep", "tempo", "contacts", "cues", "how", "rest", "sides", "switch", "finish",
		"easier", "harder", "load", "floor", "travel", "overhead", "measure", "way", "tries", "calls", "call_every")...)
)

// Parse reads a session file, which the user knows as name. The error, if
// any, is a yamlread.Problems with everything that is wrong with the file.
//
// Where the format leaves room: texts are single lines, and line breaks in
// them count as spaces; rep and tempo may stand together if they agree;
// sides and switch belong to work given a side; rest_after may stand on the
// last block, although nothing follows it; contacts may stand on timed work,
// although no reps are counted there, and so no contacts.
func Parse(name string, src []byte) (*Session, error) {
	src = yamlread.UTF8(src)
	file, m := yamlread.Parse(name, src, sessionKeys...)
	if m == nil {
		return nil, file.Err()
	}
	if v := m.Int("coldfloor", 1, 999, Version); v != Version {
		// Another version may mean anything by the other keys.
		m.Problem("coldfloor", fmt.Sprintf("format version %d is not known", v),
			fmt.Sprintf("this program reads version %d; a newer one may read this file", Version))
		return nil, file.Err()
	}
	s := readSession(m)
	s.Name, s.Source = name, src
	if err := file.Err(); err != nil {
		return nil, err
	}
	return s, nil
}

func readSession(m *yamlread.Mapping) *Session {
	m.Need("coldfloor", "title", "blocks")
	s := &Session{
		Version: Version,
		Title:   m.Text("title", MaxLabel),
		For:     m.Text("for", MaxText),
		Level:   Level(m.Enum("level", "", string(Beginner), string(Intermediate), string(Advanced))),
		Note:    m.Text("note", MaxText),
		LeadIn:  m.Duration("lead_in", DefaultLeadIn),
		Marks:   m.Marks(),
	}
	list := m.Mappings("blocks", MaxSteps, "a block", blockKeys...)
	for _, b := range list {
		s.Blocks = append(s.Blocks, readBlock(b))
	}
	checkSize(s, list)
	return s
}

func readBlock(m *yamlread.Mapping) Block {
	m.Need("title", "exercises")
	b := Block{
		Title:  m.Text("title", MaxLabel),
		Part:   Part(m.Enum("part", string(Main), string(WarmUp), string(Main), string(CoolDown))),
		Note:   m.Text("note", MaxText),
		Trains: m.Texts("trains", MaxWords, MaxLabel),
		Rounds: m.Int("rounds", 1, MaxSteps, 1),
		Rest:   m.Duration("rest", 0),
		Change: m.Duration("change", DefaultChange),
		Marks:  m.Marks(),
	}
	b.RestAfter = m.Duration("rest_after", b.Rest)
	list := m.Mappings("exercises", MaxSteps, "an exercise", exerciseKeys...)
	for _, e := range list {
		b.Exercises = append(b.Exercises, readExercise(e))
	}
	needs := b.Rounds > 1 && !m.Has("rest")
	switch n := len(list); {
	case n > 0 && list[n-1].Has("rest") && needs:
		list[n-1].Problem("rest", "the last exercise of a round has no rest of its own", "write it at the block, as the rest after each round")
	case n > 0 && list[n-1].Has("rest"):
		list[n-1].Problem("rest", "the last exercise of a round has no rest of its own", "take it out; the block's rest follows the round")
	case needs:
		m.Problem("rounds", fmt.Sprintf("a block of %d rounds needs a rest", b.Rounds), "add rest: with the time after each round, or rest: 0s for none")
	}
	return b
}

func readExercise(m *yamlread.Mapping) Exercise {
	m.Need("name")
	e := Exercise{
		Name:        m.Text("name", MaxLabel),
		Reps:        m.Int("reps", 1, MaxReps, 0, repsHint(m.Plain("reps"))),
		RepsPerSide: m.Int("reps_per_side", 1, MaxReps, 0),
		Time:        m.PositiveDuration("time", 0),
		TimePerSide: m.PositiveDuration("time_per_side", 0),
		Contacts:    m.Int("contacts", 0, MaxContacts, 0),
		Cues:        m.Texts("cues", MaxWords, MaxLabel),
		How:         m.Text("how", MaxText),
		Sides:       Sides(m.Enum("sides", string(LeftFirst), string(LeftFirst), string(RightFirst), string(SwapEachRound), string(AlternateReps))),
		Switch:      m.Duration("switch", DefaultSwitch),
		Finish:      Finish(m.Enum("finish", string(ByPace), string(ByPace), string(ByHand))),
		Load:        m.Text("load", MaxText),
		Marks:       m.Marks(),
	}
	if m.Has("rest") {
		rest := m.Duration("rest", 0)
		e.Rest = &rest
	}
	readWork(m)
	e.Rep, e.Tempo = readPace(m, DefaultRep)
	e.Easier, e.Harder = readVariant(m, "easier", &e), readVariant(m, "harder", &e)
	readMeasure(m, &e)
	readCalls(m, &e)
	readRoom(m, &e)
	return e
}

// readRoom reads the floor and the space overhead that an exercise needs.
func readRoom(m *yamlread.Mapping, e *Exercise) {
	m.Scalar("floor", units.SizeHint, func(text string) error {
		size, err := units.ParseSize(text, 2)
		if err == nil {
			e.Floor = Floor{Along: size[0], Across: size[1]}
		}
		return err
	})
	e.Travel = m.Length("travel", units.Millimetre, MaxTravel, 0)
	e.Overhead.Kind = OverheadNone
	m.Scalar("overhead", "write none, reach, jump or a length above the standing height, such as 30cm", func(text string) (err error) {
		e.Overhead, err = ParseOverhead(text)
		return err
	})
}

// readWork holds the exercise to exactly one kind of work, and to sides only
// if there are any.
func readWork(m *yamlread.Mapping) {
	const kinds = "reps, reps_per_side, time or time_per_side"
	first := ""
	for _, k := range workKeys {
		switch {
		case !m.Has(k):
		case first == "":
			first = k
		default:
			m.Problem(k, fmt.Sprintf("%q and %q are both given; an exercise has one kind of work", first, k), "keep one of "+kinds)
		}
	}
	if first == "" {
		m.Problem("", "this exercise has no work", "add one of "+kinds)
		return
	}
	if m.Has("reps_per_side") || m.Has("time_per_side") {
		return
	}
	for _, k := range []string{"sides", "switch"} {
		if m.Has(k) {
			m.Problem(k, fmt.Sprintf("%q needs work given a side", k), "write reps_per_side or time_per_side, or take it out")
		}
	}
}

// readPace reads the length of a rep, from rep or from tempo; def is what
// counts if neither is given.
func readPace(m *yamlread.Mapping, def time.Duration) (rep time.Duration, tempo Tempo) {
	rep = m.PositiveDuration("rep", def)
	m.Scalar("tempo", tempoHint, func(text string) (err error) {
		tempo, err = ParseTempo(text)
		return err
	})
	length := tempo.Rep()
	if length == 0 {
		return rep, tempo
	}
	if m.Has("rep") && rep != length {
		m.Problem("tempo", fmt.Sprintf("a rep of this tempo lasts %s, but rep says %s", units.FormatDuration(length), units.FormatDuration(rep)), "take rep out")
	}
	return length, tempo
}

// ParseOverhead reads the space above the player: none, reach, jump, or a
// length above the standing height that is not 0.
func ParseOverhead(text string) (Overhead, error) {
	switch k := OverheadKind(text); k {
	case OverheadNone, OverheadReach, OverheadJump:
		return Overhead{Kind: k}, nil
	}
	l, err := units.ParseLength(text)
	if err == nil && l == 0 {
		err = errors.New("is no length at all")
	}
	if err != nil {
		return Overhead{Kind: OverheadNone}, err
	}
	return Overhead{Kind: OverheadAbove, Above: l}, nil
}

// checkSize notes a plan that is too long, at the block that is the most of
// it, before anybody builds it.
func checkSize(s *Session, blocks []*yamlread.Mapping) {
	steps, length := Size(s)
	if steps <= MaxSteps && length <= MaxLength {
		return
	}
	most, mostSteps, mostLength := 0, int64(0), time.Duration(0)
	for i := range s.Blocks {
		n, d := Size(&Session{Blocks: s.Blocks[i : i+1]})
		if steps > MaxSteps && n > mostSteps || steps <= MaxSteps && d > mostLength {
			most, mostSteps, mostLength = i, n, d
		}
	}
	if steps > MaxSteps {
		blocks[most].Problem("rounds", fmt.Sprintf("the session has %d steps, at most %d; this block is the most of it", steps, MaxSteps), "use fewer rounds or exercises")
	}
	if length > MaxLength {
		blocks[most].Problem("rounds", fmt.Sprintf("the session lasts longer than %s; this block is the most of it", units.FormatDuration(MaxLength)), "check its rests and times; a bare number is seconds")
	}
}
