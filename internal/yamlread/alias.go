package yamlread

import "gopkg.in/yaml.v3"

// maxAliased is how many values aliases may stand for in one file. Sessions
// that share their exercises need some dozens; a file made to blow up needs
// billions.
const maxAliased = 10_000

// expansion measures what the aliases of a document stand for, without
// following any more than once.
type expansion struct {
	f     *File
	sizes map[*yaml.Node]int // values within each anchored node; 0 while it is being measured
	extra int                // values that aliases have stood for so far
	ok    bool
}

// boundAliases reports whether the aliases below root may be followed, and
// adds a problem if they may not.
func (f *File) boundAliases(root *yaml.Node) bool {
	e := expansion{f: f, sizes: map[*yaml.Node]int{}, ok: true}
	e.size(root)
	return e.ok
}

// size returns how many values n holds once aliases are followed. It stops at
// the first alias that cannot be.
func (e *expansion) size(n *yaml.Node) int {
	if !e.ok {
		return 0
	}
	if n.Kind == yaml.AliasNode {
		return e.alias(n)
	}
	if n.Anchor != "" {
		e.sizes[n] = 0
	}
	total := 1
	for _, c := range n.Content {
		total += e.size(c)
	}
	if n.Anchor != "" {
		e.sizes[n] = total
	}
	return total
}

// alias returns how many values the alias n stands for.
func (e *expansion) alias(n *yaml.Node) int {
	size := e.sizes[n.Alias]
	e.extra += size
	switch {
	case size == 0:
		e.refuse(n, "stands for a value that holds it")
	case e.extra > maxAliased:
		e.refuse(n, "makes the file expand to more than 10,000 repeated values")
	}
	return size
}

func (e *expansion) refuse(n *yaml.Node, why string) {
	e.ok = false
	e.f.add(place(n), "alias "+quote(n.Value)+" "+why, "write the values out")
}
