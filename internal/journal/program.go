package journal

import "runtime/debug"

// Program returns the version of the running program, or nothing if the
// build does not know it.
func Program() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "(devel)" {
		return ""
	}
	return info.Main.Version
}
