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
//	event  what it tells of; the key of that name holds the rest
//
// The events, and what each holds; lengths of time are in seconds and end in
// _s, places (block, round, exercise) count from 1, what is false, zero or
// empty may be left out:
//
//	started   title, source (built-in name, path, or "paper"), text (the session
//	          file), player, total_s and blocks (what was prescribed: title,
//	          rounds, sets, contacts a block), program (its version), speed
//	          (of a rehearsal)
//	set       block, round, exercise, name, outcome (done, partial, skipped), end
//	          (clock, finish, skip, stop), by_hand, planned_s and taken_s (work,
//	          both sides), paused_s, reps, planned_reps, contacts, sides (in the
//	          order worked), easier, paced (every side ended by the clock)
//	rest      block, round, exercise (of the set it follows), prescribed_s,
//	          taken_s (by the wall), paused_s (of taken_s), end (clock, skip,
//	          back, repeat, stop)
//	pause     cause (key, or gap: the machine was away)
//	resume    restart (in a later process), step (that it goes on with)
//	move      cause (skip, back, repeat), kind, block, round, exercise (of the
//	          step that was left)
//	extend    kind, by_s, block, round, exercise
//	variant   block, round, exercise, name, easier (taken up or laid down)
//	finish    outcome (complete, stopped, interrupted), elapsed_s (wall time,
//	          pauses within, the time between two processes left out)
//	rating    rounds (completed, a number a block), rpe (0 to 10), pain, where,
//	          note; what is left out stays as it was
//	correct   at (when it began), length_s (how long it took)
//	withdraw  nothing: the run is to count no more
//	restore   nothing: it is to count again
//
// # How it is read
//
// Lines of several runs may interleave, and lines of a run may stand in any
// order: they count in the order of n. Run and n together name a line for
// good, so that a journal that arrives twice, or grown, or put together from
// several copies counts once; of two lines of one name that differ the first
// counts, and the reader says so. A later set takes the place of an earlier
// one of the same block, round and exercise; a later rating or correct wins
// field by field. A run without a finish is unfinished, and is gone on with
// from its own lines alone.
//
// A line that cannot be read, that says what cannot be, or that a newer
// version wrote, is told of by its number, kept in the file, and counts for
// nothing; whatever follows it is read.
//
// # How it is written
//
// Each line is one write to a file opened for appending, under a lock that all
// processes share (the file's name with .lock), and is synced before the next.
// Where the file does not end with a line feed, a line that a fault left torn
// keeps what it has and the next one begins anew. A process that is at a run
// holds a lock on a file named for it (.RUN.live), which the system frees
// however the process ends; it is removed at the run's end.
package journal
