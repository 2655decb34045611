package check

import (
	"fmt"
	"io"
	"strings"

	"coldfloor/internal/nearest"
	"coldfloor/internal/safetext"
	"coldfloor/internal/settings"
	"coldfloor/internal/yamlread"
)

// Rule is one thing that sessions are held against.
type Rule struct {
	Name    string   // in brackets behind its findings, and under off in the settings
	Title   string   // what it looks at
	Reason  string   // why, and how it is computed
	Sources []string // published or not, each with how sure it is
	Limits  []string // keys of the settings that change it

	run func(*checker)
}

// ProblemRule is the name that stands behind what is wrong with a file itself,
// which no rule found and nobody can turn off.
const ProblemRule = "file"

// The sources, each with its status: seen (read in a page of the source or
// about it), second-hand (seen quoted elsewhere), from memory (not verified).
const (
	nscaPlyo = "NSCA, Essentials of Strength Training and Conditioning, chapter on plyometric training (Potach & Chu)"
	custom   = "Common practice, no source."
	own      = "Our own, no source."
)

// rules is the table of all rules, in the order in which they run.
var rules = []Rule{
	{
		Name: "contacts", Title: "foot contacts against the level, block by block",
		Reason: "A foot contact is one foot, or both together, touching the ground. Contacts are reps times the contacts of one rep, " +
			"both sides counted. Above the range of the level it warns, below it only says so: a session need not be full of jumps. " +
			"One page that quotes the handbook gives the ranges for a week; they are taken for a session here, and the doubt stands.",
		Sources: []string{nscaPlyo + ": what counts as a contact, second-hand; 80–100, 100–120 and 120–140 a session, from memory."},
		Limits:  []string{"contacts_beginner", "contacts_intermediate", "contacts_advanced"}, run: contacts,
	},
	{
		Name: "timed-contacts", Title: "contacts given on timed work",
		Reason:  "Contacts are counted by reps, and timed work has none. Such contacts are missing from every count, of this command and of the journal.",
		Sources: []string{"The session format: contacts are reps times contacts."}, run: timedContacts,
	},
	{
		Name: "rest", Title: "work and rest of each block against what it trains",
		Reason: "The ratio is all work to all that is no work, from the block's first work step to its last. Of what a block trains, the most demanding counts. " +
			"Maximal power: the handbook gives 1:12 to 1:20, plyometric work 1:5 to 1:10; practice gives about 90 s between rounds of a superset. " +
			"Where the two differ a note gives both; it warns only below both. Strength goes by the time from one set of an exercise to its next, and warns only below " +
			"the range for assistance exercises. Muscle size, endurance and conditioning only get notes, because no file says how hard the efforts are.",
		Sources: []string{
			"NSCA, Essentials of Strength Training and Conditioning, energy-system table: 1:12 to 1:20 at 90–100 % of maximal power, second-hand; 1:3 to 1:5 for 15–30 s, 1:3 to 1:4 for 1–3 min, 1:1 to 1:3 above, from memory.",
			nscaPlyo + ": 1:5 to 1:10, from memory.",
			"NSCA Essentials, rest by goal: strength and power 2–5 min, muscle size 30–90 s, endurance up to 30 s, second-hand.",
			"ACSM position stand, Med Sci Sports Exerc 2009;41:687–708: 2–3 min at heavier loads, 1–2 min for assistance exercises, seen or second-hand.",
			"About 90 s between rounds: common practice, no source. That 60 s still pass: our own, no source.",
		},
		Limits: []string{"power_rest_ratio", "jump_rest_ratio", "round_rest", "strength_rest", "assistance_rest", "size_rest", "endurance_rest", "short_rest_ratio", "medium_rest_ratio", "long_rest_ratio"},
		run:    rest,
	},
	{
		Name: "recovery", Title: "phosphagen recovery at the start of the power sets",
		Reason: "Phosphocreatine after a 30 s all-out cycling sprint was measured at 19.7 % of resting at once, 65.0 % after 90 s and 85.5 % after 360 s. " +
			"Between these points the value is on a straight line; beyond 360 s none is given. A short jump set empties the store less than that sprint, and " +
			"these were fourteen men on bicycles: an orientation to compare rests with, not a prescription. It never warns.",
		Sources: []string{"Bogdanis et al., J Physiol 1995;482:467–480, seen."}, run: recovery,
	},
	{
		Name: "effort", Title: "length of one effort where maximal power is trained",
		Reason: "Maximal power lasts seconds. One effort is one work step: a set, or one side of it. Above the handbook's range it notes efforts that practice " +
			"still has, by their reps, and warns of jumps beyond both.",
		Sources: []string{"NSCA Essentials, energy-system table: 5–10 s, second-hand.", "3–8 reps a set or a side: common practice, no source."},
		Limits:  []string{"power_effort", "power_reps"}, run: effort,
	},
	{
		Name: "sides", Title: "left and right equal over the session, and who starts",
		Reason: "reps_per_side and time_per_side give both sides the same. An exercise whose name says left or right and that has plain reps or time counts for that side. " +
			"Where one side starts every time, the other always works tired: a note names swap-each-round.",
		Sources: []string{custom}, run: sides,
	},
	{
		Name: "warm-up", Title: "a warm-up before the first jump, and long enough",
		Reason: "Counts the time of the blocks with part: warm-up that come before the first jump of another block. None, or less than the least, is a warning; less than practice is a note.",
		Sources: []string{"Ten minutes before jumping: common practice, no source.",
			"Jeffreys, RAMP, 2007: raise 5–10 min, activate and mobilise about 5 min; the parts seen, the times second-hand."},
		Limits: []string{"warm_up"}, run: warmUp,
	},
	{
		Name: "order", Title: "jumps before slow strength, conditioning last",
		Reason: "A block that jumps after a block of slow strength, and a block of power or strength after one of conditioning, are warnings. " +
			"Slow before fast within one round is a note, since contrast training means it. Slow strength is what stays on the floor in a block that trains strength, and a tempo of 3 s or more in one that trains power.",
		Sources: []string{custom, "3 s a rep: our own, no source."}, run: order,
	},
	{
		Name: "trains", Title: "what is trained and what is not",
		Reason:  "Lists the qualities under trains: and those usual in speed and power work that no block names. One session need not train all; a week should.",
		Sources: []string{own}, run: trained,
	},
	{
		Name: "length", Title: "the session's length against the time there is",
		Reason:  "With --within, the length of the plan, its reps stretched by pace in the settings, must not be above the time given.",
		Sources: []string{"The plan."}, run: length,
	},
	{
		Name: "spacing", Title: "time since the last session with foot contacts",
		Reason: "Of the journal's sessions with contacts, the time from the end of the last one to now, and how many there were in seven days, this one counted. " +
			"Below the lower end, or above the number, is a warning; between the ends a note.",
		Sources: []string{nscaPlyo + ": 48–72 h, 1–3 a week, from memory."},
		Limits:  []string{"jump_interval", "jump_days"}, run: spacing,
	},
	{
		Name: "floor", Title: "the floor that each exercise needs against the room",
		Reason:  "floor: of an exercise, along by across, must fit the room's. What fits only when turned by a quarter is a note; what does not fit is an error.",
		Sources: []string{"Geometry."}, run: floor,
	},
	{
		Name: "ceiling", Title: "the height that each exercise reaches against the ceiling",
		Reason: "overhead: reach asks for the standing reach, jump for the reach and the height of a jump, a length for that above the height. Reach and jump are measured ones of the settings, or else estimates, named as such. " +
			"Above the ceiling is an error where measured and a warning where estimated; less than the headroom to spare is a note.",
		Sources: []string{
			"Pheasant, Bodyspace, 1996: grip reach 1.185 (men) and 1.184 (women) times the height, seen; fingertips about 1.25 times, computed with a remembered hand length.",
			"Patterson & Peterson, Med Sci Sports Exerc 2004;36:S114: vertical jump at 21–25 years, men 56.4 cm, women 35.8 cm, seen.",
			"The headroom: our own, no source."},
		Limits: []string{"headroom"}, run: ceiling,
	},
	{
		Name: "travel", Title: "how far bounds and jumps travel against the length of the floor",
		Reason:  "travel: of an exercise is the length of one rep. A broad jump without it is taken as long as that of the settings, or the median of the age. It says how many reps fit before a turn; not even one is an error, or a warning where estimated.",
		Sources: []string{"Res Q Exerc Sport 2015;86 Suppl 1:S37–44: median standing broad jump at 11 to 18 years, seen."}, run: travel,
	},
	{
		Name: "cues", Title: "an exercise with no cue",
		Reason: "A player alone hears nobody. One cue a movement is enough, and better than none.", Sources: []string{custom}, run: cues,
	},
	{
		Name: "easier", Title: "an exercise with no easier variant",
		Reason: "On a bad day a player alone needs another way than stopping or forcing it. Warm-up and cool-down are not asked.", Sources: []string{custom}, run: easier,
	}, {
		Name: "easier-contacts", Title: "an easier variant of a jump whose contacts are not known",
		Reason: "A log that counts the jump's contacts for its easier variant may tell of more jumps than there were.", Sources: []string{custom}, run: unknownEasier,
	},
	{
		Name: "level", Title: "jumps and sessions above the level",
		Reason: "Jumps are told by their names: tuck jumps, bounds, hurdles and hops on one leg from intermediate, depth jumps and bounds on one leg from advanced. The session's level must not be above the player's. " +
			"Depth jumps: none before puberty, nor from above 46 cm for players over 100 kg.",
		Sources: []string{nscaPlyo + ": the order of intensity, puberty, 46 cm and 100 kg, from memory.", "Where a level begins: common practice, no source. Puberty until 13: our own, no source."}, run: levelRule,
	},
	{
		Name: "supervision", Title: "a player under 18",
		Reason:  "The settings' year of birth says that the player may be under 18. Training must be prescribed and supervised appropriately; volume comes before intensity.",
		Sources: []string{"Faigenbaum et al., J Strength Cond Res 2009;23:S60–S79; Lloyd et al., Br J Sports Med 2014;48:498–505, seen."}, run: supervision,
	},
}

// Rules returns every rule in the order in which they run.
func Rules() []Rule { return rules }

// Names returns the names of the rules.
func Names() []string {
	names := make([]string, len(rules))
	for i, r := range rules {
		names[i] = r.Name
	}
	return names
}

// Find returns the rule of that name.
func Find(name string) (r Rule, ok bool) {
	for _, r := range rules {
		if r.Name == name {
			return r, true
		}
	}
	return Rule{}, false
}

// Off returns what is wrong with the rules that the settings turn off: names
// that no rule has.
func Off(s settings.Player) error {
	var problems yamlread.Problems
	for _, name := range s.Off {
		if _, ok := Find(name); ok {
			continue
		}
		p := yamlread.Problem{File: s.File, Pos: s.Marks.At("off"), Message: fmt.Sprintf("no rule is called %s", quote(name)),
			Hint: "the rules are " + strings.Join(Names(), ", ")}
		if near := nearest.Word(name, Names()); near != "" {
			p.Hint = "did you mean " + near + "?"
		}
		problems = append(problems, p)
	}
	if problems == nil {
		return nil
	}
	return problems
}

// Explain writes why the rule is there, whose figures it goes by and how sure
// they are, and how to change its limits, which are those of the settings.
func (r Rule) Explain(w io.Writer, s settings.Player) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n\n%s\nSources\n", r.Name, r.Title, wrap("", r.Reason))
	for _, text := range r.Sources {
		b.WriteString(wrap("  ", text))
	}
	if len(r.Limits) > 0 {
		b.WriteString("\nLimits, as they are under limits: in the settings file\n")
	}
	for _, key := range r.Limits {
		d := settings.LimitByKey(key)
		whose := d.Source
		if s.Limits.Changed(key) {
			whose = "your own; " + d.Format(d.Default) + " is " + d.Source
		}
		fmt.Fprintf(&b, "  %s: %s\n%s", key, d.Format(s.Limits[key]), wrap("    # ", d.Meaning+" ("+whose+")"))
	}
	fmt.Fprintf(&b, "\nTo do without the rule, write off: [%s] in the settings file.\nNone of this is medical advice.\n", r.Name)
	_, err := io.WriteString(w, b.String())
	return err
}

// wrap breaks a text into lines that all begin alike.
func wrap(begin, text string) string {
	const width, most = 78, 100
	var b strings.Builder
	for _, line := range safetext.Wrap(text, width-len(begin), most) {
		b.WriteString(begin + line + "\n")
	}
	return b.String()
}
