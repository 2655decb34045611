// Command coldfloor walks a player through a speed or power session by eye and
// ear, shows the coach its length and dose beforehand, and keeps what was
// really done.
//
// Results go to standard output; errors and notices to standard error, as
// "coldfloor: what is wrong", in lower case with no full stop, and if one
// helps a "hint: " line that says what to do. The exit code is 0 when all is
// well, 1 when problems were found, and 2 when the command was wrongly used.
package main

import (
	"os"

	"coldfloor/sound/live"
)

func main() {
	live.OwnStderr()
	os.Exit(execute(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
