package main

import (
	"context"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/internal/voice"
	"coldfloor/sound"
)

// ownLanguage stands for the language of the settings.
const ownLanguage = "settings"

// countFrom is the number from which the lead-in is spoken down.
const countFrom = 5

// voiceFlag declares --voice, which may stand alone.
func voiceFlag(c *cobra.Command, value *string) {
	choiceFlag(c, value, "voice", "speak what comes next, the side and the rest; --voice="+
		strings.Join(voice.Languages(), "|")+" chooses the `LANGUAGE`, else the settings do", append(voice.Languages(), ownLanguage)...)
	c.Flags().Lookup("voice").NoOptDefVal = ownLanguage
}

// voiceOf returns the voice that a --voice flag asks for.
func voiceOf(flag string, mine settings.Player, pips int) (*voice.Voice, error) {
	code := flag
	if code == ownLanguage {
		code = text.Of(mine.Language, os.Getenv).Code
	}
	if code == "" {
		code = voice.Languages()[0]
	}
	l, err := voice.Find(code)
	if err != nil {
		return nil, usageError{err.Error(), "--voice=" + voice.Languages()[0]}
	}
	return voice.New(voice.Options{Language: l, Pips: pips, Count: countFrom})
}

// addWords renders what is spoken in the track of p and adds it to what is heard.
func addWords(ctx context.Context, v *voice.Voice, p *plan.Plan, heard *sound.Options) error {
	if err := v.Prepare(ctx, p, nil); err != nil {
		return err
	}
	heard.Words, heard.Spoken = v.Words(engine.Options{AllPaced: true}), v.Spoken
	return nil
}
