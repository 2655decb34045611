package main

import (
	"fmt"
	"os"
	"os/signal"
	"syscall"

	"github.com/spf13/cobra"

	"coldfloor/internal/run"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/sound"
	"coldfloor/sound/live"
)

// newSounds returns the command that plays the cues.
func newSounds() *cobra.Command {
	var mute bool
	c := &cobra.Command{
		Use:   "sounds",
		Short: "Play each cue with its meaning, to learn them",
		Long: `Play each cue of a session, one after the other, and say what it means. Without
a sound device, or with --mute, it only prints the list.`,
		Args: argsError(cobra.NoArgs),
		RunE: func(c *cobra.Command, args []string) error { return playSounds(c, mute) },
	}
	c.Flags().BoolVar(&mute, "mute", false, "only print the list")
	return c
}

// playSounds prints the list of cues, and plays each if it can be heard.
func playSounds(c *cobra.Command, mute bool) error {
	tell := func(cue sound.Cue) { fmt.Fprintf(c.OutOrStdout(), "%-18s%s\n", cue.Name, cue.Meaning) }
	if mute {
		tellSounds(tell)
		return nil
	}
	mine, err := settings.Load()
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(c.Context(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	device := live.New(live.Options{Volume: float64(mine.Volume) / 100})
	defer device.Close()
	if !device.Ready(ctx) {
		tellSounds(tell)
	} else if device.Demonstrate(ctx, tell) != nil {
		return nil // interrupted
	}
	if why := run.SoundNotice(&text.English, device.Notice()); why != "" {
		fmt.Fprintf(c.ErrOrStderr(), "coldfloor: %s\n", why)
	}
	return nil
}

// tellSounds lists every cue.
func tellSounds(tell func(sound.Cue)) {
	for _, cue := range sound.Cues() {
		tell(cue)
	}
}
