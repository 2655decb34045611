package journal

import "slices"

// line reads a line that this program wrote, and reports whether it is one.
// Each key may stand once, for what a second one adds to is not said here.
func (s *scanner) line(text []byte, l *Line) bool {
	s.text, s.failed = text, false
	seen := 0
	s.object(func(key []byte) {
		switch seen++; string(key) {
		case "v":
			l.V = s.int()
		case "run":
			l.Run = s.string()
		case "n":
			l.N = s.int()
		case "at":
			l.At = s.moment()
		case "t_s":
			l.Clock = s.float()
		case "event":
			l.Event = Event(s.string())
		case "crc":
			s.raw() // the seal is looked at before
		default:
			s.body(key, l)
		}
	})
	return !s.failed && len(s.text) == 0
}

// body reads what goes with a line's event.
func (s *scanner) body(key []byte, l *Line) {
	switch string(key) {
	case "started":
		once(s, &l.Started, s.started)
	case "set":
		into(s, &l.Set, s.arena.set(), s.set)
	case "rest":
		into(s, &l.Rest, s.arena.rest(), s.rest)
	case "pause":
		once(s, &l.Pause, func(p *Pause, k []byte) { s.only(string(k) == "cause", func() { p.Cause = s.string() }) })
	case "resume":
		once(s, &l.Resume, s.resume)
	case "move":
		once(s, &l.Move, s.move)
	case "extend":
		once(s, &l.Extend, s.extend)
	case "variant":
		once(s, &l.Variant, s.variant)
	case "finish":
		once(s, &l.Finish, s.finish)
	case "rating":
		once(s, &l.Rating, s.rating)
	default:
		s.fail() // corrections and measured results are rare, and of a newer program nothing is known
	}
}

// once reads an object into a place that is still free.
func once[T any](s *scanner, p **T, field func(v *T, key []byte)) { into(s, p, nil, field) }

// into is once with the memory that the object is put in, which is empty; nil:
// some of its own.
func into[T any](s *scanner, p **T, v *T, field func(v *T, key []byte)) {
	if *p != nil {
		s.fail()
		return
	}
	if v == nil {
		v = new(T)
	}
	*p = v
	s.object(func(key []byte) { field(v, key) })
}

// only reads a value if its key is known.
func (s *scanner) only(known bool, read func()) {
	if !known {
		s.fail()
		return
	}
	read()
}

// place reads a part of a place.
func (s *scanner) place(p *Place, key []byte) {
	switch string(key) {
	case "block":
		p.Block = s.int()
	case "round":
		p.Round = s.int()
	case "exercise":
		p.Exercise = s.int()
	default:
		s.fail()
	}
}

func (s *scanner) started(v *Started, key []byte) {
	switch string(key) {
	case "title":
		v.Title = s.string()
	case "source":
		v.Source = s.string()
	case "text":
		v.Text = s.string()
	case "player":
		v.Player = s.string()
	case "total_s":
		v.TotalS = s.float()
	case "blocks":
		s.blocks(v)
	case "program":
		v.Program = s.string()
	case "speed":
		v.Speed = s.float()
	case "by_hand":
		v.ByHand = s.bool()
	default:
		s.fail()
	}
}

func (s *scanner) blocks(v *Started) {
	if v.Blocks != nil {
		s.fail()
		return
	}
	v.Blocks = []PlannedBlock{}
	s.list(func() {
		var b PlannedBlock
		s.object(func(key []byte) {
			switch string(key) {
			case "title":
				b.Title = s.string()
			case "rounds":
				b.Rounds = s.int()
			case "sets":
				b.Sets = s.int()
			case "contacts":
				b.Contacts = s.count()
			default:
				s.fail()
			}
		})
		v.Blocks = append(v.Blocks, b)
	})
}

func (s *scanner) set(v *Set, key []byte) {
	switch string(key) {
	case "name":
		v.Name = s.string()
	case "outcome":
		v.Outcome = s.string()
	case "end":
		v.End = s.string()
	case "by_hand":
		v.ByHand = s.bool()
	case "planned_s":
		v.PlannedS = s.float()
	case "taken_s":
		v.TakenS = s.float()
	case "paused_s":
		v.PausedS = s.float()
	case "reps":
		v.Reps = s.int()
	case "planned_reps":
		v.Planned = s.int()
	case "contacts":
		v.Contacts = s.count()
	case "sides":
		if v.Sides != nil {
			s.fail()
			return
		}
		v.Sides = s.sides()
	case "easier":
		v.Easier = s.bool()
	case "variant":
		v.Variant = s.string()
	case "paced":
		v.Paced = s.bool()
	default:
		s.place(&v.Place, key)
	}
}

// sides reads a list of sides, the same one for one that was read before.
func (s *scanner) sides() []string {
	n := 0
	var read [4]string // a set has two, or more if it was done again
	s.list(func() {
		if side := s.string(); n < len(read) {
			read[n] = side
		}
		n++
	})
	if n > len(read) {
		s.fail()
		return nil
	}
	for _, known := range s.seen {
		if slices.Equal(known, read[:n]) {
			return known
		}
	}
	list := append([]string{}, read[:n]...)
	if len(s.seen) < maxSides {
		s.seen = append(s.seen, slices.Clip(list))
	}
	return list
}

// maxSides bounds what scanner.seen holds on to.
const maxSides = 16

func (s *scanner) rest(v *Rest, key []byte) {
	switch string(key) {
	case "prescribed_s":
		v.PrescribedS = s.float()
	case "taken_s":
		v.TakenS = s.float()
	case "paused_s":
		v.PausedS = s.float()
	case "end":
		v.End = s.string()
	default:
		s.place(&v.Place, key)
	}
}

func (s *scanner) resume(v *Resume, key []byte) {
	switch string(key) {
	case "restart":
		v.Restart = s.bool()
	case "step":
		v.Step = s.int()
	default:
		s.fail()
	}
}

func (s *scanner) move(v *Move, key []byte) {
	switch string(key) {
	case "cause":
		v.Cause = s.string()
	case "kind":
		v.Kind = s.string()
	default:
		s.place(&v.Place, key)
	}
}

func (s *scanner) extend(v *Extend, key []byte) {
	switch string(key) {
	case "kind":
		v.Kind = s.string()
	case "by_s":
		v.ByS = s.float()
	default:
		s.place(&v.Place, key)
	}
}

func (s *scanner) variant(v *Variant, key []byte) {
	switch string(key) {
	case "name":
		v.Name = s.string()
	case "easier":
		v.Easier = s.bool()
	default:
		s.place(&v.Place, key)
	}
}
