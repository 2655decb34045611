package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/sound"
	"coldfloor/sound/track"
)

// trackOptions are the flags of the track command.
type trackOptions struct {
	day   dayFlags
	log   string // journal
	files track.Files
	pips  int
	tempo bool
	voice string
	seed  uint64

	language string
}

// newTrack returns the command that writes a session as audio.
func newTrack() *cobra.Command {
	var o trackOptions
	c := &cobra.Command{
		Use:   "track SESSION|WEEKS -o FILE.flac|.wav",
		Short: "Write a session as an audio track, for a player with a phone",
		Long: `Write the whole session as an audio track with every cue in its place, for a
player who has no computer at hand. The ending of FILE names the format. Sets
that end by hand take their paced length. Each block is a chapter, called as the
player reads it.

In a plan of weeks it is today's session, or that of the day that --on names.

coldfloor sounds plays the cues one by one, to learn them.`,
		Args: argsError(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error { return o.run(c, args[0]) },
	}
	f := c.Flags()
	f.StringVarP(&o.files.Track, "output", "o", "", "the `FILE` to write: .flac or .wav")
	f.StringVar(&o.files.Cues, "cues", "", "also write time, sample and name of each cue to a CSV `FILE`")
	f.IntVar(&o.pips, "pips", sound.DefaultPips, "get-ready pips before a start, `N` seconds down")
	f.BoolVar(&o.tempo, "tempo", false, "add a soft click for each rep, lowering and rising told apart if there is a tempo")
	seedFlag(c, &o.seed)
	f.BoolVar(&o.files.Force, "force", false, "replace files that are there")
	voiceFlag(c, &o.voice)
	languageFlag(c, &o.language)
	o.day.add(c)
	journalFlag(c.Flags(), &o.log)
	return c
}

// run writes the track of the named session.
func (o *trackOptions) run(c *cobra.Command, name string) error {
	if err := o.check(); err != nil {
		return err
	}
	p, err := o.day.one(c, name, o.log)
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(c.Context(), os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer stop()
	mine, err := settings.Load()
	if err != nil {
		return err
	}
	language := languageOf(o.language, mine)
	mine.Language = language.Code // what is said and what the chapters are called are one
	heard := sound.Options{Pips: o.pips, Clicks: o.tempo, Seed: seedOf(o.seed)}
	if err := o.speak(ctx, p, mine, &heard); err != nil {
		return err
	}
	progress := newProgress(c.ErrOrStderr(), "writing the track")
	o.files.Inputs = inputs(name)
	err = o.files.Write(ctx, language.Headed(p), heard,
		func(written, all time.Duration) { progress.tell(int64(written), int64(all)) })
	progress.end()
	if err == nil && p.HasCalls() {
		fmt.Fprintf(c.ErrOrStderr(), "coldfloor: the directions are called in the order of --seed %d\n", heard.Seed)
	}
	switch {
	case errors.Is(err, context.Canceled):
		return errors.New("interrupted, nothing was written")
	}
	return err
}

// speak renders what is spoken in the track of p, if anything is, and adds it to
// what is heard.
func (o *trackOptions) speak(ctx context.Context, p *plan.Plan, mine settings.Player, heard *sound.Options) error {
	if o.voice == "" {
		return nil
	}
	v, err := voiceOf(o.voice, mine, o.pips)
	if err != nil {
		return err
	}
	return addWords(ctx, v, p, heard)
}

// check reports what is wrong with the flags.
func (o *trackOptions) check() error {
	_, ok := track.FormatOf(o.files.Track)
	switch {
	case o.files.Track == "":
		return usageError{"no file to write is given", "add -o and a file, such as -o session.flac"}
	case !ok:
		return usageError{fmt.Sprintf("%q does not end in .flac or .wav", o.files.Track), "the ending names the format, such as -o session.flac"}
	case o.files.Cues != "" && filepath.Clean(o.files.Cues) == filepath.Clean(o.files.Track):
		return usageError{"the track and its list of cues are one file", "give --cues a name of its own, such as cues.csv"}
	case o.pips < 0 || o.pips > sound.MaxPips:
		return usageError{fmt.Sprintf("--pips %d is not between 0 and %d", o.pips, sound.MaxPips), "--pips 3 counts the last three seconds down"}
	}
	return nil
}
