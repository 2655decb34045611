package live

// Lack is why there is no sound.
type Lack int

// The reasons.
const (
	NoLack     Lack = iota // there is sound, or none is wanted
	NoDevice               // none could be opened
	DeviceLost             // it was there, and is not any more
	OverSSH                // the sound would come out of another machine
)

// Notice is what a player should know of the sound. The zero Notice is nothing.
type Notice struct {
	Lack Lack
	Bell bool // the terminal bell stands in for the cues
}

// Notice returns what there is to know of the sound just now.
func (l *Sound) Notice() Notice {
	l.mu.Lock()
	defer l.mu.Unlock()
	return Notice{Lack: l.lack, Bell: l.lack != NoLack && l.opts.Bell != nil}
}
