//go:build !windows

package wholefile

// replaceable reports why the file at place cannot be replaced: here one can be
// that is open elsewhere.
func replaceable(string) error { return nil }
