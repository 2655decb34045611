package journal

import (
	"crypto/rand"
	"os"

	"coldfloor/internal/fault"

	"github.com/gofrs/flock"
)

// ErrLive is returned for a run that another process is still at.
var ErrLive = fault.New("end it there first", "it is still running in another window")

// Claim is the sign that a process is at a run: a locked file beside the
// journal. The system frees the lock of a process that dies, however it dies.
type Claim struct{ lock *flock.Flock }

// NewName returns a name for a run: random, so that journals of any number of
// machines can be put together.
func NewName() string { return rand.Text() }

func (j *Journal) claimPath(run string) string { return j.lockName() + "." + run + ".live" }

// Claim marks run as being at work in this process. It fails with ErrLive while
// another process is at it.
func (j *Journal) Claim(run string) (*Claim, error) {
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
				return &Claim{l}, nil
			}
		}
		l.Close()
	}
}

// Release ends the claim. The file goes first: once unlocked it may be
// another's. Windows removes no open file, and gets a second try.
func (c *Claim) Release() {
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
