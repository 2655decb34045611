package check

import (
	"strings"

	"coldfloor/sessions"
)

// quality is a kind of thing that is trained, as far as the rules tell them
// apart. The later goes before the earlier if a block trains several.
type quality int

const (
	unknown      quality = iota
	control              // technique, balance, trunk: not hurried, no range of rest
	endurance            // muscular endurance
	size                 // muscle size
	conditioning         // the energy systems
	strength
	power // maximal power and speed
)

// qualityWords tell the kind of a quality by a part of its name, in English
// and German; the first that fits counts. What qualifies comes before what it
// qualifies: "core strength" is trunk work, "jump technique" is technique.
var qualityWords = []struct {
	kind  quality
	parts []string
}{
	{endurance, []string{"strength endurance", "muscular endurance", "kraftausdauer"}},
	{conditioning, []string{"power endurance", "speed endurance", "repeated sprint", "interval", "schnelligkeitsausdauer"}},
	{control, []string{"technique", "technik", "skill", "trunk", "core", "rumpf", "mobility", "beweglichkeit", "balance", "gleichgewicht",
		"stability", "stabili", "coordination", "koordination", "footwork", "beinarbeit", "ladder", "landing", "landung", "deceleration", "braking",
		"activation", "flexibility", "posture", "agility", "recovery", "breathing", "warm", "stretch", "dehnen"}},
	{power, []string{"power", "speed", "accelerat", "sprint", "explosiv", "plyometric", "plyometrisch", "reactive", "reaktiv", "elastic", "jump", "stiffness",
		"rate of force", "quickness", "schnellkraft", "sprungkraft", "schnelligkeit", "antritt", "all-out", "all out"}},
	{size, []string{"hypertrophy", "hypertrophie", "muscle size", "muscle mass", "muskelaufbau"}},
	{conditioning, []string{"conditioning", "aerobic", "stamina", "cardio", "work capacity", "endurance", "ausdauer"}},
	{strength, []string{"strength", "kraft"}},
}

// qualityNames are what a misspelt quality may have been meant for.
var qualityNames = []string{"power", "vertical power", "horizontal power", "lateral power", "speed", "acceleration", "reactive strength", "plyometrics",
	"strength", "muscle size", "hypertrophy", "muscular endurance", "endurance", "conditioning", "trunk", "core", "mobility", "balance", "stability",
	"coordination", "footwork", "agility", "landing", "technique", "flexibility", "activation",
	"Schnellkraft", "Sprungkraft", "Schnelligkeit", "Kraft", "Maximalkraft", "Ausdauer", "Kraftausdauer", "Rumpf", "Beweglichkeit", "Koordination"}

// qualityOf returns the kind of a quality as a coach names it.
func qualityOf(name string) quality {
	name = strings.ToLower(name)
	for _, w := range qualityWords {
		for _, part := range w.parts {
			if strings.Contains(name, part) {
				return w.kind
			}
		}
	}
	return unknown
}

// trains returns the most demanding kind of what a block says it trains, and
// whether it says that it trains that alone.
func trains(b *sessions.Block) (most quality, alone bool) {
	alone = true
	for i, name := range b.Trains {
		kind := qualityOf(name)
		alone = alone && (i == 0 || kind == most)
		most = max(most, kind)
	}
	return most, alone
}
