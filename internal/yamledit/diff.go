package yamledit

import (
	"slices"

	"gopkg.in/yaml.v3"
)

// place is where a value stands.
type place struct {
	inFlow bool // within brackets
	indent int  // of the mapping or the dash that the value belongs to
	item   bool // the value is an item of a list
}

// value edits the text where a value has changed.
func (e *editor) value(was, is *yaml.Node, in place) {
	if was.Kind == yaml.AliasNode {
		if anchor := e.now[was.Value]; anchor == nil || !equal(anchor, is) {
			e.replace(was, is, in)
		}
		return
	}
	if was.Anchor != "" {
		e.now[was.Anchor] = is
	}
	switch {
	case was.Kind != is.Kind || was.Kind == yaml.ScalarNode:
		if !equal(was, is) {
			e.replace(was, is, in)
		}
	case was.Kind == yaml.MappingNode:
		e.mapping(was, is, in.inFlow)
	default:
		e.list(was, is, in.inFlow)
	}
}

// replace puts a value in place of another.
func (e *editor) replace(was, is *yaml.Node, in place) {
	from, to := e.begin(was), e.end(was)
	if was.Kind == yaml.AliasNode {
		from = e.at(was)
	}
	if in.inFlow || is.Kind == yaml.ScalarNode || is.Style&yaml.FlowStyle != 0 || len(is.Content) == 0 {
		text := e.flow(yaml.SequenceNode, is)
		if lines := e.block(uncommented(is)); !in.inFlow && len(lines) == 1 {
			text = lines[0]
		}
		e.put(from, to, text)
		return
	}
	lines, indent := e.block(uncommented(is)), in.indent+2
	if in.item { // it begins beside the dash; a comment there stays
		e.put(from, to, lines[0])
		lines = lines[1:]
	} else {
		indent = in.indent + e.indent
		for from > 0 && e.src[from-1] == ' ' {
			from--
		}
		e.put(from, to, "")
	}
	e.put(e.lineEnd(to), e.lineEnd(to), e.joined(lines, indent))
}

// mapping edits the pairs of a mapping.
func (e *editor) mapping(was, is *yaml.Node, inFlow bool) {
	inFlow = inFlow || was.Style&yaml.FlowStyle != 0
	if len(was.Content) == 0 {
		if len(is.Content) > 0 {
			e.put(e.begin(was)+1, e.begin(was)+1, e.flow(yaml.MappingNode, is.Content...))
		}
		return
	}
	indent := was.Content[0].Column - 1
	for i := 0; i+1 < len(was.Content); i += 2 {
		key, value := was.Content[i], was.Content[i+1]
		j := pairOf(is, follow(key).Value)
		if j < 0 {
			e.drop(was, i, inFlow)
			continue
		}
		if key.Anchor != "" {
			e.now[key.Anchor] = key
		}
		e.value(value, is.Content[j+1], place{inFlow: inFlow, indent: indent})
	}
	after := 1 // the index in was of the value after which new pairs go
	for j := 0; j+1 < len(is.Content); j += 2 {
		if i := pairOf(was, is.Content[j].Value); i >= 0 {
			after = max(after, i+1)
			continue
		}
		pair := is.Content[j : j+2]
		if end := e.end(was.Content[after]); inFlow {
			e.put(end, end, ", "+e.flow(yaml.MappingNode, pair...))
		} else {
			end = e.lineEnd(end)
			e.put(end, end, e.joined(e.block(&yaml.Node{Kind: yaml.MappingNode, Content: pair}), indent))
		}
	}
}

// drop takes out the pair at index i of a mapping.
func (e *editor) drop(mapping *yaml.Node, i int, inFlow bool) {
	from, to := e.at(mapping.Content[i]), e.end(mapping.Content[i+1])
	switch last := i+2 == len(mapping.Content); {
	case inFlow && i > 0:
		e.put(e.end(mapping.Content[i-1]), to, "")
	case !inFlow && e.leads(from):
		e.put(e.lineStart(from), e.nextLine(to), "")
	case !last:
		e.put(from, e.at(mapping.Content[i+2]), "")
	default:
		e.err = errPlace
	}
}

// list edits the items of a list, which are as many as before, or some more in one
// place.
func (e *editor) list(was, is *yaml.Node, inFlow bool) {
	inFlow = inFlow || was.Style&yaml.FlowStyle != 0
	same := 0 // how many items at the head are equal
	if more := len(is.Content) - len(was.Content); more != 0 {
		for same < len(was.Content) && same < len(is.Content) && equal(was.Content[same], is.Content[same]) {
			same++
		}
		if more < 0 || !slices.EqualFunc(was.Content[same:], is.Content[same+more:], equal) {
			e.err = errPlace
			return
		}
		e.insert(was, same, is.Content[same:same+more], inFlow)
		is = &yaml.Node{Content: slices.Concat(is.Content[:same], is.Content[same+more:])}
	}
	for i, item := range was.Content {
		e.value(item, is.Content[i], place{inFlow, e.at(item) - e.lineStart(e.at(item)) - 2, true})
	}
}

// insert puts items into a list before the one at index i.
func (e *editor) insert(list *yaml.Node, i int, items []*yaml.Node, inFlow bool) {
	if inFlow {
		text := e.flow(yaml.SequenceNode, items...)
		switch {
		case i > 0:
			at := e.end(list.Content[i-1])
			e.put(at, at, ", "+text)
		case len(list.Content) > 0:
			at := e.at(list.Content[0])
			e.put(at, at, text+", ")
		default:
			at := e.begin(list) + 1
			e.put(at, at, text)
		}
		return
	}
	dash := e.dash(list.Content[0])
	lines := e.block(&yaml.Node{Kind: yaml.SequenceNode, Content: items})
	text := e.joined(lines, dash-e.lineStart(dash))
	if i > 0 {
		at := e.lineEnd(e.end(list.Content[i-1]))
		e.put(at, at, text)
		return
	}
	if !e.leads(dash) {
		e.err = errPlace
		return
	}
	at := e.lineBefore(dash)
	for e.isComment(at) { // it is about the item below it
		at = e.lineBefore(at)
	}
	e.put(at, at, text)
}

// dash returns where the dash of an item stands.
func (e *editor) dash(item *yaml.Node) int {
	i := e.at(item) - 1
	for i > 0 && isSpace(e.src[i]) {
		i--
	}
	if i < 0 || e.src[i] != '-' {
		e.err = errPlace
	}
	return max(i, 0)
}
