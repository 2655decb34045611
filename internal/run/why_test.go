package run

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"syscall"
	"testing"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/text"
	"coldfloor/internal/text/texttest"
	"coldfloor/internal/voice"
	"coldfloor/sound/live"
)

// TestWhy: whatever can go wrong with a run or its log is said in the player's
// words, with the file that it is about; nothing of the program's own is left.
func TestWhy(t *testing.T) {
	l := texttest.Marked()
	for _, err := range []error{
		journal.ErrLive, journal.ErrEnded, journal.ErrLocked, journal.ErrNotRegular, journal.ErrNotJournal,
		ErrNothingLeft, errPrescribedLost, errChanged, errNotKept, errNotLogged,
		&linesLost{2, syscall.ENOSPC},
		fault.With("hint of the command's", &journal.Unwritable{File: "/x", Err: &fs.PathError{Op: "open", Path: "/x", Err: syscall.EACCES}}),
		&journal.Unwritable{File: "/x", Err: fmt.Errorf("again: %w", syscall.EROFS)},
		&fs.PathError{Op: "open", Path: "/x", Err: syscall.ENOENT},
	} {
		said := Why(l, err)
		if words := texttest.Unmarked(said); said == "" || len(words) > 0 {
			t.Errorf("%v: %q in %q", err, words, said)
		}
		if strings.Contains(err.Error(), "/x") && !strings.Contains(said, "/x") {
			t.Errorf("%v: %q names no file", err, said)
		}
	}
	if said := Why(&text.German, errors.New("I/O error")); said != "Meldung des Systems: I/O error" {
		t.Errorf("what there are no words for: %q", said)
	}
	if said := Why(&text.German, &unreadable{errors.New("line 3")}); said != "ihre Vorgabe ist nicht lesbar (line 3)" {
		t.Errorf("a session that cannot be read: %q", said)
	}
}

// TestWordedOnce: an error in the player's words stays as it is, and is found by
// what it was.
func TestWordedOnce(t *testing.T) {
	f := NewFlow(Options{Language: &text.German})
	err := f.inWords(journal.ErrLive)
	if !errors.Is(err, journal.ErrLive) || Why(&text.English, err) != err.Error() || fault.Hint(err) != "" {
		t.Errorf("%v, hint %q", err, fault.Hint(err))
	}
	if f.inWords(nil) != nil {
		t.Error("nothing went wrong")
	}
}

// TestSoundNotices: what is missing of the sound, and that a bell that cannot
// ring is not promised.
func TestSoundNotices(t *testing.T) {
	for n, want := range map[live.Notice]string{
		{}:                                  "",
		{Lack: live.NoDevice}:               "kein Tongerät",
		{Lack: live.DeviceLost, Bell: true}: "das Tongerät ist weg, dafür die Terminalglocke",
		{Lack: live.OverSSH, Bell: true}:    "kein Ton über SSH, dafür die Terminalglocke",
	} {
		if got := SoundNotice(&text.German, n); got != want {
			t.Errorf("%+v: %q, want %q", n, got, want)
		}
	}
	if err := NoVoice(&text.German, &voice.NoSpeech{Programs: []string{"espeak-ng"}}); !strings.Contains(err.Error(), "installiere espeak-ng") {
		t.Error(err)
	}
	if said := speechTrouble(texttest.Marked(), fmt.Errorf("again: %w", &voice.Silent{Program: "espeak-ng"})); len(texttest.Unmarked(said, "espeak-ng")) > 0 {
		t.Error(said)
	}
	if other := errors.New("wrongly used"); NoVoice(&text.German, other) != other {
		t.Error("what is no lack of speech is changed")
	}
}
