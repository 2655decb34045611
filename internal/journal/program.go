package journal

import "runtime/debug"

// program returns the version of the running program, or nothing where the
// build does not know it.
func program() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "(devel)" {
		return ""
	}
	return info.Main.Version
}
