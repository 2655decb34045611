package live

import (
	"errors"

	"golang.org/x/sys/windows"
)

// systemOutput is the system's default device. If there is none, the library
// below takes samples at their pace all the same and plays them to nobody; so
// the system is asked whether it has a device.
type systemOutput struct{ otoOutput }

// newSystemOutput returns the system's default device, not yet open.
func newSystemOutput() output { return &systemOutput{} }

// errNoDevice is the failure of a system without a device.
var errNoDevice = errors.New("no sound device")

// waveOutGetNumDevs is the system's count of its devices (Win32, mmeapi.h).
var waveOutGetNumDevs = windows.NewLazySystemDLL("winmm.dll").NewProc("waveOutGetNumDevs")

// hasDevice reports whether the system has a device to play on; if it cannot be
// asked it is taken to have one.
func hasDevice() bool {
	if waveOutGetNumDevs.Find() != nil {
		return true
	}
	n, _, _ := waveOutGetNumDevs.Call()
	return n > 0
}

func (s *systemOutput) open(src source) error {
	if !hasDevice() {
		return errNoDevice
	}
	return s.otoOutput.open(src)
}

func (s *systemOutput) err() error {
	if !hasDevice() {
		return errNoDevice
	}
	return s.otoOutput.err()
}
