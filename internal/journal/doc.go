// Package journal keeps what was really done: JSON Lines, one event a line,
// appended and synced as it happens, never rewritten.
//
// # The file
//
// A journal is UTF-8 text, one JSON object a line, each line ended by a line
// feed. Every line has
//
//	v      version of the format, 1
//	run    name of the run, random, letters and digits
//	n      number of the line within its run, from 1
//	at     wall time, RFC 3339, with its zone
//	t_s    session clock: seconds since the start, pauses and count-ins left out
//	event  what happened; the key of that name holds the rest
//	crc    last key: CRC-32C (RFC 3720) of the bytes before ,"crc" in eight hex
//	       digits; lines of earlier versions and of other hands may lack it
//
// The events, and what each holds; lengths of time are in seconds and end in
// _s, places (block, round, exercise) count from 1, what is false, zero or
// empty may be left out, and a number that is not known is null:
//
//	started   title, source (built-in name, path, or "paper"), text (the session
//	          file), player, total_s and blocks (what was prescribed: title,
//	          rounds, sets, contacts a block), program (its version), speed
//	          (of a rehearsal), seed (of its random calls, a decimal string),
//	          by_hand (every set with reps waits for a key), weeks (what put it on
//	          its day: title, starts, week, date, place on that day, session)
//	set       block, round, exercise, name, outcome (done, partial, skipped), end
//	          (clock, finish, skip, back, repeat, stop), by_hand, planned_s and
//	          taken_s (work, both sides), paused_s, reps, planned_reps, contacts,
//	          sides (in the order worked), easier, variant (the easier one's own
//	          name), paced (every side ended by the clock). One that ended after less than
//	          half of its paced length is partial, its reps as far as the pace
//	          had got
//	rest      block, round, exercise (of the set it follows), prescribed_s,
//	          taken_s (by the wall, until work began again: a count-in after it
//	          within), paused_s (of taken_s), end (clock, skip, back, repeat,
//	          stop)
//	pause     cause (key, or gap: the machine was away)
//	resume    restart (in a later process), step (that it goes on with)
//	move      cause (skip, back, repeat), kind, block, round, exercise (of the
//	          step that was left)
//	extend    kind, by_s, block, round, exercise
//	variant   block, round, exercise, name, easier (taken up or laid down)
//	finish    outcome (complete, stopped, interrupted), elapsed_s (wall time,
//	          pauses within, the time between two processes left out)
//	measure   block, round, exercise, name, side (left, right, both), try (from 1),
//	          measure (distance, height, count, time), value (cm, cm, a
//	          number, s; null: left out), way, practice
//	rating    rounds (completed, a number a block), rpe (0 to 10), pain, where,
//	          pain_level (0 to 10), no_pain (earlier pain taken back), note
//	correct   at (when it began), length_s (how long it took)
//	withdraw  nothing: the run is to count no more
//	restore   nothing: it is to count again
//
// # How it is read
//
// Lines of several runs may interleave, and lines of a run may stand in any
// order: they count in the order of n. Run and n together name a line, so that
// a journal that arrives twice, or grown, or put together from several copies
// counts once.
//
// Two copies that parted, one amended here and one there, have lines of one
// name that differ. What was said about the run (measure, rating, correct,
// withdraw, restore) all counts, from that number on in the order of at. Of
// two lines of the run itself that differ the first counts, and the reader
// says so.
//
// Every set that was done counts with its reps and contacts, those of a place
// that was done before among them; towards its round a place counts once. What
// was done counts at the moment of its own line. A rest that any work followed
// is held against what was prescribed, whatever ended it; one that none
// followed is left.
//
// Rounds and effort are as a later rating has them, field by field. Pain, where,
// how strong and the note of one rating are a statement: each stands, beside
// later ones. A later measure of the same place, side and try takes the earlier
// one's place, a later correct wins field by field. A run without a finish is
// unfinished, and is resumed from its own lines alone.
//
// A line that cannot be read, whose checksum does not fit, that has an
// impossible value, or that a newer version wrote, is reported by its number,
// kept in the file, and counts for nothing; whatever follows it is read. Two
// records on one line, because a line feed was lost, are both read. Numbers
// that are missing between those of a run are reported.
//
// # How it is written
//
// Each line is one write to a file opened for appending, under a lock that all
// processes share (the file's name with .lock), and is synced before the next.
// What the reader would refuse is not written. If the file does not end with a
// line feed, a line that a fault left torn keeps what it has and the next one
// begins on a line of its own. A process that is at a run holds a lock on a file
// named for it (.RUN.live), which the system frees however the process ends; it
// is removed at the run's end.
//
// # What is kept beside it
//
// A long journal has an index beside it (.NAME.index): the runs without their
// sets, and where their lines stand. It is of as much of the journal as still
// has the same length and CRC-32C, or whose file was not written to since; what
// follows is read. It can be deleted, and is never trusted over the journal.
package journal
