package track

import (
	"context"
	"fmt"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/wholefile"
	"coldfloor/sound"
)

// Files says where a track goes.
type Files struct {
	Track  string   // its ending names the format
	Cues   string   // for the list of its cues as CSV; empty: none is written
	Force  bool     // replace files that are there
	Inputs []string // the files that are read, which are not replaced even so
}

// Write writes a track and the list of its cues. They come to stand in their
// places once both are whole; if that fails, or ctx is done, nothing is left
// behind.
func (t Files) Write(ctx context.Context, p *plan.Plan, o sound.Options, progress func(written, all time.Duration)) error {
	format, ok := FormatOf(t.Track)
	if !ok {
		return fmt.Errorf("%q does not end in .flac or .wav", t.Track)
	}
	var batch wholefile.Batch
	defer batch.Discard()
	track, err := batch.Create(t.Track, t.options())
	if err != nil {
		return err
	}
	var cues *wholefile.File
	if t.Cues != "" {
		if cues, err = batch.Create(t.Cues, t.options()); err != nil {
			return err
		}
	}
	if err := Write(ctx, track, format, p, o, progress); err != nil {
		return track.Failed(err)
	}
	if cues != nil {
		if err := WriteCueList(cues, p, o); err != nil {
			return cues.Failed(err)
		}
	}
	return batch.Commit()
}

// options returns how its files are written.
func (t Files) options() wholefile.Options {
	return wholefile.Options{Mode: 0o644, Force: t.Force, Inputs: t.Inputs}
}
