package voice

import (
	"context"
	"crypto/sha256"
	"encoding/binary"
	"fmt"

	"coldfloor/internal/plan"
)

// Print returns what stands for all that Prepare renders of p: as long as it is
// the same, so is every word and its time. It renders one text alone, which
// Prepare renders too: how that sounds stands for the speech program and its
// voice, and the texts stand for the rest.
func (v *Voice) Print(ctx context.Context, p *plan.Plan) ([]byte, error) {
	text := v.opts.Language.Done()
	if err := v.render(ctx, text); err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	v.mu.Lock()
	samples := v.clips[text].clip.Samples()
	v.mu.Unlock()
	h := sha256.New()
	_ = binary.Write(h, binary.LittleEndian, samples) // a hash takes all
	for _, s := range v.paced(p) {
		fmt.Fprintf(h, "%q %q %d %d\n", s.Text, s.Short, s.From, s.Until)
	}
	for direction := range directions(p) {
		fmt.Fprintf(h, "%q %q\n", direction, v.opts.Language.Direction(direction))
	}
	return h.Sum(nil), nil
}
