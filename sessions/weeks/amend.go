package weeks

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
)

// Amendment is what a plan is to have besides what its file says.
type Amendment struct {
	Hold    []int     // weeks that add nothing
	Lighter []Lighter // a week that is lighter already keeps the lesser share
	Moves   []Move    // a day that is moved already gets its new day
}

// Amended returns the text of the plan's file with an amendment in it: same
// title and first day, every comment where the coach put it. The error is a
// yamlread.Problems if the result would be no valid plan.
func (p *Plan) Amended(a Amendment) ([]byte, error) {
	doc, err := yamlread.Document(p.Source)
	if err != nil {
		return nil, fmt.Errorf("amend %s: %w", p.Name, err)
	}
	root := doc.Content[0]
	unalias(root)
	for _, w := range a.Hold {
		if !p.IsHold(w) {
			list := child(root, "hold", yaml.SequenceNode)
			list.Content = append(list.Content, node(strconv.Itoa(w), "!!int"))
		}
	}
	for _, l := range a.Lighter {
		p.amendLighter(child(root, "lighter", yaml.SequenceNode), l)
	}
	for _, m := range a.Moves {
		amendMove(child(root, "move", yaml.MappingNode), m)
	}
	text, err := encode(doc)
	if err != nil {
		return nil, err
	}
	_, err = Parse(p.Name, text, p.find)
	return text, err
}

// amendLighter adds a lighter week, or lowers the share of one that is there.
func (p *Plan) amendLighter(list *yaml.Node, l Lighter) {
	keep := l.Keep.String()
	i := slices.IndexFunc(p.Lighter, func(x Lighter) bool { return x.Week == l.Week })
	if i < 0 {
		list.Content = append(list.Content, &yaml.Node{Kind: yaml.MappingNode, Style: yaml.FlowStyle, Content: []*yaml.Node{
			node("week", "!!str"), node(strconv.Itoa(l.Week), "!!int"), node("keep", "!!str"), node(keep, "!!str"),
		}})
		return
	}
	if l.Keep < p.Lighter[i].Keep {
		setScalar(list.Content[i], "keep", keep, "!!str")
	}
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

// child returns the list or mapping of a key, which it adds at the end if it is
// not there.
func child(root *yaml.Node, key string, kind yaml.Kind) *yaml.Node {
	n := find(root, key)
	if n == nil {
		n = &yaml.Node{Kind: kind}
		if kind == yaml.SequenceNode && key == "hold" {
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
