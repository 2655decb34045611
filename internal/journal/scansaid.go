package journal

func (s *scanner) finish(v *Finish, key []byte) {
	switch string(key) {
	case "outcome":
		v.Outcome = s.string()
	case "elapsed_s":
		v.ElapsedS = s.float()
	default:
		s.fail()
	}
}

func (s *scanner) rating(v *Rating, key []byte) {
	switch string(key) {
	case "rounds":
		if v.Rounds != nil {
			s.fail()
			return
		}
		v.Rounds = []int{}
		s.list(func() { v.Rounds = append(v.Rounds, s.int()) })
	case "rpe":
		x := s.float()
		v.RPE = &x
	case "pain":
		x := s.bool()
		v.Pain = &x
	case "where":
		x := s.string()
		v.Where = &x
	case "note":
		x := s.string()
		v.Note = &x
	default:
		s.fail()
	}
}
