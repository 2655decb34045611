package schema

import (
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// key is what the schema says of one key beyond its Go type.
type key struct {
	about string
	def   any    // what counts if the key is left out
	ref   string // the definition of its value, or of each item of a list
	words []any  // the words it may be
	only  int    // the one number it may be
	least *int   // of a number, or of the items of a list, which has one at least if it is nil
	most  int    // of a number, or of the items of a list

	variant bool // a text or a mapping of its own
	alone   bool // a list, or the only item of one alone
}

// keys describes every key, by its mapping and name.
var keys = map[string]key{
	"session.coldfloor": {about: "Version of the format.", only: sessions.Version},
	"session.title":     {about: "What the session is called.", ref: "Label"},
	"session.for":       {about: "Whom the session is for, and when.", ref: "Text"},
	"session.level":     {about: "Whom the dose is held against in a check.", words: []any{sessions.Beginner, sessions.Intermediate, sessions.Advanced}},
	"session.note":      {about: "What the player must know before starting.", ref: "Text"},
	"session.lead_in":   {about: "Countdown before the first work.", def: units.FormatDuration(sessions.DefaultLeadIn)},
	"session.blocks":    {about: "The parts of the session, in order.", most: sessions.MaxSteps},

	"block.title":      {about: "What the block is called.", ref: "Label"},
	"block.part":       {about: "Its place in the session.", def: sessions.Main, words: []any{sessions.WarmUp, sessions.Main, sessions.CoolDown}},
	"block.note":       {about: "What the player must know before starting.", ref: "Text"},
	"block.trains":     {about: "The qualities it trains, such as vertical power, strength, mobility or conditioning.", ref: "Label", most: sessions.MaxWords, alone: true},
	"block.rounds":     {about: "How often its exercises are gone through.", def: 1, least: number(1), most: sessions.MaxSteps},
	"block.rest":       {about: "Rest after each round but the last. Needed where there is more than one round; 0s means none."},
	"block.rest_after": {about: "Rest before the next block. Where it is left out, as long as rest."},
	"block.change":     {about: "Time between two exercises of one round.", def: units.FormatDuration(sessions.DefaultChange)},
	"block.exercises":  {about: "One exercise makes straight sets, two a superset, more a circuit.", most: sessions.MaxSteps},

	"exercise.name":          {about: "The movement.", ref: "Label"},
	"exercise.reps":          {about: "Reps of one set.", least: number(1), most: sessions.MaxReps},
	"exercise.reps_per_side": {about: "Reps of one set on each side.", least: number(1), most: sessions.MaxReps},
	"exercise.time":          {about: "Length of one set.", ref: "PositiveDuration"},
	"exercise.time_per_side": {about: "Length of one set on each side.", ref: "PositiveDuration"},
	"exercise.rep":           {about: "Length of one rep.", def: units.FormatDuration(sessions.DefaultRep), ref: "PositiveDuration"},
	"exercise.tempo":         {about: "Seconds of lowering, pause, rising, and of a last pause if there is one. A rep lasts their sum."},
	"exercise.contacts":      {about: "Foot contacts of one rep: one foot, or both together, touching the ground is one.", def: 0, least: number(0), most: sessions.MaxContacts},
	"exercise.cues":          {about: "A few words each, for the screen while working.", ref: "Label", most: sessions.MaxWords, alone: true},
	"exercise.how":           {about: "How to do it, for the rest before it and for the sheet.", ref: "Text"},
	"exercise.rest":          {about: "Rest before the next exercise of the round, in place of the change. Not on a round's last exercise."},
	"exercise.sides":         {about: "The order of the sides.", def: sessions.LeftFirst, words: []any{sessions.LeftFirst, sessions.RightFirst, sessions.SwapEachRound, sessions.AlternateReps}},
	"exercise.switch":        {about: "Time between the sides.", def: units.FormatDuration(sessions.DefaultSwitch)},
	"exercise.finish":        {about: "What ends a set: its pace, with a key to end it early, or the hand alone.", def: sessions.ByPace, words: []any{sessions.ByPace, sessions.ByHand}},
	"exercise.easier":        {about: "What to do if it is too hard: a name, or a mapping of what differs.", variant: true},
	"exercise.harder":        {about: "What to do if it is too easy: a name, or a mapping of what differs.", variant: true},
	"exercise.load":          {about: "Weight or band.", ref: "Text"},
	"exercise.floor":         {about: "The floor it needs, along x across."},
	"exercise.travel":        {about: "How far one rep travels along the floor; left out where it stays in place or comes back."},
	"exercise.overhead":      {about: "The space it needs above the player: none, reach, jump, or a length above the standing height.", def: sessions.OverheadNone},
	"exercise.measure":       {about: "What comes out of a set and is typed by the player: distance and height in cm, a count, or time in s.", words: []any{sessions.MeasureDistance, sessions.MeasureHeight, sessions.MeasureCount, sessions.MeasureTime}},
	"exercise.way":           {about: "How it is measured, such as tape or wall.", ref: "Label"},
	"exercise.tries":         {about: "practice marks sets that do not count.", words: []any{sessions.Practice}},
	"exercise.calls":         {about: "Directions called during a timed set, at least two.", ref: "Call", least: number(2), most: sessions.MaxCalls},
	"exercise.call_every":    {about: "Time between two calls: fixed, such as 3s, or drawn from a range, such as 2s-4s.", def: units.FormatDuration(sessions.DefaultCallEvery)},

	"variant.name":     {about: "What the variant is called.", ref: "Label"},
	"variant.contacts": {about: "Foot contacts of one rep. If it is left out, those of the exercise.", least: number(0), most: sessions.MaxContacts},
	"variant.rep":      {about: "Length of one rep. If it is left out, that of the exercise.", ref: "PositiveDuration"},
	"variant.tempo":    {about: "Seconds of lowering, pause, rising, and of a last pause if there is one. If it is left out, as in the exercise."},
	"variant.cues":     {about: "A few words each. If they are left out, those of the exercise.", ref: "Label", most: sessions.MaxWords, alone: true},
	"variant.how":      {about: "How to do it. If it is left out, as in the exercise.", ref: "Text"},
}

func number(n int) *int { return &n }
