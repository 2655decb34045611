package sound

import "time"

const ms = time.Millisecond

// Loudness of the two sorts of cue: those that call the player, and the clicks
// that go along with the work.
const (
	loud = 0.8
	soft = 0.16
)

// The cues. They are told apart with eyes shut by rhythm and contour as well
// as by pitch. Fundamentals stay below 2.5 kHz, the bound within which signals
// for people of all ages are kept by ISO 24500:2010 (scope) and JIS S
// 0013:2011; the on and off times of those standards are not claimed.
var (
	GetReady = newCue("get ready", loud, note{a5, 90 * ms})

	WorkStarts = newCue("work starts", loud, note{a6, 450 * ms})

	ChangeSide = newCue("change side", loud,
		note{e6, 110 * ms}, note{a5, 110 * ms}, note{e6, 110 * ms})

	ChangeExercise = newCue("change exercise", loud,
		note{a5, 90 * ms}, note{rest, 60 * ms}, note{cs6, 90 * ms}, note{rest, 60 * ms}, note{e6, 90 * ms})

	RestStarts = newCue("rest starts", loud,
		note{e6, 220 * ms}, note{a5, 380 * ms})

	TenLeft = newCue("ten seconds left", loud,
		note{cs6, 70 * ms}, note{rest, 110 * ms}, note{cs6, 70 * ms})

	Done = newCue("done", loud,
		note{a5, 160 * ms}, note{cs6, 160 * ms}, note{e6, 160 * ms}, note{a6, 700 * ms})

	Lowering = newCue("lowering", soft, note{a4, 40 * ms})

	Rising = newCue("rising", soft, note{e6, 25 * ms})

	Rep = newCue("rep", soft, note{e5, 25 * ms})
)

// Cues lists every cue in the order in which a session brings them. The tones of
// calls are not among them; see CallTones.
func Cues() []*Clip {
	return []*Clip{GetReady, WorkStarts, Lowering, Rising, Rep, ChangeSide, ChangeExercise, RestStarts, TenLeft, Done}
}
