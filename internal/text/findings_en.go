package text

import "fmt"

// englishFindings is what a check finds, in English.
var englishFindings = Findings{
	Quote: func(name string) string { return `"` + name + `"` }, OwnLimit: "your own limit",
	Source: func(source string) string { return source }, Estimated: func(why string) string { return ", estimated: " + why },
	AboveCeiling: func(exercise, top, over, ceiling, estimated string) string {
		return exercise + " reaches " + top + ", " + over + " above the ceiling of " + ceiling + estimated
	},
	Floor: func(exercise, need, room string) string {
		return exercise + " needs a floor of " + need + ", but the room has " + room
	},
	Travel: func(exercise, one, along, estimated string) string {
		return "a rep of " + exercise + " travels " + one + ", and the floor is " + along + " long" + estimated
	},
	Contacts: func(n int, atLeast bool, blocks string) string {
		said := count(n, "foot contact", "foot contacts") + " (" + blocks + ")"
		if atLeast {
			return "at least " + said
		}
		return said
	},
	ContactsNoLevel: func(contacts, cited string) string {
		return contacts + "; no level is given to hold them against; the range of an advanced player is " + cited + " a session"
	},
	ContactsOfRange: func(contacts, where, level, whose, cited string) string {
		return contacts + ", " + where + " the range of one session at level " + level + whose + ", " + cited
	},
	Within: "within", Above: "above", Below: "below", Uncounted: "and jumps that are not counted;", OfThePlayer: " of the player",
	NotWritten: func(exercise string, byName bool) string {
		why := "by its overhead"
		if byName {
			why = "by its name"
		}
		return exercise + " is a jump " + why + ", but its foot contacts are not given, so no count includes them"
	},
	TimedEffort: func(exercise, length, cited string) string {
		return "one effort of " + exercise + " lasts " + length + ", longer than maximal power does: " + cited + "; make it shorter, or call it conditioning"
	},
	Effort: func(exercise, length, cited, reps, source string) string {
		return "one effort of " + exercise + " lasts " + length + ", longer than maximal power does: " + cited + ", and longer than the " + reps + " reps of practice (" + source + ")"
	},
	PowerRest: func(block, ratio string, jumps bool, low, high float64, source string) string {
		work := "maximal power"
		if jumps {
			work = "plyometric work"
		}
		return fmt.Sprintf("work to rest in %s is %s; the handbook's range for %s is 1:%g to 1:%g (%s)", block, ratio, work, low, high, source)
	},
	PowerRestHere: func(handbook, rounds, source, here string) string {
		return handbook + ", and practice is " + rounds + " between rounds (" + source + "), here " + here
	},
	StrengthRest: func(gap, block, strength, assistance, about string) string {
		return gap + " from one set of an exercise to its next in " + block + "; the range for strength is " + strength +
			", for assistance exercises " + assistance + ", practice is about " + about
	},
	BetweenBlocks: func(rest, before, after, least, source string) string {
		return rest + " from " + before + " to " + after + ", less than the " + least + " between rounds (" + source + "); rest_after of the block before sets it"
	},
	NoRest: "no rest", Rest: func(length string) string { return length + " of rest" },
	Sides: func(leftReps int, leftTime string, rightReps int, rightTime string) string {
		return fmt.Sprintf("left does %d reps and %s of timed work, right %d reps and %s: give both sides the same, with reps_per_side or time_per_side",
			leftReps, leftTime, rightReps, rightTime)
	},
	FastAfterSlow: func(fast, slow string) string {
		return fast + " comes after the slow strength work " + slow + "; fast work comes first, while the legs are fresh (common practice, no source)"
	},
	AfterConditioning: func(after, conditioning string) string {
		return after + " comes after the conditioning of " + conditioning + "; conditioning comes last (common practice, no source)"
	},
	NoWarmUp: func(exercise, cited string) string {
		return exercise + " comes with no warm-up before it (no block with part: warm-up); warm up first, " + cited
	},
	ShortWarmUp: func(before, exercise string, jump bool, least, source string) string {
		what := "fast work"
		if jump {
			what = "jump"
		}
		return before + " of warm-up comes before the first " + what + ", " + exercise + "; the least is " + least + " (" + source + ")"
	},
	SessionLevel: func(session, player string) string {
		return "the session is written for level " + session + ", but the player's settings say " + player
	},
	JumpLevel: func(exercise, from, level string, players bool) string {
		whose := "the session is written for"
		if players {
			whose = "the player's settings say"
		}
		return exercise + " is a jump for level " + from + ", but " + whose + " " + level + " (NSCA Essentials' order of intensity, from memory)"
	},
	DepthJump: func(exercise string, age int) string {
		return fmt.Sprintf("%s is a depth jump for a player of %d; none before puberty (NSCA Essentials, from memory)", exercise, age)
	},
	Ended: func(since string, counted bool, cited, window string) string {
		what := "the last session with foot contacts"
		if !counted {
			what = "the last session with jumps, which were not counted,"
		}
		return what + " ended " + since + " ago; the range is " + cited + ", a caution, not a proven limit: " + window
	},
	JumpAgain: func(from, least string) string { return "jump again from " + from + " (" + least + ")" },
	JumpUntil: func(to, most string) string { return " to " + to + " (" + most + ")" },
	JumpDay: func(day int, days, source string) string {
		return fmt.Sprintf("this would be day %d with jumps in seven days; the range is %s days a week (%s)", day, days, source)
	},
}
