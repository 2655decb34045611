package runs

import (
	"path/filepath"
	"strings"
)

// owners tells whose a run is.
type owners struct {
	files []File
	root  []int             // of each file: another whose player is the same, itself at last
	names []map[string]bool // of each root: the keys of the names in its files
	shown map[string]string // of each key: as it is written
}

// owners looks through the runs of all files.
func (p *Pile) owners() (*owners, error) {
	w := &owners{files: p.Files, root: make([]int, len(p.Files)), names: make([]map[string]bool, len(p.Files)), shown: map[string]string{}}
	for i := range w.root {
		w.root[i], w.names[i] = i, map[string]bool{}
	}
	err := merge(p.sources(), func(b *block) error {
		name := tidy(b.player)
		if name != "" {
			if k := Key(name); w.shown[k] == "" || name < w.shown[k] {
				w.shown[k] = name
			}
		}
		for _, f := range b.files {
			if name == "" {
				w.unite(b.files[0], f)
			} else {
				w.names[f][Key(name)] = true
			}
		}
		return nil
	})
	for i := range w.root {
		for k := range w.names[i] {
			w.names[w.find(i)][k] = true
		}
	}
	return w, err
}

// Key returns what two spellings of one player's name have in common: case and
// the width of the spaces do not count.
func Key(name string) string { return strings.ToLower(tidy(name)) }

func tidy(name string) string { return strings.Join(strings.Fields(name), " ") }

// find returns the file that stands for all of its player's.
func (w *owners) find(i int) int {
	for w.root[i] != i {
		w.root[i] = w.root[w.root[i]]
		i = w.root[i]
	}
	return i
}

// unite notes that two files are one player's; the first given stands for both.
func (w *owners) unite(a, b int) {
	a, b = w.find(a), w.find(b)
	w.root[max(a, b)] = min(a, b)
}

// of returns the name of the player whose a run is.
func (w *owners) of(b *block) string {
	if name := tidy(b.player); name != "" {
		return w.shown[Key(name)]
	}
	file := w.find(b.files[0])
	if len(w.names[file]) == 1 {
		for k := range w.names[file] {
			return w.shown[k]
		}
	}
	return label(w.files[file].Path)
}

// label returns a player's name taken from a journal's: the file's without its
// ending, or the folder's where the file is called as every journal is.
func label(path string) string {
	base := filepath.Base(path)
	name := strings.TrimSuffix(base, filepath.Ext(base))
	if strings.EqualFold(name, "journal") {
		if abs, err := filepath.Abs(path); err == nil {
			if dir := filepath.Base(filepath.Dir(abs)); len(dir) > 1 && dir != "coldfloor" {
				return dir
			}
		}
	}
	if name == "" {
		return base
	}
	return name
}
