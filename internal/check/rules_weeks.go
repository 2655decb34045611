package check

// notForetold stands in every reason that might be read as a forecast.
const notForetold = " Nothing here predicts an injury."

// weeksRules look at a plan of weeks as a whole.
var weeksRules = []Rule{
	{
		Name: "week-contacts", Title: "foot contacts of a week against the level",
		Reason:  "The contacts of all sessions of a week, against those of two sessions of the level. Above the range it warns." + notForetold,
		Sources: []string{"Two sessions a week of " + nscaPlyo + ", from memory; the sums are computed, and common practice, no source."},
		Limits:  []string{"week_contacts_beginner", "week_contacts_intermediate", "week_contacts_advanced"}, runWeeks: weekContacts,
	},
	{
		Name: "session-rise", Title: "a session's foot contacts against the largest of the 30 days before",
		Reason: "The 30 days before are those of the plan, and with --journal what was really done. Above the lower limit it is a note, above the higher a warning. " +
			"In 5,205 runners a session more than 10 % longer than the longest of the past 30 days went with more overuse injuries (hazard ratio 1.64 for 10–30 %, 1.52 for 30–100 %, 2.28 above 100 %), " +
			"and the change from week to week with none. That it holds for jumps is an analogy of ours. Against it: jumps rising by 20 % of the first week every week did better than the same number throughout. " +
			"Weekly rules fared badly too: runners held to 10 % a week were hurt as often as the others." + notForetold,
		Sources: []string{"Frandsen et al., Br J Sports Med 2025;59:1203–1210, seen; the analogy is ours.",
			"Ramírez-Campillo et al., J Strength Cond Res 2015;29:1884–1893, seen.",
			"Buist et al., Am J Sports Med 2008;36:33–39, seen: 20.8 % and 20.3 %.",
			"Nielsen et al., JOSPT 2014;44:739, second-hand: over 30 % a week with more of some injuries."},
		Limits: []string{"session_rise"}, runWeeks: sessionRise,
	},
	{
		Name: "one-thing", Title: "two things made harder in one week",
		Reason:  "Reps, time, rounds or rest of a session, against the same session of the week before; less rest is harder. A lighter week is left aside.",
		Sources: []string{custom}, runWeeks: raised,
	},
	{
		Name: "lighter-weeks", Title: "lighter weeks: often enough, and really lighter",
		Reason: "More weeks in a row without a lighter one than the limit, a lighter week without any session, and one with more contacts, work or sessions than the week before.",
		Sources: []string{"Rogerson et al., Sports Med Open 2024;10:26, seen: 246 strength and physique athletes, 6.4 ± 1.7 days every 5.6 ± 2.3 weeks.",
			"Coleman et al., PeerJ 2024;12:e16777, seen: a week of no training, less gain of strength.",
			"The lighter week keeps every session and drops a round: common practice, no source."},
		Limits: []string{"lighter_after"}, runWeeks: lighterWeeks,
	},
	{
		Name: "jump-days", Title: "days between days with jumps",
		Reason: "From one day with jumps to the next, counted or not, and how many there are in seven days. The interval is a caution, not a proven limit.",
		Sources: []string{nscaPlyo + ": 48–72 h, 1–3 a week, from memory.",
			"Ramírez-Campillo et al., J Strength Cond Res 2015;29:972–979, seen: 24 h or 48 h between two weekly sessions made no difference in 166 players of 10–17 years."},
		Limits: []string{"jump_interval", "jump_days"}, runWeeks: jumpSpacing,
	},
	{
		Name: "before-match", Title: "jumps on the day of a match or the day before",
		Reason: "Fresh legs for the match.", Sources: []string{custom}, runWeeks: beforeMatch,
	},
	{
		Name: "taper", Title: "the weeks before the first match",
		Reason:  "If none of the three weeks up to the first match is lighter, a note says what is known of tapering.",
		Sources: []string{"Bosquet et al., Med Sci Sports Exerc 2007;39:1358–1365, seen: 27 studies, mostly endurance."}, runWeeks: taper,
	},
	{
		Name: "rest-day", Title: "a day without training in seven",
		Reason: "Seven days in a row with a session on each.", Sources: []string{custom}, runWeeks: restDay,
	},
	{
		Name: "week-length", Title: "the length of a week's sessions against the time there is",
		Reason: "With --within, which is then the time of a week.", Sources: []string{"The plan."}, runWeeks: weekMinutes,
	},
	{
		Name: "away", Title: "sessions that days away leave out",
		Reason:  "Which they are, and how far the days with jumps around them are apart then. After two weeks or more a player comes back with less.",
		Sources: []string{"Caterisano et al., Strength Cond J 2019;41(3):1–23, second-hand: 50, 30, 20, 10 % less in weeks 1 to 4; its use for contacts is ours."}, runWeeks: leftOut,
	},
	{
		Name: "starts", Title: "a plan that starts in another decade",
		Reason: "More than ten years from today the year is most likely mistyped.", Sources: []string{own}, runWeeks: farAhead,
	},
}
