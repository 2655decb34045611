//go:build linux || freebsd || netbsd || openbsd

package live

import "sync"

// systemOutput is the system's sound server where there is one, and the device
// itself otherwise.
type systemOutput struct {
	otoOutput

	mu     sync.Mutex
	stream *pulseStream // nil: the device itself, or none yet
}

// newSystemOutput returns the system's default device, not yet open.
func newSystemOutput() output { return &systemOutput{} }

// server returns the stream on a sound server, nil if there is none.
func (s *systemOutput) server() *pulseStream {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.stream
}

func (s *systemOutput) open(src source) error {
	p, err := newPulseStream(src)
	if err != nil {
		if s.server() != nil { // it was there and may come back
			return err
		}
		return s.otoOutput.open(src)
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.stream != nil {
		s.stream.close()
	}
	s.stream = p
	return nil
}

func (s *systemOutput) halt() int {
	if p := s.server(); p != nil {
		return p.halt()
	}
	return s.otoOutput.halt()
}

func (s *systemOutput) goOn() {
	if p := s.server(); p != nil {
		p.goOn()
		return
	}
	s.otoOutput.goOn()
}

func (s *systemOutput) steady() bool { return s.server() != nil }

func (s *systemOutput) suspend() error {
	if p := s.server(); p != nil {
		return p.cork(true)
	}
	return s.otoOutput.suspend()
}

func (s *systemOutput) resume() error {
	if p := s.server(); p != nil {
		return p.cork(false)
	}
	return s.otoOutput.resume()
}

func (s *systemOutput) err() error {
	if p := s.server(); p != nil {
		return p.err()
	}
	return s.otoOutput.err()
}

func (s *systemOutput) close() {
	if p := s.server(); p != nil {
		p.close()
		return
	}
	s.otoOutput.close()
}
