package tui

import (
	"github.com/charmbracelet/x/ansi"
)

// parts is how a frame's lines are shared out. What is dropped first so that
// the time can be larger stands last.
type parts struct {
	word     int // lines of the banner that says what is going on
	time     int
	exercise int
	dose     int
	cue      int
	offer    int
	round    int
	strip    int
	then     int
	foot     int
	gaps     int // blank lines between time, task and the rest
}

// total returns how many lines there are in all.
func (p parts) total() int {
	return p.word + p.time + p.exercise + p.dose + p.cue + p.offer + p.round + p.strip + p.then + p.foot + p.gaps
}

// share shares out the lines of a window: what is counted gets what the rest
// leaves.
func share(height int, s scene) parts {
	p := parts{word: 1, exercise: 1, dose: 1, cue: 1, round: 1, strip: 1, then: 1, foot: 1}
	if height >= 15 {
		p.exercise = 3 // the least for large letters
	}
	if height >= 18 {
		p.exercise = height * 3 / 10
		if height >= tall && !s.upcoming { // while it is done what is counted matters more
			p.exercise = height / 4
		}
		p.gaps = height / 16
		p.cue = min(6, max(1, height/13))
	}
	switch { // how to do it takes more room than a cue
	case height >= 18 && s.upcoming:
		p.cue = min(6, max(2, height/10))
	case height < 15 && s.upcoming:
		p.cue = 0
	}
	if height >= 22 {
		p.dose = max(3, height/10)
	}
	if s.dose == "" {
		p.dose = 0
	}
	if s.offer != "" && height >= 22 {
		p.offer = 1
	}
	if height >= tall {
		p.word = 5 + (height-tall)/20 // letters between two blank rows
		p.then = max(4, height/14)
	}
	if s.calls { // the arrow is to fill the window
		p.exercise, p.dose, p.cue, p.word, p.then = 1, 0, 0, 1, 1
		if height >= 18 {
			p.exercise = max(4, height/7)
		}
	}
	p.time = height - p.total()
	return p
}

// tall is the height in cells from which on there are lines for the banner, and
// for what follows, in large letters.
const tall = 36

// drop takes away secondary lines, the least important first, until the
// figures reach the height that they must have; the time gets what they had.
func (p parts) drop(reached func(parts) bool) parts {
	for _, part := range []func(*parts) *int{
		func(p *parts) *int { return &p.gaps },
		func(p *parts) *int { return &p.strip },
		func(p *parts) *int { return &p.round },
		func(p *parts) *int { return &p.offer },
		func(p *parts) *int { return &p.cue },
		func(p *parts) *int { return &p.then },
		func(p *parts) *int { return &p.dose },
	} {
		if reached(p) {
			return p
		}
		n := part(&p)
		p.time += *n
		*n = 0
	}
	return p
}

// parts shares the window's lines out, so that the count can be drawn large,
// and be read from where the player is.
func (f frame) parts() parts {
	p := share(f.height, f.scene)
	if p.exercise == 1 && ansi.StringWidth(f.scene.head()) > f.width { // a long name gets a second line
		p.exercise, p.time = 2, p.time-1
	}
	if f.height < 15 && p.dose == 1 && p.exercise == 1 && f.oneLine() != "" && f.asked == nil { // they share a line
		p.dose, p.time = 0, p.time+1
	}
	if _, ok := f.timeFont(f.height); !ok { // too narrow, and higher would not help
		return p
	}
	return p.drop(func(p parts) bool {
		font, ok := f.timeFont(p.time)
		return ok && font.Height() >= f.rows
	})
}
