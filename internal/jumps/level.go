package jumps

import (
	"slices"
	"strings"

	"coldfloor/sessions"
)

// has reports whether a name has one of the phrases, word by word; a phrase's
// last word stands for its plural and its -ing too.
func has(list []string, phrases ...string) bool {
	text := " " + strings.Join(list, " ") + " "
	for _, p := range phrases {
		for _, end := range []string{" ", "s ", "es ", "ing "} {
			if strings.Contains(text, " "+p+end) {
				return true
			}
		}
		if joined := strings.ReplaceAll(p, " ", ""); joined != p && strings.Contains(text, " "+joined) {
			return true // "dropjump"
		}
	}
	return false
}

// part reports whether some word of a name contains one of the parts.
func part(list []string, parts ...string) bool {
	return slices.ContainsFunc(list, func(w string) bool {
		return slices.ContainsFunc(parts, func(p string) bool { return strings.Contains(w, p) })
	})
}

// Depth reports whether a name is that of a depth jump, from a height.
func Depth(name string) bool {
	list := words(name)
	return has(list, "depth jump", "drop jump", "depth hop", "drop hop") || part(list, "tiefspr", "niederspr")
}

// OneLeg reports whether a name says that one leg does the work.
func OneLeg(name string) bool {
	list := words(name)
	return has(list, "single leg", "one leg", "1 leg", "single legged", "one legged", "1 legged", "single foot", "one foot",
		"1 foot", "one footed", "ein bein", "einem bein", "einem fuß") || part(list, "einbein")
}

// Bounds reports whether a name is that of bounds, from one foot to the other.
func Bounds(name string) bool {
	return has(words(name), "bound") || part(words(name), "sprunglauf", "sprungläufe")
}

// Broad reports whether a name is that of a standing broad jump.
func Broad(name string) bool {
	list := words(name)
	return has(list, "broad jump", "long jump") || part(list, "weitspr")
}

// From returns the level from which on a jump of that name is for a player;
// empty for all. The handbook orders jumps in place, standing jumps, multiple
// hops, bounds, box drills and depth jumps by rising intensity (NSCA Essentials,
// from memory); at which level one begins is common practice, no source.
func From(name string) sessions.Level {
	list := words(name)
	switch {
	case !Named(name):
		return ""
	case Depth(name), OneLeg(name) && Bounds(name):
		return sessions.Advanced
	case OneLeg(name), Bounds(name), has(list, "tuck jump", "pike jump"), part(list, "hurdle", "hürde", "hocksp"):
		return sessions.Intermediate
	}
	return ""
}

// Low reports whether a name is that of a small springing drill of a warm-up,
// such as pogo hops or skips. Common practice, no source.
func Low(name string) bool {
	list := words(name)
	return From(name) == "" && (has(list, "pogo", "hop", "hopp", "skip", "skipp", "jack", "low", "small", "easy", "light", "ankle") ||
		part(list, "hüpf", "huepf", "hopser"))
}
