// Package players reads the players' file: a list of players, each with any of
// the settings' own keys, the exercises they do in an easier variant, and the
// days on which they are away.
package players

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"coldfloor/internal/fault"
	"coldfloor/internal/nearest"
	"coldfloor/internal/safetext"
	"coldfloor/internal/settings"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions/weeks"
)

// Bounds of a players' file.
const (
	maxPlayers  = 500
	maxEasier   = 100
	maxExercise = 80
)

// Player is one entry of the file.
type Player struct {
	settings.Player
	Easier []string      // exercises done in their easier variant, as the sessions name them
	Away   []weeks.Range // days without training, besides the plan's
}

// Read reads the players' file at path. The error is a yamlread.Problems with
// everything that is wrong if the file could be read.
func Read(path string) ([]Player, error) {
	src, err := yamlread.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fault.New("name the players' file, such as squad.yaml", "there is no file %s", safetext.Quote(path))
	}
	if err != nil {
		return nil, err
	}
	return Parse(path, src)
}

// Parse reads a players' file, which the user knows as name.
func Parse(name string, src []byte) ([]Player, error) {
	f, list := yamlread.ParseList(name, src, maxPlayers, "a player", append(settings.Keys(), "easier", "away")...)
	var all []Player
	for _, m := range list {
		all = append(all, read(m, name, all))
	}
	if err := f.Err(); err != nil {
		return nil, err
	}
	return all, nil
}

// read reads one entry; earlier are those before it.
func read(m *yamlread.Mapping, name string, earlier []Player) Player {
	m.Need("name")
	p := Player{Player: settings.From(m, name)}
	p.Easier = m.Texts("easier", maxEasier, maxExercise)
	if v, ok := m.Value("away"); ok {
		p.Away = weeks.ReadAway(v)
	}
	same := func(o Player) bool { return Same(o.Name, p.Name) }
	if i := slices.IndexFunc(earlier, same); i >= 0 && p.Name != "" {
		m.Problem("name", fmt.Sprintf("%q is a player already, in line %d", p.Name, earlier[i].Marks.At("name").Line),
			"keep one of them, or tell them apart by a second name")
	}
	return p
}

// Same reports whether two names are spellings of one: case and the width of
// the spaces do not count.
func Same(a, b string) bool {
	return strings.EqualFold(strings.Join(strings.Fields(a), " "), strings.Join(strings.Fields(b), " "))
}

// CheckEasier returns what is wrong with the exercises that players do in their
// easier variant, as yamlread.Problems: names that no session of the plan has,
// and exercises without such a variant.
func CheckEasier(all []Player, plan *weeks.Plan) error {
	var names []string
	easier := map[string]bool{} // by name in small letters: it has a variant
	for _, slot := range plan.Slots {
		for _, b := range plan.Base(slot.Session).Blocks {
			for _, x := range b.Exercises {
				names = append(names, x.Name)
				key := strings.ToLower(x.Name)
				easier[key] = easier[key] || x.Easier.Given()
			}
		}
	}
	var problems yamlread.Problems
	for _, p := range all {
		for _, name := range p.Easier {
			has, known := easier[strings.ToLower(name)]
			problem := yamlread.Problem{File: p.File, Pos: p.Marks.At("easier")}
			switch {
			case !known:
				problem.Message = fmt.Sprintf("no session of the plan has an exercise %q", name)
				if near := nearest.Word(name, names); near != "" {
					problem.Hint = "did you mean " + near + "?"
				}
			case !has:
				problem.Message = fmt.Sprintf("%q has no easier variant", name)
				problem.Hint = "give it one in its session: easier: NAME"
			default:
				continue
			}
			problems = append(problems, problem)
		}
	}
	if len(problems) == 0 {
		return nil
	}
	return problems
}

// Find returns the player of that name, and false if there is none.
func Find(all []Player, name string) (Player, bool) {
	i := slices.IndexFunc(all, func(p Player) bool { return Same(p.Name, name) })
	if i < 0 {
		return Player{}, false
	}
	return all[i], true
}
