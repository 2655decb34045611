package settings

import (
	"fmt"
	"strings"

	"coldfloor/internal/safetext"
)

// samples is an example of each key of a settings file and what it is for, in
// the order of keys.
var samples = map[string]struct{ value, meaning string }{
	"name":        {"Player One", "goes into the journal, so that a coach knows whose it is"},
	"sex":         {"female", "female or male; chooses among published averages for what you leave out below"},
	"birth_year":  {"1999", "a player who may be under 18 is treated as such"},
	"level":       {"intermediate", "the player's level: beginner, intermediate or advanced"},
	"mass":        {"62kg", "body weight; check goes by it for the height of depth jumps"},
	"height":      {"1.70m", "standing height, without shoes; check holds it against the ceiling"},
	"reach":       {"2.14m", "fingertips of one arm stretched up, standing flat-footed"},
	"jump":        {"41cm", "height of a standing vertical jump"},
	"broad_jump":  {"1.90m", "standing broad jump"},
	"pace":        {"1.15", "how long your reps take compared with those prescribed: 1.15 is slower"},
	"room":        {"4.5x1.2x2.4m", "floor along, floor across, ceiling; the ceiling may be left out"},
	"cell_height": {"4.5mm", "how high a character is on your screen; --distance needs it"},
	"volume":      {"80", "how loud the cues are, 0 to 100"},
	"clicks":      {"on", "a soft click for every paced rep: on or off"},
	"background":  {"auto", "your terminal's background: light, dark or auto, which asks the terminal"},
	"language":    {"en", "what a player sees and hears: en or de; if left out, the system's"},
	"weeks":       {"weeks.yaml", "the plan of weeks; a path from the folder of this file"},
	"off":         {"[cues]", "rules of check to do without"},
}

// Sample returns a settings file that says nothing yet: every key with an
// example and what it is for, commented out.
func Sample() []byte {
	var b strings.Builder
	b.WriteString(`# The settings of one player. Every key is optional: take the "# " off the lines
# you need and put in your own values. coldfloor settings shows what is used.
`)
	for _, key := range keys {
		if key == "limits" {
			writeLimits(&b)
			continue
		}
		s := samples[key]
		fmt.Fprintf(&b, "\n%s# %s: %s\n", comment("", s.meaning), key, s.value)
	}
	return []byte(b.String())
}

// writeLimits writes the limits with their published or customary ranges.
func writeLimits(b *strings.Builder) {
	b.WriteString("\n## Ranges that check and next use, each with its default. None is medical\n## advice.\n# limits:\n")
	for _, d := range AllLimits {
		fmt.Fprintf(b, "%s#   %s: %s\n", comment("  ", d.Meaning+" ("+d.Source+")"), d.Key, d.Format(d.Default))
	}
}

// comment writes an explanation in lines that stay comments when the keys'
// are taken off.
func comment(indent, text string) string {
	const width, most = 76, 10
	var b strings.Builder
	for _, line := range safetext.Wrap(text, width-len(indent), most) {
		b.WriteString("## " + indent + line + "\n")
	}
	return b.String()
}
