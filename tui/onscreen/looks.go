package onscreen

// lookID stands for a look among those of a screen; 0 is the terminal's own.
type lookID uint16

// looks holds the looks of a screen, and what was found out of them. There are
// as many as a program's styles make, and none that a text brings.
type looks struct {
	console bool // they are for the Linux console

	all   []look
	ids   map[look]lookID
	read  map[reading]lookID
	steps map[[2]lookID]string
	ways  map[[2]lookID]ways
}

// reading is a look in force and a sequence that was read then.
type reading struct {
	in  lookID
	seq string
}

// newLooks returns the looks of a screen that has none yet but the terminal's
// own.
func newLooks(console bool) *looks {
	return &looks{console: console, all: []look{{}}, ids: map[look]lookID{{}: 0}, read: map[reading]lookID{}, steps: map[[2]lookID]string{}, ways: map[[2]lookID]ways{}}
}

// id returns what stands for a look.
func (l *looks) id(of look) lookID {
	id, known := l.ids[of]
	if !known {
		id = lookID(len(l.all))
		l.all = append(l.all, of)
		l.ids[of] = id
	}
	return id
}

// after returns the look after an SGR sequence.
func (l *looks) after(in lookID, seq string) lookID {
	id, known := l.read[reading{in, seq}]
	if !known {
		id = l.id(l.all[in].with(seq))
		l.read[reading{in, seq}] = id
	}
	return id
}

// shown returns the look that one has on this screen.
func (l *looks) shown(of lookID) lookID {
	if of == 0 || !l.console {
		return of
	}
	return l.id(l.all[of].onConsole())
}

// step returns the shortest sequence that makes one look another.
func (l *looks) step(from, to lookID) string {
	if from == to {
		return ""
	}
	s, known := l.steps[[2]lookID{from, to}]
	if !known {
		s = l.all[from].to(l.all[to])
		l.steps[[2]lookID{from, to}] = s
	}
	return s
}

// filled reports whether a cell is a blank on a ground of some colour, and
// nothing else.
func (l *looks) filled(c cell) bool {
	of := l.all[c.look]
	return c.text == " " && of.bg != "" && of == look{bg: of.bg}
}

// ways are the looks that a blank can be written in; the last one is for a full
// cell in its place.
type ways struct {
	looks [4]lookID
	n     int
}

// blanks returns the ways to write a blank of a look when another one is in
// force. What a blank is written in does not matter as far as it is not seen. A
// ground of a colour is as well drawn by its ink, reversed or in full cells, if
// the terminal is able.
func (l *looks) blanks(of, in lookID, able bool) ways {
	w, known := l.ways[[2]lookID{of, in}]
	if known {
		return w
	}
	ground, now := l.all[of].bg, l.all[in]
	w = ways{[4]lookID{of, l.id(look{now.fg, ground, now.attrs &^ seenOnBlank})}, 2}
	if ground != "" && able {
		ink := asInk(ground)
		w = ways{[4]lookID{of, w.looks[1], l.id(look{ink, now.bg, reversed}), l.id(look{ink, now.bg, 0})}, 4}
	}
	l.ways[[2]lookID{of, in}] = w
	return w
}
