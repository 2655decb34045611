package check

// otherRules look at who does it, when and in which room.
var otherRules = []Rule{
	{
		Name: "trains", Title: "what is trained and what is not",
		Reason:  "Lists the qualities under trains: and those usual in speed and power work that no block names. One session need not train all; a week should. A quality that is not known gets the nearest one that is.",
		Sources: []string{own}, run: trained,
	},
	{
		Name: "length", Title: "the session's length against the time there is",
		Reason:  "With --within, the length of the plan, its reps stretched by pace in the settings, must not be above the time given.",
		Sources: []string{"The plan."}, run: length,
	},
	{
		Name: Spacing, Title: "time since the last session with jumps",
		Reason: "Of the journal's sessions with jumps, counted or not, the time from the end of the last one to now, and on how many of seven calendar days there were some, today counted. " +
			"Below the lower end, or above the number, is a warning; between the ends a note. The interval is a caution, not a proven limit. A session dated ahead counts as if it had just ended.",
		Sources: []string{nscaPlyo + ": 48–72 h, 1–3 a week, from memory.",
			"Ramírez-Campillo et al., J Strength Cond Res 2015;29:972–979: 24 h or 48 h between two weekly sessions made no difference in 166 players of 10–17 years, seen."},
		Limits: []string{"jump_interval", "jump_days"}, run: spacing,
	},
	{
		Name: "floor", Title: "the floor that each exercise needs against the room",
		Reason:  "floor: of an exercise, along by across, must fit the room's. What fits only when turned by a quarter is a note; what does not fit is an error.",
		Sources: []string{"Geometry."}, run: floor,
	},
	{
		Name: "ceiling", Title: "the height that each exercise reaches against the ceiling",
		Reason: "overhead: reach asks for the standing reach, jump for the reach and the height of a jump, a length for that above the height. Reach and jump are measured ones of the settings, or else estimates, named as such; for what leaves the floor a height of 2 m is assumed if the settings give none. " +
			"Above the ceiling is an error if measured and a warning if estimated; less than the headroom to spare is a note.",
		Sources: []string{
			"Pheasant, Bodyspace, 1996: grip reach 1.185 (men) and 1.184 (women) times the height, seen; fingertips about 1.25 times, computed with a remembered hand length.",
			"Patterson & Peterson, Med Sci Sports Exerc 2004;36:S114: vertical jump at 21–25 years, men 56.4 cm, women 35.8 cm, seen.",
			"The headroom, and the height that is assumed: our own, no source."},
		Limits: []string{"headroom"}, run: ceiling,
	},
	{
		Name: "travel", Title: "how far bounds and jumps travel against the length of the floor",
		Reason:  "travel: of an exercise is the length of one rep. A broad jump without it is taken as long as that of the settings, or the median of the age. It says how many reps fit before a turn; not even one is an error, or a warning if estimated.",
		Sources: []string{"Res Q Exerc Sport 2015;86 Suppl 1:S37–44: median standing broad jump at 11 to 18 years, seen."}, run: travel,
	},
	{
		Name: "cues", Title: "an exercise with no cue",
		Reason: "A player alone hears nobody. One cue an exercise is enough, and better than none.", Sources: []string{custom}, run: cues,
	},
	{
		Name: "easier", Title: "an exercise with no easier variant",
		Reason: "On a bad day a player alone needs another way than stopping or forcing it. Warm-up and cool-down are not asked.", Sources: []string{custom}, run: easier,
	}, {
		Name: "easier-contacts", Title: "an easier variant of a jump whose contacts are not known",
		Reason: "A log that counts the jump's contacts for its easier variant may report more jumps than there were.", Sources: []string{custom}, run: unknownEasier,
	},
	{
		Name: "fast-rising", Title: "a tempo with an X, which is as fast as possible",
		Reason:  "How long a rising as fast as possible takes differs from player to player. It is counted as 1 s, the turning round included, in the length of the session, the pace of a set and the ratio of work to rest.",
		Sources: []string{custom}, run: fastRising,
	}, {
		Name: "cut-text", Title: "a text that YAML cuts at a #",
		Reason:  "Without quotes, a # after a space begins a comment, and what follows is in no text: Jump #2 is read as Jump. Comments with a space after their # are taken for what they are.",
		Sources: []string{"YAML 1.2.2, 6.6 Comments."}, run: cutText,
	},
	{
		Name: "level", Title: "jumps and sessions above the level",
		Reason: "Jumps are recognised by their names, in English and German: tuck jumps, bounds, hurdles and hops on one leg from intermediate, depth jumps and bounds on one leg from advanced. They are compared with the session's level and the player's, whichever is lower, and the message says whose it is. " +
			"Depth jumps: none before puberty, nor from above 46 cm for players over 100 kg.",
		Sources: []string{nscaPlyo + ": the order of intensity, puberty, 46 cm and 100 kg, from memory.", "From which level on: common practice, no source. Puberty until 13: our own, no source."}, run: levelRule,
	},
	{
		Name: "supervision", Title: "a player under 18",
		Reason:  "The settings' year of birth says that the player may be under 18. Training must be prescribed and supervised appropriately; volume comes before intensity.",
		Sources: []string{"Faigenbaum et al., J Strength Cond Res 2009;23:S60–S79; Lloyd et al., Br J Sports Med 2014;48:498–505, seen."}, run: supervision,
	},
}
