package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"slices"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/handout"
	"coldfloor/internal/paper"
	"coldfloor/internal/plan"
	"coldfloor/internal/players"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/internal/voice"
	"coldfloor/sound"
)

// handoutOptions are the flags of the handout command.
type handoutOptions struct {
	handout.Options
	settings, players string
	paper, alarm      string
	voice, language   string
	noTracks          bool
	voices            map[string]*voice.Voice // by language: what players' sessions have in common is rendered once
}

// newHandout returns the command that writes all that players need for a week.
func newHandout() *cobra.Command {
	var o handoutOptions
	c := &cobra.Command{
		Use:   "handout WEEKS -o FOLDER",
		Short: "Write all that a player needs for a week, with or without the program",
		Long: `Write all that a player needs for one week of a plan: the week and the sheets of
its sessions as one PDF, a track of each session, the sessions as files, the
calendar, and how to send back what was done.

With --players each player of that file gets a folder, with their own easier
exercises and days away. Each session is checked against that player and their
room; what the check finds is listed by player, and an error in one player's
folder does not stop the others. Repeated, the command writes only what changed.`,
		Args: argsError(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error { return o.run(c, args[0]) },
	}
	settingsFlag(c, &o.settings)
	f := c.Flags()
	weekFlag(c, &o.Week, "week `N`; by default this week")
	f.StringVarP(&o.Folder, "output", "o", "", "the `FOLDER` to write to")
	f.StringVar(&o.players, "players", "", "the players' `FILE`")
	f.StringVar(&o.paper, "paper", paper.Sizes[0].Name, "the `SIZE` of the paper: a4 or letter")
	f.StringVar(&o.alarm, "alarm", "", "in the calendar, remind this `TIME` before a session at a time of day, such as 30min")
	f.BoolVar(&o.noTracks, "no-tracks", false, "write no tracks")
	voiceFlag(c, &o.voice)
	languageFlag(c, &o.language)
	return c
}

// run writes the handouts and says what was written.
func (o *handoutOptions) run(c *cobra.Command, name string) error {
	if err := o.read(c, name); err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(c.Context(), os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer stop()
	progress := newProgress(c.ErrOrStderr(), "writing the handouts")
	o.voices = map[string]*voice.Voice{}
	o.Progress = func(done, all int) { progress.tell(int64(done), int64(all)) }
	if !o.noTracks {
		o.Heard = o.heard
	}
	given, err := handout.Write(ctx, o.Options)
	progress.end()
	if err := handout.Text(c.OutOrStdout(), given); err != nil {
		return err
	}
	if errors.Is(err, context.Canceled) {
		return errors.New("interrupted; what is listed was written whole")
	}
	if err == nil && slices.ContainsFunc(given, func(g handout.Given) bool { return g.Err != nil }) {
		return errors.New("some handouts are incomplete")
	}
	return err
}

// read reads the files and checks the flags.
func (o *handoutOptions) read(c *cobra.Command, name string) (err error) {
	if o.Folder == "" {
		return usageError{"no folder to write to is given", "add -o and a folder, such as -o week-3"}
	}
	i := slices.IndexFunc(paper.Sizes, func(p paper.Size) bool { return p.Name == o.paper })
	if i < 0 {
		return usageError{fmt.Sprintf("there is no paper %q", o.paper), "write --paper a4 or --paper letter"}
	}
	o.Paper, o.Now = paper.Sizes[i], time.Now()
	if o.alarm != "" {
		if o.Alarm, err = units.ParseDuration(o.alarm); err != nil {
			return usageError{fmt.Sprintf("--alarm %q %v", o.alarm, err), units.DurationHint}
		}
	}
	if o.Own, err = loadSettings(o.settings); err != nil {
		return err
	}
	if o.players != "" {
		if o.Players, err = players.Read(o.players); err != nil {
			return err
		}
	}
	if o.Plan, err = openWeeks(c, name); err != nil {
		return err
	}
	if err := players.CheckEasier(o.Players, o.Plan); err != nil {
		return err
	}
	o.setLanguages()
	return o.weekMeant()
}

// setLanguages gives each player a language: their own in the players' file, or
// else that of the flag, of the settings or of the system.
func (o *handoutOptions) setLanguages() {
	o.Own.Language = languageOf(o.language, o.Own).Code
	for i := range o.Players {
		p := &o.Players[i]
		p.Language = cmp.Or(p.Language, o.Own.Language)
	}
}

// weekMeant fills in today's week and refuses one that the plan does not have.
func (o *handoutOptions) weekMeant() error {
	if o.Week == 0 {
		o.Week = o.Plan.WeekOf(units.DateOf(o.Now))
		if o.Week < 1 || o.Week > o.Plan.Count {
			return usageError{"today is outside the plan", fmt.Sprintf("add --week and a number from 1 to %d", o.Plan.Count)}
		}
	}
	return checkWeek(o.Plan, o.Week)
}

// heard returns what is heard in the track of p for a player.
func (o *handoutOptions) heard(ctx context.Context, p *plan.Plan, player *settings.Player) (handout.Heard, error) {
	heard := handout.Heard{Cues: sound.Options{Pips: sound.DefaultPips, Clicks: player.Clicks, Seed: 1}}
	if o.voice == "" {
		return heard, nil
	}
	v, ok := o.voices[player.Language]
	if !ok {
		var err error
		if v, err = voiceOf(o.voice, *player, heard.Cues.Pips); err != nil {
			return heard, err
		}
		o.voices[player.Language] = v
	}
	heard.Speak = func(ctx context.Context, heard *sound.Options) error { return addWords(ctx, v, p, heard) }
	var err error
	heard.Print, err = v.Print(ctx, p)
	return heard, err
}
