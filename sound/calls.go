package sound

import (
	"fmt"
	"sync"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// The tones of calls: one, two or three of one of seven pitches. Three and seven
// share no factor, so that no two of up to 21 directions sound alike, and two
// that stand side by side in a list differ in both. The pitches are none of
// those of the signals of one pitch.
var (
	callPitches = [...]int{b4, fs5, d6, e5, b5, a4, fs6}
	callCounts  = [...]struct{ tone, gap time.Duration }{{200 * ms, 0}, {80 * ms, 120 * ms}, {60 * ms, 40 * ms}}
)

// callTones are the clips of directions 0, 1, 2 …, made once.
var callTones = sync.OnceValue(func() []*Clip {
	list := make([]*Clip, sessions.MaxCalls)
	for d := range list {
		pitch, count := callPitches[d%len(callPitches)], callCounts[d%len(callCounts)]
		notes := []note{{pitch, count.tone}}
		for range TonesOf(d) - 1 {
			notes = append(notes, note{rest, count.gap}, note{pitch, count.tone})
		}
		list[d] = newCue(fmt.Sprintf("call %d", d+1), loud, notes...)
		list[d].Kind = Call
	}
	return list
})

// CallTones returns the tones that call the direction of an index, from 0 to
// sessions.MaxCalls-1.
func CallTones(direction int) *Clip { return callTones()[direction] }

// TonesOf returns how many tones call the direction of an index: one, two or
// three.
func TonesOf(direction int) int { return direction%len(callCounts) + 1 }

// calls books the directions that are called in step i: spoken if there are
// words that end before the next call, as tones if not.
func (d *drawing) calls(i int, s span) {
	for c := range d.plan.Calls(i, d.opts.Seed, s.end-s.start) {
		d.add(s.start+c.At, d.callClip(i, c))
	}
}

// callClip returns what is heard of a call.
func (d *drawing) callClip(i int, c plan.Call) *Clip {
	if d.opts.Spoken != nil {
		if w := d.opts.Spoken(d.plan.Exercise(i).Calls[c.Direction]); w != nil && w.Duration() < c.Gap {
			return w
		}
	}
	return CallTones(c.Direction)
}
