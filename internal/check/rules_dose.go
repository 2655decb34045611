package check

import "slices"

// The sources, each with its status: seen (read in a page of the source or
// about it), second-hand (seen quoted elsewhere), from memory (not verified).
const (
	nscaPlyo   = "NSCA, Essentials of Strength Training and Conditioning, chapter on plyometric training (Potach & Chu)"
	nscaEnergy = "NSCA, Essentials of Strength Training and Conditioning, energy-system table"
	jeffreys   = "Jeffreys, RAMP, 2007"
	custom     = "Common practice, no source."
	own        = "Our own, no source."
)

// rules is the table of all rules, in the order in which they run.
var rules = slices.Concat(doseRules, otherRules, weeksRules)

// doseRules look at what is done, how long and with how much rest.
var doseRules = []Rule{
	{
		Name: "contacts", Title: "foot contacts against the level, block by block",
		Reason: "A foot contact is one foot, or both together, touching the ground. Contacts are reps times the contacts of one rep, " +
			"both sides counted. Above the range of the level it warns, below it only says so: a session need not be full of jumps. " +
			"A jump is what has contacts, or overhead: jump, or the name of a jump in English or German. A jump with reps whose contacts are not given gets a warning, " +
			"and the count is then a minimum; contacts: 0 is an answer. Rope skipping does not count as jumping here. " +
			"One page that quotes the handbook gives the ranges for a week; here they are taken per session, with that doubt.",
		Sources: []string{nscaPlyo + ": what counts as a contact, second-hand; 80–100, 100–120 and 120–140 a session, from memory.",
			"Which names are jumps: common practice, no source."},
		Limits: []string{"contacts_beginner", "contacts_intermediate", "contacts_advanced"}, run: contacts,
	},
	{
		Name: "timed-contacts", Title: "jumps dosed by time",
		Reason:  "Contacts are counted by reps, and timed work has none. How often the feet land is then not known, and missing from every count, of this command and of the journal; the sets are counted instead.",
		Sources: []string{"The session format: contacts are reps times contacts."}, run: timedContacts,
	},
	{
		Name: "rest", Title: "work and rest of each block against what it trains",
		Reason: "The ratio is all work to all that is not work, from the block's first work step to its last; preview shows the same. It is compared unrounded and shown rounded down. " +
			"What a block trains is what its exercises are: what trains says, as far as it is known and fits them, or else their names, tempo and dose; of several, the most demanding counts. " +
			"Maximal power: the handbook gives 1:12 to 1:20, plyometric work 1:5 to 1:10; practice gives about 90 s between rounds of a superset. " +
			"If the two differ a note gives both; it warns only below both. Fast work with a rep of 3 s or more has its reset within the rep, and goes by practice alone. " +
			"Strength goes by the time from one set of an exercise to its next, and warns only below " +
			"the range for assistance exercises. Muscle size, endurance and conditioning only get notes, because no file says how hard the efforts are. " +
			"The rest before a block of fast work, or of strength after strength or conditioning, must not be shorter than the least between rounds.",
		Sources: []string{
			nscaEnergy + ": 1:12 to 1:20 at 90–100 % of maximal power, second-hand; 1:3 to 1:5 for 15–30 s, 1:3 to 1:4 for 1–3 min, 1:1 to 1:3 above, from memory.",
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
			"Between these points the value is on a straight line; beyond 360 s none is given. It is shown for sets that follow a rest, not within a round and not after the warm-up. " +
			"A short jump set empties the store less than that sprint, and these were fourteen men on bicycles: an orientation to compare rests with, not a prescription. It never warns.",
		Sources: []string{"Bogdanis et al., J Physiol 1995;482:467–480, seen."}, run: recovery,
	},
	{
		Name: "effort", Title: "length of one effort at maximal power",
		Reason: "Maximal power lasts seconds. One effort is one work step: a set, or one side of it; with a rep of 3 s or more it is a rep. Above the handbook's range it notes efforts that practice " +
			"still has, by their reps, and warns of jumps beyond both and of any effort over 30 s.",
		Sources: []string{nscaEnergy + ": 5–10 s at 90–100 % of maximal power, second-hand; 15–30 s belong to 75–90 %, from memory.", "3–8 reps a set or a side: common practice, no source.",
			"That 3 s hold a reset: our own, no source."},
		Limits: []string{"power_effort", "power_reps"}, run: effort,
	},
	{
		Name: "warm-up", Title: "a warm-up before the first jump or fast work, and long enough",
		Reason: "Counts the time of the warm-up before the first jump, sprint or other fast work, the rest after it left out. None, or less than the least, is a warning; less than practice is a note. " +
			"Low springing drills, up to 60 contacts a block, and up to 10 reps of other jumps may be part of a warm-up; more, or harder ones, are jumps that want one before them.",
		Sources: []string{"Ten minutes before jumping: common practice, no source.",
			jeffreys + ": raise 5–10 min, activate and mobilise about 5 min, then potentiate; the parts seen, the times second-hand.", "60 contacts and 10 reps: our own, no source."},
		Limits: []string{"warm_up"}, run: warmUp,
	},
	{
		Name: "order", Title: "fast work before slow strength, conditioning last",
		Reason: "A block of jumps or fast work after a block of slow strength, and a block of either after one of conditioning, are warnings, whatever trains says. " +
			"Slow before fast within one round is a note, since contrast training means it. Slow strength is what a block of strength has, a tempo of 3 s or more, and lifts in a block that does not say what it trains.",
		Sources: []string{custom, "3 s a rep: our own, no source."}, run: order,
	},
	{
		Name: "sides", Title: "left and right equal over the session, and who starts",
		Reason: "reps_per_side and time_per_side give both sides the same. An exercise whose name says left or right and that has plain reps or time counts for that side. " +
			"If one side starts every round, the other always works tired: a note names swap-each-round.",
		Sources: []string{custom}, run: sides,
	},
}
