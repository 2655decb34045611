package runs

import (
	"path/filepath"
	"slices"
	"strings"
)

// owners tells whose a run is.
type owners struct {
	files []File
	sets  map[nameIn]nameIn      // each leads to one that is the same player's, with an earlier file
	names []map[string]bool      // of each file: the keys of the names in it, an empty one if it has runs without
	joint map[int]map[string]int // of the first of joint files: the names in them, each with its first file
	shown map[string]string      // of each key: as it is written
	alike map[string][]who       // of each key: the players displayed under it
}

// nameIn is the runs of one name in a file; an empty key is those without one.
type nameIn struct {
	key  string
	file int
}

// who is one player: a name, and the first of the files that tell of them. Two
// of one name differ in the file.
type who struct {
	name string
	file int
}

// newOwners returns owners of files that have seen no run.
func newOwners(files []File) *owners {
	w := &owners{files: files, sets: map[nameIn]nameIn{}, names: make([]map[string]bool, len(files)),
		joint: map[int]map[string]int{}, shown: map[string]string{}, alike: map[string][]who{}}
	for i := range w.names {
		w.names[i] = map[string]bool{}
	}
	return w
}

// owners looks through the runs of all files.
func (p *Pile) owners() (*owners, error) {
	w := newOwners(p.Files)
	if err := merge(p.sources(true), func(b *block) error { w.see(b.player, b.files); return nil }); err != nil {
		return nil, err
	}
	w.settle(p.opts.Same)
	return w, nil
}

// see notes what files a run came in, and under what name.
func (w *owners) see(player string, files []int) {
	name := tidy(player)
	key := Key(name)
	if name != "" && (w.shown[key] == "" || name < w.shown[key]) {
		w.shown[key] = name
	}
	for _, f := range files {
		w.unite(nameIn{key, files[0]}, nameIn{key, f})
		w.names[f][key] = true
	}
}

// settle works out who is who when all runs were seen.
func (w *owners) settle(same []string) {
	w.join(same)
	for f, names := range w.names {
		for key := range names {
			w.meet(w.of(key, f))
		}
	}
}

// join unites what all runs together tell to be one player's: what is of one
// name in files that share an unnamed run, and in all files if the name is in
// same.
func (w *owners) join(same []string) {
	one := map[string]bool{}
	for _, name := range same {
		one[Key(name)] = true
	}
	first := map[string]int{}
	for f, names := range w.names {
		root := w.find(nameIn{"", f}).file
		for key := range names {
			if key == "" {
				continue
			}
			if w.joint[root] == nil {
				w.joint[root] = map[string]int{}
			}
			if g, ok := w.joint[root][key]; ok {
				w.unite(nameIn{key, g}, nameIn{key, f})
			} else {
				w.joint[root][key] = f
			}
			if g, ok := first[key]; ok && one[key] {
				w.unite(nameIn{key, g}, nameIn{key, f})
			} else if !ok {
				first[key] = f
			}
		}
	}
}

// find returns what stands for the player of x.
func (w *owners) find(x nameIn) nameIn {
	for {
		up, ok := w.sets[x]
		if !ok {
			return x
		}
		x = up
	}
}

// unite notes that two are one player's; the earlier file stands for both.
func (w *owners) unite(a, b nameIn) {
	a, b = w.find(a), w.find(b)
	switch {
	case a.file < b.file:
		w.sets[b] = a
	case b.file < a.file:
		w.sets[a] = b
	}
}

// of returns whose the runs of a name in a file are.
func (w *owners) of(key string, file int) who {
	if key != "" {
		return w.player(key, file)
	}
	file = w.find(nameIn{"", file}).file
	names := w.joint[file]
	if len(names) == 1 {
		for key, f := range names {
			return w.player(key, f)
		}
	}
	name := label(w.files[file].Path)
	if f, also := names[Key(name)]; also {
		return w.player(Key(name), f)
	}
	return who{name, file}
}

// player returns the player of that name in a file.
func (w *owners) player(key string, file int) who {
	return who{w.shown[key], w.find(nameIn{key, file}).file}
}

// meet notes a player.
func (w *owners) meet(p who) {
	if key := Key(p.name); !slices.Contains(w.alike[key], p) {
		w.alike[key] = append(w.alike[key], p)
	}
}

// display returns a player's name, with the file if another has the same.
func (w *owners) display(p who) string {
	alike := w.alike[Key(p.name)]
	if len(alike) < 2 {
		return p.name
	}
	var others []string
	for _, o := range alike {
		if o != p {
			others = append(others, w.files[o.file].Path)
		}
	}
	return p.name + " (" + tail(w.files[p.file].Path, others) + ")"
}

// tail returns the last parts of a path, as many as tell it from the others.
func tail(path string, others []string) string {
	parts := strings.Split(filepath.ToSlash(path), "/")
	for n := 1; n < len(parts); n++ {
		end := strings.Join(parts[len(parts)-n:], "/")
		if !slices.ContainsFunc(others, func(o string) bool { o = filepath.ToSlash(o); return o == end || strings.HasSuffix(o, "/"+end) }) {
			return end
		}
	}
	return path
}

// Key returns what two spellings of one player's name have in common: case and
// the width of the spaces do not count.
func Key(name string) string { return strings.ToLower(tidy(name)) }

func tidy(name string) string { return strings.Join(strings.Fields(name), " ") }

// label returns a player's name taken from a journal's: the file's without its
// ending, or the folder's if the file is called as every journal is.
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
