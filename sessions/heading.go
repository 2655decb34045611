package sessions

import "strings"

// Heading is where a called direction points, seen by the player: Front is
// ahead. The empty Heading is a word that points nowhere.
type Heading string

// The headings.
const (
	Front      Heading = "front"
	FrontRight Heading = "front right"
	Right      Heading = "right"
	BackRight  Heading = "back right"
	Back       Heading = "back"
	BackLeft   Heading = "back left"
	Left       Heading = "left"
	FrontLeft  Heading = "front left"
)

// headingWords are the words that a heading is made of, in English and German.
var headingWords = map[string]Heading{
	"front": Front, "forward": Front, "forwards": Front, "ahead": Front, "vorn": Front, "vorne": Front, "vor": Front,
	"back": Back, "backward": Back, "backwards": Back, "behind": Back, "rear": Back, "hinten": Back, "zurück": Back,
	"left": Left, "links": Left, "right": Right, "rechts": Right,
}

// HeadingOf returns where a direction as a coach writes it points: "left",
// "front left", "back-right", "hinten links", in any case and order.
func HeadingOf(direction string) Heading {
	along, across := Heading(""), Heading("")
	for _, w := range strings.FieldsFunc(strings.ToLower(direction), func(r rune) bool { return r == ' ' || r == '-' || r == ',' }) {
		switch h := headingWords[w]; {
		case (h == Front || h == Back) && along == "":
			along = h
		case (h == Left || h == Right) && across == "":
			across = h
		default:
			return ""
		}
	}
	switch {
	case along == "":
		return across
	case across == "":
		return along
	}
	return along + " " + across
}
