package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/briefing"
	"coldfloor/internal/journal"
	"coldfloor/internal/plain"
	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
	"coldfloor/internal/voice"
	"coldfloor/sessions/weeks"
	"coldfloor/sound"
	"coldfloor/sound/live"
	"coldfloor/tui"
	"coldfloor/tui/glyph"
)

// stage is one call of the run command.
type stage struct {
	options  *runOptions
	command  *cobra.Command
	settings settings.Player
	language *text.Language
	from     units.Length   // from where the screen is read
	plan     *plan.Plan     // nil: to be chosen
	weeks    *journal.Weeks // the plan of weeks and the day that it is for; nil: none
	season   *weeks.Plan    // that plan is of, or that the session is chosen from; nil: none
	voice    *voice.Voice   // nil: no words are spoken
}

// show runs the session on the screen, or as plain lines. What there is to say
// at the end is said once the log is closed, for not before is all of it on the
// disk.
func (s *stage) show() error {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer signal.Stop(signals)
	f := run.NewFlow(s.flowOptions())
	if !s.screen() {
		return errors.Join(s.plainly(f, signals), f.Close())
	}
	look := lookOf(s.options.background, s.settings)
	font := fontOf(s.command.OutOrStdout())
	f.OpenSound() // it can take seconds, and goes on while the player chooses
	closing, err := tui.Run(tui.Options{Flow: f, Reading: tui.Reading{From: s.from, Cell: s.settings.CellHeight},
		Glyphs: glyph.Best(os.Getenv, runtime.GOOS, font), Font: font, Look: look, Dull: os.Getenv("TERM") == "linux", Folder: ".", Season: s.onSeason(), Begins: keepSmall}, signals)
	err = errors.Join(err, f.Close())
	if closing != "" {
		fmt.Fprintln(s.command.OutOrStdout(), closing)
	}
	return err
}

// screen reports whether the screen is used.
func (s *stage) screen() bool {
	return !s.options.plain && isTerminal(s.command.OutOrStdout()) && os.Getenv("TERM") != "dumb"
}

// keyboard reports whether somebody can type.
func (s *stage) keyboard() bool { return isTerminal(s.command.InOrStdin()) }

// flowOptions returns how the run is done.
func (s *stage) flowOptions() run.Options {
	out := s.command.OutOrStdout()
	device := live.Options{Volume: float64(s.settings.Volume) / 100, Muted: s.options.mute, Screen: s.screen()}
	if isTerminal(out) {
		device.Bell = func() { _, _ = io.WriteString(out, "\a") }
	}
	o := run.Options{Plan: s.plan, Weeks: s.weeks, Season: s.season, Player: s.settings, Language: s.language, Speed: s.options.speed, Muted: s.options.mute, ByHand: s.options.byHand,
		NoKeys: !s.screen() && !s.keyboard(), Device: &device, Voice: s.voice,
		Cues: sound.Options{Pips: sound.DefaultPips, Clicks: s.settings.Clicks}, Seed: seedOf(s.options.seed)}
	if s.options.speed == 1 {
		o.Before = []run.Notice{briefing.Notice(s.settings, s.planOfWeeks(), s.language, time.Now)}
		o.Again = briefing.Again(s.settings, s.language)
	}
	if !s.options.noLog {
		o.Journal = s.options.journal
	}
	return o
}

// planOfWeeks returns the plan of weeks that is run or that the settings name,
// for its matches; nil if there is none, or it cannot be read: a session can be
// run all the same.
func (s *stage) planOfWeeks() *weeks.Plan {
	if s.season != nil || s.settings.Weeks == "" {
		return s.season
	}
	opened, err := weeks.Open(s.settings.Weeks)
	if err != nil {
		return nil
	}
	return opened.Plan
}

// plainly runs the session as lines.
func (s *stage) plainly(f *run.Flow, signals <-chan os.Signal) error {
	ctx, cancel := context.WithCancelCause(s.command.Context())
	defer cancel(nil)
	go func() {
		select {
		case sig := <-signals:
			if sig == os.Interrupt {
				cancel(plain.ErrInterrupted)
				return
			}
			cancel(nil)
		case <-ctx.Done():
		}
	}()
	o := plain.Options{Flow: f, Out: s.command.OutOrStdout(), Err: s.command.ErrOrStderr(), Stamps: s.options.stamps}
	if s.keyboard() {
		o.In = s.command.InOrStdin()
	}
	return plain.Run(ctx, o)
}
