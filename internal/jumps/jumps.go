// Package jumps tells which exercises leave the floor, whether or not their
// coach has written how often the feet land again. Names are understood in
// English and German.
package jumps

import (
	"slices"
	"strings"
	"unicode"

	"coldfloor/sessions"
)

// Is reports whether an exercise is a jump: it has foot contacts, or jumps
// overhead, or has a jump's name. Contacts of 0 that are written out are the
// coach's answer to what the name alone would say.
func Is(e *sessions.Exercise) bool {
	if e.Contacts > 0 || e.Overhead.Kind == sessions.OverheadJump {
		return true
	}
	return !e.ContactsWritten() && Named(e.Name)
}

// Counted reports whether all foot contacts of an exercise are counted: it is
// no jump, or one with contacts and reps. Timed work has no reps, so the
// contacts of timed jumps are not known.
func Counted(e *sessions.Exercise) bool {
	if !Is(e) {
		return true
	}
	return e.ContactsWritten() && (e.Contacts == 0 || e.Reps+e.RepsPerSide > 0)
}

// AllCounted reports whether the foot contacts of every exercise of some blocks
// are counted.
func AllCounted(blocks ...sessions.Block) bool {
	return !slices.ContainsFunc(blocks, func(b sessions.Block) bool {
		return slices.ContainsFunc(b.Exercises, func(e sessions.Exercise) bool { return !Counted(&e) })
	})
}

// Any reports whether a session has jumps in it.
func Any(s *sessions.Session) bool {
	for i := range s.Blocks {
		if slices.ContainsFunc(s.Blocks[i].Exercises, func(e sessions.Exercise) bool { return Is(&e) }) {
			return true
		}
	}
	return false
}

// words splits a name into lower-case words; hyphens and digits' edges divide.
func words(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// hops are the words for a jump; each stands for its plural and its -ing.
var hops = []string{"hop", "jump", "bound", "leap", "pogo", "skip"}

// isHop reports whether a word is one for a jump: in English as it stands or
// at the end of a compound ("dropjumps"), in German anywhere in one.
func isHop(w string) bool {
	for _, german := range []string{"sprunggelenk", "sprungbein", "ursprung", "vorsprung"} {
		if strings.HasPrefix(w, german) {
			return false // the ankle, and what is no jump at all
		}
	}
	for _, german := range []string{"sprung", "sprüng", "spruen", "hüpf", "huepf", "hopser"} {
		if strings.Contains(w, german) {
			return true
		}
	}
	if strings.HasSuffix(w, "springen") || w == "skaters" {
		return true
	}
	stem := strings.TrimSuffix(strings.TrimSuffix(w, "s"), "ing")
	if slices.Contains(hops, stem) || slices.Contains(hops, strings.TrimSuffix(stem, "p")) { // hopping, skipping
		return true
	}
	return strings.HasSuffix(stem, "jump")
}

// spokenOf are the words after which a jump is only spoken of, and how many
// words at most lie from there to it: "no jump", "without a jump", "hip hinge
// before a tuck jump".
var spokenOf = map[string]int{
	"no": 1, "non": 1, "not": 1, "hip": 1, "kein": 1, "keine": 1,
	"without": 2, "instead": 2, "ohne": 2, "statt": 2,
	"before": 3, "after": 3, "for": 3, "like": 3, "vor": 3, "nach": 3, "für": 3, "wie": 3,
}

// onlySpokenOf reports whether the i-th word is no jump that is done.
func onlySpokenOf(list []string, i int) bool {
	for back := 1; back <= min(3, i); back++ {
		if spokenOf[list[i-back]] >= back && !(list[i-back] == "hip" && list[i] != "hop") {
			return true
		}
	}
	return false
}

// Named reports whether a name is that of a jump. Rope skipping is none: its
// landings are small, and no volume of jumps counts them.
func Named(name string) bool {
	list := words(name)
	if rope(list) {
		return false
	}
	for i, w := range list {
		if isHop(w) && !onlySpokenOf(list, i) {
			return true
		}
	}
	return false
}

// Rope reports whether a name is that of rope skipping, which many only call
// skipping.
func Rope(name string) bool { return rope(words(name)) }

// rope reports whether a name is that of rope skipping, which many only call
// skipping.
func rope(list []string) bool {
	plain := true
	for _, w := range list {
		if w == "rope" || w == "ropes" || strings.Contains(w, "seil") {
			return true
		}
		plain = plain && slices.Contains([]string{"skipping", "easy", "light", "locker", "leicht", "leichtes", "on", "the", "spot"}, w)
	}
	return plain && slices.Contains(list, "skipping")
}
