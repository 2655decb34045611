package settings

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/adrg/xdg"

	"coldfloor/internal/wholefile"
)

// volumeFile is the program's own memory of the volume, apart from the
// settings file, which is the person's and is never rewritten.
func volumeFile() string { return filepath.Join(xdg.StateHome, "coldfloor", "volume") }

// RememberVolume keeps the volume, 0 to 100, for the next start. From then on
// it goes before the one in the settings file. A volume outside is brought to
// the nearer end.
func RememberVolume(percent int) error {
	file := volumeFile()
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		return err
	}
	text := strconv.Itoa(min(max(percent, 0), 100)) + "\n"
	return wholefile.Write(file, []byte(text), wholefile.Options{Mode: 0o600, Force: true})
}

// recallVolume returns the volume last kept, and false if there is none or
// the file holds something else.
func recallVolume() (percent int, ok bool) {
	src, err := os.ReadFile(volumeFile())
	if err != nil {
		return 0, false
	}
	percent, err = strconv.Atoi(strings.TrimSpace(string(src)))
	return percent, err == nil && percent >= 0 && percent <= 100
}
