package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"coldfloor/internal/run"
	"coldfloor/internal/units"
	"coldfloor/sound"
)

// runOptions are the flags of the run command.
type runOptions struct {
	language string
	day      dayFlags
	plain    bool
	stamps   bool
	speed    float64
	mute     bool
	journal  string
	noLog    bool
	byHand   bool
	distance string
	voice    string
	clicks   string
	seed     uint64
	settings string

	background string // of the terminal; empty: as in the settings
}

// newRun returns the command that runs a session.
func newRun() *cobra.Command {
	var o runOptions
	c := &cobra.Command{
		Use:   "run [SESSION|WEEKS]",
		Short: "Run a session, with screen, sound and log",
		Long: `Run a session: a built-in one by its name, or a file. Without one, choose from
a list. The keys are shown on the screen; any key that is not among them, or a
click of the mouse, ends the set in hand.

For a plan of weeks it shows today's session, what is next and what was missed;
Enter runs today's session. --on and --week name another day. If you name no
plan, the one under weeks in the settings is used.

If the output is not a terminal, or with --plain, it writes a line whenever
something happens, which begins with what to do; --stamps ends each line with
the time on the session's clock. Keys are then typed with Enter after them; ?
lists them.`,
		Args: argsError(cobra.MaximumNArgs(1)),
		RunE: func(c *cobra.Command, args []string) error { return o.run(c, args) },
	}
	o.add(c)
	return c
}

// add gives a command the flags.
func (o *runOptions) add(c *cobra.Command) {
	journalFlag(c.Flags(), &o.journal)
	settingsFlag(c, &o.settings)
	backgroundFlag(c, &o.background)
	f := c.Flags()
	f.BoolVar(&o.plain, "plain", false, "write lines instead of drawing a screen")
	f.BoolVar(&o.stamps, "stamps", false, "end each plain line with the time on the session's clock, M:SS.mmm")
	f.Float64Var(&o.speed, "speed", 1, "run `N` times as fast, to rehearse")
	f.BoolVar(&o.mute, "mute", false, "start with the sound off")
	f.BoolVar(&o.noLog, "no-log", false, "keep nothing in the journal")
	f.BoolVar(&o.byHand, "by-hand", false, "let every set of reps end by a key")
	f.StringVar(&o.distance, "distance", "", "read the screen from this `DISTANCE`, such as 4m")
	choiceFlag(c, &o.clicks, "clicks", "a soft click for each paced rep, `on|off` (default: as in the settings, or else on)", "on", "off")
	o.day.add(c)
	seedFlag(c, &o.seed)
	languageFlag(c, &o.language)
	voiceFlag(c, &o.voice)
}

// run runs the session that args name, or lets one be chosen.
func (o *runOptions) run(c *cobra.Command, args []string) error {
	if !(o.speed >= 0.1 && o.speed <= 1000) {
		return usageError{fmt.Sprintf("--speed %g is not between 0.1 and 1000", o.speed), "--speed 2 runs a session twice as fast"}
	}
	if o.journal == "" && !o.noLog {
		return usageError{"--journal names no file", "--no-log runs without a log"}
	}
	var from units.Length
	if o.distance != "" {
		var err error
		if from, err = units.ParseLength(o.distance); err != nil {
			return usageError{fmt.Sprintf("--distance %q %v", o.distance, err), "write it as 4m"}
		}
	}
	mine, err := loadSettings(o.settings)
	if err != nil {
		return err
	}
	language := languageOf(o.language, mine)
	mine.Language = language.Code // what is said and what is shown are one
	if o.clicks != "" {
		mine.Clicks = o.clicks == "on"
	}
	s := stage{options: o, command: c, settings: mine, language: language, from: from}
	if o.voice != "" {
		if o.speed != 1 {
			return usageError{"words take their time, and cannot be spoken at another speed", "leave out --voice or --speed"}
		}
		if s.voice, err = voiceOf(o.voice, mine, sound.DefaultPips); err != nil {
			return run.NoVoice(language, err)
		}
	}
	name := mine.Weeks
	if len(args) > 0 {
		name = args[0]
	}
	if name == "" && o.day.given() {
		return usageError{"--week and --on are for plans of weeks, and none is named", "name one, here or under weeks in the settings"}
	}
	if name != "" {
		if err := s.open(name); err != nil {
			return err
		}
	}
	return s.show()
}
