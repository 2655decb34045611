//go:build !linux && !freebsd && !netbsd && !openbsd && !windows

package live

// newSystemOutput returns the system's default device, not yet open.
func newSystemOutput() output { return &otoOutput{} }
