package check

import (
	"strings"
	"time"

	"coldfloor/sessions"
)

// quality is a kind of thing that a block trains, as far as the rules tell
// them apart.
type quality int

const (
	unknown      quality = iota
	control              // movement, balance, trunk: not hurried, no range of rest
	endurance            // muscular endurance
	size                 // muscle size
	conditioning         // the energy systems
	strength
	power // maximal power and speed
)

// qualityWords tell the kind of a quality by a part of its name; the first
// that fits counts.
var qualityWords = []struct {
	part string
	kind quality
}{
	{"strength endurance", endurance}, {"muscular endurance", endurance}, {"power endurance", conditioning},
	{"speed endurance", conditioning}, {"repeated sprint", conditioning},
	{"power", power}, {"speed", power}, {"accelerat", power}, {"sprint", power}, {"explosive", power}, {"plyometric", power},
	{"reactive", power}, {"elastic", power}, {"jump", power}, {"stiffness", power}, {"rate of force", power}, {"quickness", power},
	{"hypertrophy", size}, {"muscle size", size}, {"muscle mass", size},
	{"conditioning", conditioning}, {"aerobic", conditioning}, {"interval", conditioning}, {"stamina", conditioning},
	{"cardio", conditioning}, {"work capacity", conditioning}, {"endurance", conditioning},
	{"strength", strength},
	{"trunk", control}, {"core", control}, {"mobility", control}, {"balance", control}, {"stability", control},
	{"coordination", control}, {"footwork", control}, {"landing", control}, {"deceleration", control}, {"braking", control},
	{"activation", control}, {"flexibility", control}, {"posture", control}, {"skill", control}, {"technique", control},
	{"agility", power}, {"recovery", control}, {"breathing", control}, {"warm", control}, {"stretch", control},
}

// qualityOf returns the kind of a quality as a coach names it.
func qualityOf(name string) quality {
	name = strings.ToLower(name)
	for _, w := range qualityWords {
		if strings.Contains(name, w.part) {
			return w.kind
		}
	}
	return unknown
}

// trains returns the most demanding kind of what a block trains.
func trains(b *sessions.Block) quality {
	most := unknown
	for _, name := range b.Trains {
		most = max(most, qualityOf(name))
	}
	return most
}

// trait is what a rule asks of an exercise.
type trait uint8

const (
	jump  trait = 1 << iota // leaves the floor: has contacts, or a jump overhead
	slow                    // strength work, or a slow tempo beside power
	quick                   // an effort at maximal power
)

func (t trait) has(q trait) bool { return t&q != 0 }

// slowRep is the rep from which on work beside power counts as slow strength.
// Our own, no source.
const slowRep = 3 * time.Second

// traitsOf returns the traits of an exercise of a block.
func traitsOf(b *sessions.Block, e *sessions.Exercise) (t trait) {
	kind := trains(b)
	if e.Contacts > 0 || e.Overhead.Kind == sessions.OverheadJump {
		t |= jump
	}
	if b.Part != sessions.Main {
		return t
	}
	switch {
	case t.has(jump):
	case kind == strength || kind == size, kind == power && e.Tempo.Rep() >= slowRep:
		t |= slow
	}
	timed := e.Time > 0 || e.TimePerSide > 0
	if kind == power && (t.has(jump) || !timed && e.Rep < slowRep) {
		t |= quick
	}
	return t
}
