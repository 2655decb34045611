package weeks

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"coldfloor/internal/units"
	"coldfloor/internal/yamledit"
)

// Amendment is what a plan is to have besides what its file says.
type Amendment struct {
	Hold    []int     // weeks that add nothing
	Lighter []Lighter // a week that is lighter already keeps the lesser share
	Moves   []Move    // a day that is moved already gets its new day
}

// Amended returns the text of the plan's file with an amendment in it: same
// title and first day, laid out as the coach laid it out, every comment where it
// was put, and each week that is added before the later ones. The error is a
// yamlread.Problems if the result would be no valid plan.
func (p *Plan) Amended(a Amendment) ([]byte, error) {
	text := p.Source
	var err error
	change := func(f func(root *yaml.Node)) {
		if err == nil {
			text, err = yamledit.Change(text, f)
		}
	}
	for _, w := range a.Hold {
		if !p.IsHold(w) {
			change(func(root *yaml.Node) { amendHold(child(root, "hold", yaml.SequenceNode), w) })
		}
	}
	for _, l := range a.Lighter {
		if keep, ok := p.IsLighter(l.Week); !ok || l.Keep < keep {
			change(func(root *yaml.Node) { amendLighter(child(root, "lighter", yaml.SequenceNode), l) })
		}
	}
	for _, m := range a.Moves {
		change(func(root *yaml.Node) { amendMove(child(root, "move", yaml.MappingNode), m) })
	}
	if err != nil {
		return nil, fmt.Errorf("amend %s: %w", p.Name, err)
	}
	_, err = Parse(p.Name, text, p.find)
	return text, err
}

// amendHold adds a week that adds nothing.
func amendHold(list *yaml.Node, week int) {
	at := slices.IndexFunc(list.Content, func(n *yaml.Node) bool { return weekIn(n) > week })
	list.Content = inserted(list.Content, at, node(strconv.Itoa(week), "!!int"))
}

// amendLighter adds a lighter week, or sets the share of one that is there.
func amendLighter(list *yaml.Node, l Lighter) {
	keep := l.Keep.String()
	for _, n := range list.Content { // in whatever order the coach wrote them
		if weekIn(find(n, "week")) == l.Week {
			setScalar(n, "keep", keep, "!!str")
			return
		}
	}
	at := slices.IndexFunc(list.Content, func(n *yaml.Node) bool { return weekIn(find(n, "week")) > l.Week })
	list.Content = inserted(list.Content, at, &yaml.Node{Kind: yaml.MappingNode, Style: yaml.FlowStyle, Content: []*yaml.Node{
		node("week", "!!str"), node(strconv.Itoa(l.Week), "!!int"), node("keep", "!!str"), node(keep, "!!str"),
	}})
}

// amendMove moves what the pattern has on a day.
func amendMove(mapping *yaml.Node, m Move) {
	for i := 0; i+1 < len(mapping.Content); i += 2 {
		if d, err := units.ParseDate(mapping.Content[i].Value); err == nil && d == m.From {
			mapping.Content[i+1].Value = m.To.String()
			return
		}
	}
	mapping.Content = append(mapping.Content, node(m.From.String(), "!!timestamp"), node(m.To.String(), "!!timestamp"))
}

// weekIn returns the week that a node gives, the first of several.
func weekIn(n *yaml.Node) int {
	first, _, _ := strings.Cut(n.Value, "..")
	w, _ := strconv.Atoi(first) // the plan was read: it is a number
	return w
}

// inserted returns a list with an item put in at an index, at the end if that
// is -1.
func inserted(list []*yaml.Node, at int, item *yaml.Node) []*yaml.Node {
	if at < 0 {
		at = len(list)
	}
	return slices.Insert(list, at, item)
}

// child returns the list or mapping of a key, which it adds at the end if it is
// not there.
func child(root *yaml.Node, key string, kind yaml.Kind) *yaml.Node {
	n := find(root, key)
	if n == nil {
		n = &yaml.Node{Kind: kind}
		if key == "hold" || key == "away" { // short ones, which stand in one line
			n.Style = yaml.FlowStyle
		}
		root.Content = append(root.Content, node(key, "!!str"), n)
	}
	return n
}

func node(value, tag string) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Tag: tag, Value: value}
}

// String writes the percentage as ParsePercent reads it: 60%, 12.5%.
func (p Percent) String() string {
	text := fmt.Sprintf("%d.%03d", p/1000, p%1000)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".") + "%"
}

// Whole returns n percent.
func Whole(n int) Percent { return Percent(n) * 1000 }
