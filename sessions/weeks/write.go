package weeks

import (
	"fmt"
	"strconv"
	"time"

	"gopkg.in/yaml.v3"

	"coldfloor/internal/units"
	"coldfloor/internal/yamledit"
	"coldfloor/sessions"
)

// Written returns the session of a day as Session does, read from a text of
// its own, which is its Source: the session's file with the figures of the
// week in it, and every comment where the coach put it.
func (p *Plan) Written(d Planned) (*sessions.Session, error) {
	base, s := p.bases[d.Slot.Session], p.Session(d)
	text, err := rewrite(base, s)
	if err != nil {
		return nil, fmt.Errorf("write %s: %w", s.Title, err)
	}
	return sessions.Parse(base.Name, text)
}

// rewrite writes the file of a session with what was changed in a copy.
func rewrite(base, changed *sessions.Session) ([]byte, error) {
	return yamledit.Change(base.Source, func(root *yaml.Node) {
		setScalar(root, "title", changed.Title, "!!str")
		blocks := find(root, "blocks")
		for i := range changed.Blocks {
			rewriteBlock(blocks.Content[i], &base.Blocks[i], &changed.Blocks[i])
		}
	})
}

// rewriteBlock writes what was changed in a block.
func rewriteBlock(n *yaml.Node, base, changed *sessions.Block) {
	if base.Rounds != changed.Rounds {
		setScalar(n, "rounds", strconv.Itoa(changed.Rounds), "!!int")
	}
	if base.Rest != changed.Rest {
		setScalar(n, "rest", units.FormatDuration(changed.Rest), "!!str")
	}
	exercises := find(n, "exercises")
	for i := range changed.Exercises {
		was, now := dose(&base.Exercises[i]), dose(&changed.Exercises[i])
		switch {
		case was.get() == now.get():
		case now.what == Reps:
			setScalar(exercises.Content[i], now.key, strconv.FormatInt(now.get(), 10), "!!int")
		default:
			setScalar(exercises.Content[i], now.key, units.FormatDuration(time.Duration(now.get())), "!!str")
		}
	}
}

// find returns the value of a key of a mapping, or nil.
func find(mapping *yaml.Node, key string) *yaml.Node {
	for i := 0; i+1 < len(mapping.Content); i += 2 {
		if mapping.Content[i].Value == key {
			return mapping.Content[i+1]
		}
	}
	return nil
}

// setScalar changes the value of a key; one that is not there is added behind
// the mapping's first.
func setScalar(mapping *yaml.Node, key, value, tag string) {
	n := find(mapping, key)
	if n == nil {
		n = &yaml.Node{Kind: yaml.ScalarNode}
		name := &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: key}
		mapping.Content = append(mapping.Content[:2:2], append([]*yaml.Node{name, n}, mapping.Content[2:]...)...)
	}
	n.Value, n.Tag = value, tag
	switch {
	case tag == "!!int":
		n.Style = 0
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		n.Style = yaml.DoubleQuotedStyle
	}
}
