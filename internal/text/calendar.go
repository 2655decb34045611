package text

import "fmt"

// Calendar is what the events of a calendar say.
type Calendar struct {
	Match   string
	Dose    func(length, dose string) string
	Place   func(week, of int) string
	Lighter func(percent string) string // after Place
	Moved   func(from string) string    // likewise
}

// englishCalendar is a calendar in English.
var englishCalendar = Calendar{
	Match:   "Match",
	Dose:    func(length, dose string) string { return length + " long: " + dose },
	Place:   func(week, of int) string { return fmt.Sprintf("Week %d of %d", week, of) },
	Lighter: func(percent string) string { return ", lighter: " + percent + " % asked" },
	Moved:   func(from string) string { return ", moved from " + from },
}

// germanCalendar is a calendar in German.
var germanCalendar = Calendar{
	Match:   "Spiel",
	Dose:    func(length, dose string) string { return length + " lang: " + dose },
	Place:   func(week, of int) string { return fmt.Sprintf("Woche %d von %d", week, of) },
	Lighter: func(percent string) string { return ", leichter: " + percent + " % gewünscht" },
	Moved:   func(from string) string { return ", verschoben von " + from },
}
