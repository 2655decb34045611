package runs

import (
	"maps"
	"slices"
)

// source gives blocks in the order of their runs' names, then nil.
type source func() (*block, error)

// inOrder returns the blocks in memory as a source.
func inOrder(blocks map[string]*block) source {
	names := slices.Sorted(maps.Keys(blocks))
	return func() (*block, error) {
		if len(names) == 0 {
			return nil, nil
		}
		b := blocks[names[0]]
		names = names[1:]
		return b, nil
	}
}

// merge calls each with the blocks of all sources, one a run. Where sources
// share a run, the lines of an earlier source come first.
func merge(sources []source, each func(*block) error) error {
	heads := make([]*block, len(sources))
	for i, next := range sources {
		var err error
		if heads[i], err = next(); err != nil {
			return err
		}
	}
	for {
		least := -1
		for i, h := range heads {
			if h != nil && (least < 0 || h.run < heads[least].run) {
				least = i
			}
		}
		if least < 0 {
			return nil
		}
		whole, err := takeRun(sources, heads, heads[least].run)
		if err != nil {
			return err
		}
		if err := each(whole); err != nil {
			return err
		}
	}
}

// takeRun takes a run's block from every source whose head it is. One that
// stands alone is handed on as it is; joined ones are a block of their own, so
// that the sources can be read again.
func takeRun(sources []source, heads []*block, run string) (whole *block, err error) {
	joined := false
	for i, h := range heads {
		if h == nil || h.run != run {
			continue
		}
		switch {
		case whole == nil:
			whole = h
		case !joined:
			first := whole
			whole, joined = &block{run: run}, true
			whole.join(first)
			fallthrough
		default:
			whole.join(h)
		}
		if heads[i], err = sources[i](); err != nil {
			return nil, err
		}
	}
	return whole, nil
}
