package cautions

import (
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"github.com/adrg/xdg"
)

// readFile is where it is kept who has read the cautions: a quoted name a line,
// the empty name for a player who has given none.
func readFile() string { return filepath.Join(xdg.StateHome, "coldfloor", "cautions-read") }

// WereRead reports whether the player of that name has read the cautions
// before a first session. If that cannot be told, they have not.
func WereRead(player string) bool {
	text, err := os.ReadFile(readFile())
	return err == nil && slices.Contains(strings.Split(string(text), "\n"), strconv.Quote(player))
}

// Remember keeps that the player of that name has read the cautions.
func Remember(player string) error {
	if WereRead(player) {
		return nil
	}
	if err := os.MkdirAll(filepath.Dir(readFile()), 0o700); err != nil {
		return err
	}
	f, err := os.OpenFile(readFile(), os.O_WRONLY|os.O_APPEND|os.O_CREATE, 0o600)
	if err != nil {
		return err
	}
	_, err = f.WriteString(strconv.Quote(player) + "\n")
	if closed := f.Close(); err == nil {
		err = closed
	}
	return err
}
