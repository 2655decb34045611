package text

import "testing"

// Contacts beside jumps that nobody counted are a least figure, and unknown if
// there are only those; what is counted as none needs no word.
func TestContactsAtLeast(t *testing.T) {
	for _, c := range []struct {
		n                   int
		counted             bool
		english, german, de string
	}{
		{20, true, "20 foot contacts", "20 Bodenkontakte", "20 Kontakte"},
		{20, false, "at least 20 foot contacts", "mindestens 20 Bodenkontakte", "mindestens 20 Kontakte"},
		{0, false, "foot contacts not counted", "Bodenkontakte nicht gezählt", "Kontakte nicht gezählt"},
		{0, true, "", "", ""},
	} {
		if en, de, short := English.Sheet.FootContacts(c.n, c.counted), German.Sheet.FootContacts(c.n, c.counted), German.Sheet.Contacts(c.n, c.counted); en != c.english || de != c.german || short != c.de {
			t.Errorf("%d, counted %v: %q, %q and %q", c.n, c.counted, en, de, short)
		}
	}
}
