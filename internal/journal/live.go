package journal

import (
	"crypto/rand"
	"os"

	"coldfloor/internal/fault"

	"github.com/gofrs/flock"
)

// ErrLive is returned for a run that another process is still at.
var ErrLive = fault.New("end it there first", "it is still running in another window")

// claim is the sign that a process is at a run: a locked file beside the
// journal. The system frees the lock of a process that dies, however it dies.
type claim struct{ lock *flock.Flock }

// newRun returns a run's name: random, so that journals of any number of
// machines can be put together.
func newRun() string { return rand.Text() }

func (j *Journal) claimPath(run string) string { return j.path + "." + run + ".live" }

// claim marks run as being at work in this process.
func (j *Journal) claim(run string) (*claim, error) {
	l := flock.New(j.claimPath(run), flock.SetPermissions(0o600))
	for {
		ok, err := l.TryLock()
		if err != nil {
			return nil, unwritable(j.path, err)
		}
		if !ok {
			return nil, ErrLive
		}
		// The one before may have removed the file between our opening and our
		// locking it; then the lock is on a file that nobody else can find.
		ours, err := l.Stat()
		if err == nil {
			if there, err := os.Stat(l.Path()); err == nil && os.SameFile(ours, there) {
				return &claim{l}, nil
			}
		}
		l.Close()
	}
}

// release ends the claim. The file goes first: once unlocked it may be
// another's. Windows removes no open file, and gets a second try.
func (c *claim) release() {
	gone := os.Remove(c.lock.Path()) == nil
	c.lock.Close()
	if !gone {
		_ = os.Remove(c.lock.Path())
	}
}

// Live reports whether a process is at run.
func (j *Journal) Live(run string) bool {
	l := flock.New(j.claimPath(run), flock.SetFlag(os.O_RDONLY))
	ok, err := l.TryLock()
	defer l.Close()
	return err == nil && !ok
}
