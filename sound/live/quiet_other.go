//go:build !(linux || freebsd || netbsd || openbsd)

package live

// OwnStderr, quiet and loudly have nothing to do where the sound libraries
// print nothing.
func OwnStderr() {}
func quiet()     {}
func loudly()    {}
