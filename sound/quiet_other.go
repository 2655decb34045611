//go:build !(linux || freebsd || netbsd || openbsd)

package sound

// quiet and loudly have nothing to do where the sound libraries print nothing.
func quiet()  {}
func loudly() {}
