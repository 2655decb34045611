package journal

import "time"

// moment reads a time in the form of RFC 3339, as time.Time.UnmarshalJSON does.
func (s *scanner) moment() time.Time {
	b := s.raw()
	if len(b) < len("2006-01-02T15:04:05Z") || b[4] != '-' || b[7] != '-' || b[10] != 'T' || b[13] != ':' || b[16] != ':' {
		s.fail()
		return time.Time{}
	}
	year, month, day := s.fixed(b[:4]), s.fixed(b[5:7]), s.fixed(b[8:10])
	hour, minute, second := s.fixed(b[11:13]), s.fixed(b[14:16]), s.fixed(b[17:19])
	b = b[19:]
	nanos := 0
	if b[0] == '.' {
		i, unit := 1, int(time.Second)
		for i < len(b) && '0' <= b[i] && b[i] <= '9' && i <= 9 {
			unit /= 10
			nanos += int(b[i]-'0') * unit
			i++
		}
		if i == 1 {
			s.fail()
		}
		b = b[i:]
	}
	// A day that its month has not is left to encoding/json, which refuses it.
	if month < 1 || month > 12 || day < 1 || day > 28 && day > daysIn(year, month) || hour > 23 || minute > 59 || second > 59 {
		s.fail()
	}
	offset, utc := s.zoneOf(b)
	if s.failed {
		return time.Time{}
	}
	t := time.Date(year, time.Month(month), day, hour, minute, second, nanos, time.UTC)
	if utc {
		return t
	}
	return s.in(t.Add(-time.Duration(offset)*time.Second), offset)
}

// fixed reads digits alone.
func (s *scanner) fixed(b []byte) int {
	n := 0
	for _, c := range b {
		if c < '0' || c > '9' {
			s.fail()
		}
		n = n*10 + int(c-'0')
	}
	return n
}

// daysIn returns the number of days of a month.
func daysIn(year, month int) int {
	return time.Date(year, time.Month(month)+1, 0, 0, 0, 0, 0, time.UTC).Day()
}

// zoneOf reads Z, or an offset in seconds.
func (s *scanner) zoneOf(b []byte) (offset int, utc bool) {
	if len(b) == 1 && b[0] == 'Z' {
		return 0, true
	}
	if len(b) != len("+01:00") || b[0] != '+' && b[0] != '-' || b[3] != ':' {
		s.fail()
		return 0, false
	}
	hours, minutes := s.fixed(b[1:3]), s.fixed(b[4:6])
	if hours > 23 || minutes > 59 {
		s.fail()
	}
	offset = (hours*60 + minutes) * 60
	if b[0] == '-' {
		offset = -offset
	}
	return offset, false
}

// in returns t in a zone of that offset: the machine's own, if it has it then.
func (s *scanner) in(t time.Time, offset int) time.Time {
	if local := t.Local(); offsetOf(local) == offset {
		return local
	}
	if s.zone == nil || s.offset != offset {
		s.zone, s.offset = time.FixedZone("", offset), offset
	}
	return t.In(s.zone)
}

// offsetOf returns a time's offset from UTC in seconds.
func offsetOf(t time.Time) int { _, o := t.Zone(); return o }
