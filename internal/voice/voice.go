package voice

import (
	"cmp"
	"context"
	"iter"
	"math"
	"sync"

	"github.com/gopxl/beep/v2"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/sound"
)

// loudness is the peak of spoken words, below that of the cues.
const loudness = 0.6

// silence is the level up to which sound at either end of a rendering is cut
// off, so that words begin when they are meant to.
const silence = 0.005

// Voice speaks sessions. It renders what is to be said ahead of time; what is
// not ready when it is due is left unsaid, so that speech is never late. Its
// methods are safe for concurrent use.
type Voice struct {
	opts   Options
	speech *speech

	mu    sync.Mutex
	clips map[string]rendered    // by text
	calls map[string]*sound.Clip // by direction, likewise
	err   error                  // the first failure
}

// rendered is what came of rendering a text: its clip, or why there is none.
type rendered struct {
	clip *sound.Clip
	err  error
}

// New returns a voice that uses the system's own speech; the error says what
// to do if there is none.
func New(o Options) (*Voice, error) {
	s, err := findSpeech(o.Language.Code)
	if err != nil {
		return nil, err
	}
	return &Voice{opts: o, speech: s, clips: map[string]rendered{}, calls: map[string]*sound.Clip{}}, nil
}

// Prepare renders all that a run of p can say of its own accord, in the order
// of the plan, until done or ctx is, and returns the first failure in it. Ready,
// if not nil, is called when the first text is ready and when all are.
func (v *Voice) Prepare(ctx context.Context, p *plan.Plan, ready func()) error {
	var first error
	for i, s := range v.paced(p) {
		if ctx.Err() != nil {
			break
		}
		first = cmp.Or(first, v.render(ctx, s.Text))
		if s.Short != "" {
			first = cmp.Or(first, v.render(ctx, s.Short))
		}
		if i > 0 {
			continue
		}
		first = cmp.Or(first, v.renderCalls(ctx, p))
		if ready != nil {
			ready()
		}
	}
	if ready != nil {
		ready()
	}
	return first
}

// paced returns the script of a run of p that no key touches.
func (v *Voice) paced(p *plan.Plan) []Spoken {
	o := v.opts
	o.Run = engine.Options{AllPaced: true}
	return Script(p, sound.Beginning(p), o)
}

// Err returns the first failure to speak, if any.
func (v *Voice) Err() error {
	v.mu.Lock()
	defer v.mu.Unlock()
	return v.err
}

// render makes the clip of a text, unless that was tried before, and returns why
// there is none. If ctx is done it may make none and return no error.
func (v *Voice) render(ctx context.Context, text string) error {
	v.mu.Lock()
	was, ok := v.clips[text]
	v.mu.Unlock()
	if ok {
		return was.err
	}
	clip, err := v.clip(ctx, text)
	if ctx.Err() != nil {
		return nil
	}
	v.mu.Lock()
	defer v.mu.Unlock()
	v.clips[text] = rendered{clip, err}
	v.err = cmp.Or(v.err, err)
	return err
}

// renderCalls makes the clips of every direction that is called in p, and returns
// the first failure.
func (v *Voice) renderCalls(ctx context.Context, p *plan.Plan) (first error) {
	for direction := range directions(p) {
		first = cmp.Or(first, v.renderCall(ctx, direction))
	}
	return first
}

// directions yields every direction that is called in p, as often as it stands
// there.
func directions(p *plan.Plan) iter.Seq[string] {
	return func(yield func(string) bool) {
		for _, b := range p.Session.Blocks {
			for _, e := range b.Exercises {
				for _, direction := range e.Calls {
					if !yield(direction) {
						return
					}
				}
			}
		}
	}
}

// renderCall makes the clip of one direction, unless there is one.
func (v *Voice) renderCall(ctx context.Context, direction string) error {
	text := v.opts.Language.Direction(direction)
	err := v.render(ctx, text)
	v.mu.Lock()
	defer v.mu.Unlock()
	if words := v.clips[text].clip; words != nil && v.calls[direction] == nil {
		v.calls[direction] = sound.NewClip("call: "+direction, sound.Call, words.Samples())
	}
	return err
}

// Spoken returns the words that call a direction, nil while they are not
// ready. It never waits. It has the form of sound.Options.Spoken.
func (v *Voice) Spoken(direction string) *sound.Clip {
	v.mu.Lock()
	defer v.mu.Unlock()
	return v.calls[direction]
}

// clip speaks a text into a clip.
func (v *Voice) clip(ctx context.Context, text string) (*sound.Clip, error) {
	src, err := v.speech.render(ctx, v.opts.Language.Code, text)
	if err != nil {
		return nil, err
	}
	samples, err := decode(src)
	if err != nil {
		return nil, err
	}
	return sound.NewClip("words: "+text, sound.Word, level(samples)), nil
}

// mono returns the samples of a streamer, of its left channel.
func mono(s beep.Streamer) (out []float32) {
	chunk := make([][2]float64, 512)
	for {
		n, ok := s.Stream(chunk)
		if !ok {
			return out
		}
		for _, x := range chunk[:n] {
			out = append(out, float32(x[0]))
		}
	}
}

// level cuts the silence off both ends and brings the peak to loudness.
func level(samples []float32) []float32 {
	peak, first, last := 0.0, -1, 0
	for i, x := range samples {
		a := math.Abs(float64(x))
		peak = max(peak, a)
		if a > silence {
			if first < 0 {
				first = i
			}
			last = i + 1
		}
	}
	if first < 0 {
		return nil
	}
	out := make([]float32, last-first)
	for i, x := range samples[first:last] {
		out[i] = x * float32(loudness/peak)
	}
	return out
}

// Words returns what places, for a run with the given options, the ready part of
// what is to be said from the moment of a view on. It never waits. It has the
// form of sound.Options.Words.
func (v *Voice) Words(run engine.Options) func(*plan.Plan, engine.View) []sound.Placed {
	o := v.opts
	o.Run = run
	return func(p *plan.Plan, view engine.View) []sound.Placed {
		v.mu.Lock()
		defer v.mu.Unlock()
		var out []sound.Placed
		for _, s := range Script(p, view, o) {
			for _, text := range []string{s.Text, s.Short} {
				if clip := v.clips[text].clip; clip != nil && s.From+clip.Duration() <= s.Until {
					out = append(out, sound.Placed{At: s.From, Clip: clip})
					break
				}
			}
		}
		return out
	}
}
