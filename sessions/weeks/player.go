package weeks

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"coldfloor/internal/yamledit"
	"coldfloor/sessions"
)

// ForPlayer returns the plan of a player who is away on more days. The error is a
// yamlread.Problems if that is no valid plan: a session may be moved on to such
// a day.
func (p *Plan) ForPlayer(away []Range) (*Plan, error) {
	if len(away) == 0 {
		return p, nil
	}
	text, err := yamledit.Change(p.Source, func(root *yaml.Node) {
		list := child(root, "away", yaml.SequenceNode)
		for _, r := range away {
			text := r.From.String()
			if r.To != r.From {
				text += ".." + r.To.String()
			}
			list.Content = append(list.Content, node(text, "!!str"))
		}
	})
	if err != nil {
		return nil, fmt.Errorf("change %s: %w", p.Name, err)
	}
	return Parse(p.Name, text, p.find)
}

// find finds the sessions that the plan has found already.
func (p *Plan) find(name string) (*sessions.Session, error) { return p.bases[name], nil }

// WrittenFor returns the session of a day as Written does, for a player who
// does some of its exercises in their easier variant. Names that the session
// does not have, and exercises without a variant, are left as they are.
func (p *Plan) WrittenFor(d Planned, easier []string) (*sessions.Session, error) {
	s, err := p.Written(d)
	if err != nil || len(easier) == 0 {
		return s, err
	}
	text, err := yamledit.Change(s.Source, func(root *yaml.Node) {
		for _, b := range find(root, "blocks").Content {
			for _, x := range find(b, "exercises").Content {
				if name := find(x, "name"); slices.ContainsFunc(easier, func(e string) bool { return strings.EqualFold(e, name.Value) }) {
					makeEasier(x)
				}
			}
		}
	})
	if err != nil {
		return nil, err
	}
	return sessions.Parse(s.Name, text)
}

// makeEasier puts an exercise's easier variant in its place: what the variant
// leaves out stays as in the exercise.
func makeEasier(exercise *yaml.Node) {
	variant := find(exercise, "easier")
	if variant == nil {
		return
	}
	drop(exercise, "easier")
	if variant.Kind == yaml.ScalarNode {
		find(exercise, "name").Value = variant.Value
		return
	}
	for i := 0; i+1 < len(variant.Content); i += 2 {
		key, value := variant.Content[i], variant.Content[i+1]
		switch key.Value {
		case "rep":
			drop(exercise, "tempo")
		case "tempo":
			drop(exercise, "rep")
		}
		drop(exercise, key.Value)
		exercise.Content = append(exercise.Content, key, value)
	}
}

// drop takes a key out of a mapping.
func drop(mapping *yaml.Node, key string) {
	for i := 0; i+1 < len(mapping.Content); i += 2 {
		if mapping.Content[i].Value == key {
			mapping.Content = slices.Delete(mapping.Content, i, i+2)
			return
		}
	}
}
