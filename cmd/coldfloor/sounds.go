package main

import (
	"fmt"
	"io"
	"os"
	"os/signal"
	"slices"
	"strings"
	"syscall"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"coldfloor/internal/run"
	"coldfloor/internal/safetext"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/sessions"
	"coldfloor/sound"
	"coldfloor/sound/live"
)

// callsOf is the built-in session whose calls are played where none is named.
const callsOf = "shadow-corners"

// soundsFlags are the flags of the sounds command.
type soundsFlags struct {
	mute     bool
	language string
	log      string
	day      dayFlags
}

// newSounds returns the command that plays the cues.
func newSounds() *cobra.Command {
	var o soundsFlags
	c := &cobra.Command{
		Use:   "sounds [SESSION|WEEKS]",
		Short: "Play each cue with its meaning, to learn them",
		Long: `Play each cue of a session, one after the other, and say what it means; then
the tones that call each direction of SESSION, or of ` + callsOf + ` if none is
named. Without a sound device, or with --mute, it only prints the list.

In a plan of weeks it is today's session, or that of the day that --on names.`,
		Args: argsError(cobra.MaximumNArgs(1)),
		RunE: func(c *cobra.Command, args []string) error { return o.run(c, append(args, callsOf)[0]) },
	}
	c.Flags().BoolVar(&o.mute, "mute", false, "only print the list")
	languageFlag(c, &o.language)
	o.day.add(c)
	journalFlag(c.Flags(), &o.log)
	return c
}

// lesson is a clip with what is said of it.
type lesson struct {
	clip        *sound.Clip
	name, tells string
}

// lessons returns every cue, and the tones of the calls of a session, with what
// they mean.
func lessons(l *text.Language, s *sessions.Session) []lesson {
	t := &l.Sounds
	list := []lesson{}
	meant := map[*sound.Clip]text.Meant{
		sound.GetReady: t.GetReady, sound.WorkStarts: t.WorkStarts, sound.Lowering: t.Lowering, sound.Rising: t.Rising, sound.Rep: t.Rep,
		sound.ChangeSide: t.ChangeSide, sound.ChangeExercise: t.ChangeExercise, sound.RestStarts: t.RestStarts, sound.TenLeft: t.TenLeft, sound.Done: t.Done,
	}
	for _, c := range sound.Cues() {
		list = append(list, lesson{c, meant[c].Name, meant[c].Tells})
	}
	return append(list, callLessons(l, s)...)
}

// callLessons returns the tones of the calls of a session, each once, with the
// exercises that call by them: one direction may have other tones in another.
func callLessons(l *text.Language, s *sessions.Session) []lesson {
	type call struct {
		tones     int // the index of the direction, which its tones go by
		direction string
	}
	var calls []call
	in := map[call][]string{}
	for _, b := range s.Blocks {
		for _, e := range b.Exercises {
			for d, direction := range e.Calls {
				c := call{d, l.Direction(direction)}
				if in[c] == nil {
					calls = append(calls, c)
				}
				if name := safetext.Clean(l.Name(e.Name)); !slices.Contains(in[c], name) {
					in[c] = append(in[c], name)
				}
			}
		}
	}
	list := make([]lesson, len(calls))
	for i, c := range calls {
		tells := l.Sounds.CallTones(sound.TonesOf(c.tones)) + ": " + strings.Join(in[c], "; ")
		list[i] = lesson{sound.CallTones(c.tones), c.direction, tells}
	}
	return list
}

// run prints the list of cues, and plays each where it can be heard.
func (o *soundsFlags) run(c *cobra.Command, name string) error {
	mine, err := settings.Load()
	if err != nil {
		return err
	}
	p, err := o.day.one(c, name, o.log)
	if err != nil {
		return err
	}
	language := languageOf(o.language, mine)
	list := lessons(language, p.Session)
	if o.mute {
		printLessons(c.OutOrStdout(), list...)
		return nil
	}
	ctx, stop := signal.NotifyContext(c.Context(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	device := live.New(live.Options{Volume: float64(mine.Volume) / 100})
	defer device.Close()
	clips := make([]*sound.Clip, len(list))
	for i, l := range list {
		clips[i] = l.clip
	}
	if !device.Ready(ctx) {
		printLessons(c.OutOrStdout(), list...)
	} else if device.Demonstrate(ctx, clips, func(i int) { printLessons(c.OutOrStdout(), list[i]) }) != nil {
		return nil // interrupted
	}
	if why := run.SoundNotice(language, device.Notice()); why != "" {
		fmt.Fprintf(c.ErrOrStderr(), "coldfloor: %s\n", why)
	}
	return nil
}

// printLessons prints a line for each.
func printLessons(out io.Writer, list ...lesson) {
	const column = 18
	for _, l := range list {
		fmt.Fprintf(out, "%s%*s%s\n", l.name, max(1, column-utf8.RuneCountInString(l.name)), "", l.tells)
	}
}
