//go:build !linux && !freebsd && !netbsd && !openbsd

package live

// newSystemOutput returns the system's default device, not yet open.
func newSystemOutput() output { return &otoOutput{} }
