package run

import (
	"errors"
	"io/fs"
	"syscall"

	"coldfloor/internal/journal"
	"coldfloor/internal/text"
	"coldfloor/internal/voice"
	"coldfloor/internal/wholefile"
	"coldfloor/sound/live"
)

// Why says in the player's language what went wrong, in a sentence without its
// full stop. What the system says of it is left in the system's own words if
// there are none for it here.
func Why(l *text.Language, err error) string {
	w := &l.Trouble
	var lost *linesLost
	var unwritable *journal.Unwritable
	var file *fs.PathError
	var said *worded
	switch {
	case errors.As(err, &said):
		return said.text
	case errors.As(err, &lost):
		return w.LinesLost(lost.n, Why(l, lost.err))
	case errors.As(err, &unwritable):
		return w.CannotWrite(unwritable.File, cause(w, unwritable.Err))
	case errors.As(err, &file):
		return file.Path + ": " + cause(w, file.Err)
	}
	return cause(w, err)
}

// cause says what is wrong with a run or its log.
func cause(w *text.Trouble, err error) string {
	var parse *unreadable
	if errors.As(err, &parse) {
		return w.CannotParse(parse.err.Error())
	}
	if wholefile.IsFull(err) {
		return w.Full
	}
	for _, c := range []struct {
		err  error
		said string
	}{
		{journal.ErrLive, w.StillRunning}, {journal.ErrEnded, w.HasEnded}, {ErrNothingLeft, w.NothingLeft},
		{errPrescribedLost, w.PrescribedLost}, {errChanged, w.Changed}, {errNotKept, w.NotKept}, {errNotLogged, w.NotLogged},
		{journal.ErrLocked, w.Locked}, {journal.ErrNotRegular, w.NotRegular}, {journal.ErrNotJournal, w.NotAJournal},
		{syscall.EROFS, w.ReadOnly}, {syscall.ENOTDIR, w.NoFolder}, {fs.ErrPermission, w.Denied}, {fs.ErrNotExist, w.Absent},
	} {
		if errors.Is(err, c.err) {
			return c.said
		}
	}
	return w.Other(err.Error())
}

// worded is an error in the player's own language. What it was before is found
// by errors.Is alone: it has no hint, for its words say what to do.
type worded struct {
	text string
	err  error
}

// Error implements error.
func (w *worded) Error() string { return w.text }

// Is reports whether it is about target.
func (w *worded) Is(target error) bool { return errors.Is(w.err, target) }

// inWords returns err in the player's language; nil for nil.
func (f *Flow) inWords(err error) error {
	if err == nil {
		return nil
	}
	return &worded{Why(f.Language(), err), err}
}

// SoundNotice says in the player's language what a device lacks, and nothing if
// it lacks nothing.
func SoundNotice(l *text.Language, n live.Notice) string {
	w := &l.Trouble
	why := map[live.Lack]string{live.NoDevice: w.NoDevice, live.DeviceLost: w.DeviceLost, live.OverSSH: w.OverSSH}[n.Lack]
	if n.Bell {
		return w.BellInstead(why)
	}
	return why
}

// speechTrouble says in the player's language why nothing is spoken.
func speechTrouble(l *text.Language, err error) string {
	if silent := (*voice.Silent)(nil); errors.As(err, &silent) {
		return l.Trouble.Speech(l.Trouble.Silent(silent.Program))
	}
	return l.Trouble.Speech(err.Error())
}

// NoVoice returns err in the player's language if it is that the system has no
// speech, and else as it is.
func NoVoice(l *text.Language, err error) error {
	if none := (*voice.NoSpeech)(nil); errors.As(err, &none) {
		return &worded{l.Trouble.NoSpeech(none.Programs[0]), err}
	}
	return err
}
