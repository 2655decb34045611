package check

import (
	"slices"
	"strings"
	"time"
	"unicode"

	"coldfloor/internal/jumps"
	"coldfloor/sessions"
)

// slowRep is the rep from which on work is no longer fast: a tempo so slow is
// strength work, and a jump written with so long a rep has its reset within
// it. Our own, no source.
const slowRep = 3 * time.Second

// Words of names that tell what an exercise is if trains does not, or says
// several things. Common practice, no source.
var (
	fastWords = []string{"sprint", "sprints", "dash", "dashes", "acceleration", "accelerations", "all-out", "allout", "maximal", "explosive", "falling", "starts", "antritt", "antritte", "steigerungslauf"}
	holdWords = []string{"plank", "planks", "hold", "holds", "bridge", "hang", "balance", "stand", "stretch", "breathe", "breathing", "walk", "march",
		"bug", "stütz", "unterarmstütz", "seitstütz", "halten", "dehnen", "gehen"}
	liftWords = []string{"squat", "squats", "lunge", "lunges", "deadlift", "deadlifts", "hinge", "thrust", "thrusts", "press", "push-up", "push-ups", "pushups",
		"pull-up", "pull-ups", "row", "rows", "nordic", "nordics", "lowers", "curl", "curls", "raise", "raises",
		"kniebeuge", "kniebeugen", "ausfallschritt", "ausfallschritte", "liegestütz", "liegestütze", "klimmzug", "klimmzüge", "wadenheben", "kreuzheben"}
	tiringWords = []string{"burpee", "burpees", "climber", "climbers", "shuttle", "shuttles", "interval", "intervals", "rally", "rallies", "running", "jog", "run",
		"rope", "skipping", "seilspringen", "laufen", "pendellauf", "ballwechsel"}
)

// longEffort is the timed effort from which on something tiring by its name is
// conditioning. Our own, no source.
const longEffort = 20 * time.Second

// named reports whether a name has one of the words; hyphens hold words
// together.
func named(name string, list []string) bool {
	for w := range strings.FieldsFuncSeq(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && r != '-' }) {
		if slices.Contains(list, w) || slices.ContainsFunc(strings.Split(w, "-"), func(w string) bool { return slices.Contains(list, w) }) {
			return true
		}
	}
	return false
}

// timed reports whether an exercise is dosed by time.
func timed(e *sessions.Exercise) bool { return e.Time > 0 || e.TimePerSide > 0 }

// reps returns the reps of one set, of one side if it is dosed a side.
func reps(e *sessions.Exercise) int { return max(e.Reps, e.RepsPerSide) }

// kindOf returns what an exercise trains: what its block says, as far as it is
// known and fits the exercise, or else what the exercise is by itself.
func (c *checker) kindOf(b *sessions.Block, e *sessions.Exercise) quality {
	said, alone := trains(b)
	switch {
	case jumps.Is(e):
		return c.jumpKind(said, e)
	case jumps.Rope(e.Name) && (said == unknown || said == power):
		return control
	case said == unknown, said == control && named(e.Name, fastWords) && !slices.ContainsFunc(b.Trains, isTechnique):
		return kindByName(e)
	case said == power:
		return powerKind(alone, e)
	}
	return said
}

// isTechnique reports whether a quality is one of doing something well, not
// fast.
func isTechnique(name string) bool {
	name = strings.ToLower(name)
	return strings.Contains(name, "techni") || strings.Contains(name, "skill") || strings.Contains(name, "mobility") || strings.Contains(name, "landing")
}

// jumpKind returns what a jump trains in a block that trains said. The jumps
// that every level has may be technique in small sets, and a part of
// conditioning; else a jump is power, whatever the block says.
func (c *checker) jumpKind(said quality, e *sessions.Exercise) quality {
	from := jumps.From(e.Name)
	switch {
	case said == control && from == "" && float64(reps(e)) <= c.limit("power_reps").High:
		return control
	case (said == conditioning || said == endurance) && from == "":
		return said
	case said == unknown && jumps.Low(e.Name) && e.Time >= longEffort:
		return conditioning // jumping jacks by the half minute
	}
	return power
}

// powerKind returns what an exercise trains that is no jump, in a block of
// power; alone says that it trains nothing else.
func powerKind(alone bool, e *sessions.Exercise) quality {
	switch {
	case named(e.Name, fastWords):
		return power
	case e.Tempo.Rep() >= slowRep:
		return strength
	case named(e.Name, holdWords):
		return control
	case !alone && timed(e):
		return control
	case !timed(e) && e.Rep >= slowRep && !alone:
		return control
	}
	return power
}

// kindByName returns what an exercise trains by its name and dose alone.
func kindByName(e *sessions.Exercise) quality {
	const mostLifts = 12 // reps above it are endurance: NSCA Essentials, from memory
	switch {
	case named(e.Name, fastWords):
		return power
	case named(e.Name, holdWords):
		return control
	case named(e.Name, tiringWords) && e.Time >= longEffort:
		return conditioning
	case e.Tempo.Rep() >= slowRep, named(e.Name, liftWords) && !timed(e) && reps(e) <= mostLifts:
		return strength
	}
	return unknown
}

// Bounds of what a warm-up may have of jumps and still be one. Our own, no
// source: a few low jumps end many a warm-up (Jeffreys, RAMP, 2007: potentiate).
const (
	warmJumps = 60 // foot contacts of low springing drills in a block
	warmOther = 10 // reps of any other jump
)

// prepares reports whether a block only prepares or winds down: it is a warm-up
// or cool-down, and its jumps are few and low.
func prepares(b *sessions.Block) bool {
	if b.Part == sessions.Main {
		return false
	}
	contacts := 0
	for i := range b.Exercises {
		e := &b.Exercises[i]
		if !light(b, e) {
			return false
		}
		contacts += b.Rounds * e.Contacts * (e.Reps + 2*e.RepsPerSide)
	}
	return contacts <= warmJumps
}

// light reports whether an exercise is no jump, or one that a warm-up may have.
func light(b *sessions.Block, e *sessions.Exercise) bool {
	if !jumps.Is(e) || jumps.Low(e.Name) {
		return true
	}
	return jumps.From(e.Name) == "" && b.Rounds*(e.Reps+2*e.RepsPerSide) <= warmOther
}
