// Package plain runs a session without taking over the screen: one line a
// moment, for screen readers, plain terminals and pipes.
//
// A line begins with what to do and says no more than there is time to hear:
//
//	work Pogo hops, 10 reps, round 1 of 3
//
// The words that a line may begin with are ready (the lead-in), work, switch
// sides, next exercise, rest, ten seconds, wait, pause, count-in, more,
// variant, notice and finish. A direction that is called is a line of its word
// alone, if that can be read in the time and is not spoken. With stamps each line
// ends with its moment on the session's clock, in brackets.
package plain
