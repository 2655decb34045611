package voice

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"

	"coldfloor/internal/fault"
)

// speech is a speech program of the system. It turns text, given on standard
// input so that no text is ever taken for an option, into a WAV file.
type speech struct {
	program string
	args    func(language, wav string) []string
}

// NoSpeech says that the system has no speech program that is known.
type NoSpeech struct {
	Programs []string // that would do, the best first
}

// Error implements error.
func (n *NoSpeech) Error() string {
	return "no speech program found: there is no " + strings.Join(n.Programs, " and no ")
}

// Silent says that a speech program ended well and wrote no sound.
type Silent struct {
	Program string
}

// Error implements error.
func (s *Silent) Error() string { return s.Program + " wrote no sound" }

// findSpeech returns the system's own speech for a language.
func findSpeech(language string) (*speech, error) {
	for _, s := range speeches() {
		if path, err := exec.LookPath(s.program); err == nil {
			s.program = path
			return &s, nil
		}
	}
	var names []string
	for _, s := range speeches() {
		names = append(names, s.program)
	}
	hint := "put " + names[0] + " on the PATH, or leave --voice out"
	if runtime.GOOS != "windows" && runtime.GOOS != "darwin" {
		hint = "install " + names[0] + ", or leave --voice out"
	}
	return nil, fault.With(hint, &NoSpeech{names})
}

// speeches returns the speech programs that a system may have, best first.
func speeches() []speech {
	switch runtime.GOOS {
	case "darwin":
		return []speech{{"say", func(language, wav string) []string {
			return append(sayVoice(language), "-o", wav, "--data-format=LEI16@22050", "-f", "-")
		}}}
	case "windows":
		return []speech{{"powershell", func(language, wav string) []string {
			return []string{"-NoProfile", "-NonInteractive", "-Command", strings.NewReplacer("LANGUAGE", language,
				"WAV", strings.ReplaceAll(wav, "'", "''")).Replace(systemSpeech)}
		}}}
	}
	espeak := func(language, wav string) []string {
		return []string{"-v", language, "-s", "165", "-w", wav, "--stdin"}
	}
	return []speech{{"espeak-ng", espeak}, {"espeak", espeak}}
}

// systemSpeech has Windows speak to a file with a voice of the language, or
// its usual voice if it has none.
const systemSpeech = `[Console]::InputEncoding = [Text.Encoding]::UTF8
Add-Type -AssemblyName System.Speech
$s = New-Object System.Speech.Synthesis.SpeechSynthesizer
$v = $s.GetInstalledVoices() | Where-Object { $_.Enabled -and $_.VoiceInfo.Culture.TwoLetterISOLanguageName -eq 'LANGUAGE' } | Select-Object -First 1
if ($v) { $s.SelectVoice($v.VoiceInfo.Name) }
$s.SetOutputToWaveFile('WAV')
$s.Speak([Console]::In.ReadToEnd())
$s.Dispose()`

// sayVoice returns the options that choose the first installed voice of a
// language on macOS, none if there is none.
func sayVoice(language string) []string {
	list, err := exec.Command("say", "-v", "?").Output()
	if err != nil {
		return nil
	}
	return voiceIn(string(list), language)
}

// voiceIn returns the options that choose the first voice of a language in the
// list. A line of it reads "Name   de_DE    # a sentence".
func voiceIn(list, language string) []string {
	for line := range strings.Lines(list) {
		before, _, _ := strings.Cut(line, "#")
		fields := strings.Fields(before)
		if n := len(fields); n >= 2 && strings.HasPrefix(fields[n-1], language+"_") {
			return []string{"-v", strings.Join(fields[:n-1], " ")}
		}
	}
	return nil
}

// render speaks text and returns the WAV file's bytes.
func (s *speech) render(ctx context.Context, language, text string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "coldfloor-voice")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	wav := filepath.Join(dir, "words.wav")
	c := exec.CommandContext(ctx, s.program, s.args(language, wav)...)
	c.Stdin = strings.NewReader(text)
	if out, err := c.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%s: %w %s", filepath.Base(s.program), err, strings.TrimSpace(string(out)))
	}
	src, err := os.ReadFile(wav)
	if err != nil || len(src) == 0 {
		return nil, fault.With("try it by itself, or leave --voice out", &Silent{filepath.Base(s.program)})
	}
	return src, nil
}
