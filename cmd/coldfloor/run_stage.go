package main

import (
	"coldfloor/internal/run"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime"
	"syscall"

	"github.com/spf13/cobra"

	"coldfloor/internal/plain"
	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/internal/voice"
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
	from     units.Length // from where the screen is read
	plan     *plan.Plan   // nil: to be chosen
	voice    *voice.Voice // nil: no words are spoken
}

// show runs the session on the screen, or as plain lines.
func (s *stage) show() (err error) {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer signal.Stop(signals)
	h := s.host(s.screen())
	defer func() { err = errors.Join(err, h.Close()) }()
	if s.screen() {
		return s.onScreen(h, signals)
	}
	return s.plainly(h, signals)
}

// screen reports whether the screen is used.
func (s *stage) screen() bool {
	return !s.options.plain && isTerminal(s.command.OutOrStdout()) && os.Getenv("TERM") != "dumb"
}

// host returns what the run is hosted by.
func (s *stage) host(screen bool) *run.Host {
	out := s.command.OutOrStdout()
	given := live.Options{Volume: float64(s.settings.Volume) / 100, Muted: s.options.mute, Screen: screen}
	if isTerminal(out) {
		given.Bell = func() { _, _ = io.WriteString(out, "\a") }
	}
	return &run.Host{Settings: s.settings, Speed: s.options.speed, Muted: s.options.mute, ByHand: s.options.byHand,
		AllPaced: !screen && !isTerminal(s.command.InOrStdin()), Live: &given, Voice: s.voice,
		Heard: sound.Options{Pips: sound.DefaultPips, Clicks: s.settings.Clicks}, Seed: seedOf(s.options.seed)}
}

// onScreen runs the session on the screen.
func (s *stage) onScreen(h *run.Host, signals <-chan os.Signal) error {
	look, err := lookOf(s.options.background, s.settings)
	if err != nil {
		return err
	}
	o := tui.Options{Host: h, Plan: s.plan, Reading: tui.Reading{From: s.from, Cell: s.settings.CellHeight},
		Glyphs: glyph.Best(os.Getenv, runtime.GOOS), Look: look, Folder: "."}
	if !s.options.noLog {
		o.Journal = s.options.journal
	}
	h.OpenSound() // it can take seconds, and goes on while the player chooses
	closing, err := tui.Run(o, signals)
	if closing != "" {
		fmt.Fprintln(s.command.OutOrStdout(), closing)
	}
	return err
}

// plainly runs the session as one line an event.
func (s *stage) plainly(h *run.Host, signals <-chan os.Signal) error {
	if s.plan == nil {
		return usageError{"no session is named", "coldfloor sessions lists the built-in ones"}
	}
	ctx, cancel := context.WithCancelCause(s.command.Context())
	defer cancel(nil)
	go func() {
		select {
		case sig := <-signals:
			cancel(map[bool]error{true: plain.ErrInterrupted}[sig == os.Interrupt])
		case <-ctx.Done():
		}
	}()
	o := plain.Options{Host: h, Plan: s.plan, Out: s.command.OutOrStdout(), Err: s.command.ErrOrStderr()}
	if !s.options.noLog {
		o.Journal = s.options.journal
	}
	if isTerminal(s.command.InOrStdin()) {
		o.In = s.command.InOrStdin()
	}
	return plain.Run(ctx, o)
}
