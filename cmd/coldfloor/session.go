package main

import "coldfloor/internal/settings"

// inputs returns the files that a command reads and so never writes over: the
// named ones, which may be names of no file, and the player's settings.
func inputs(names ...string) []string { return append(names, settings.File()) }
