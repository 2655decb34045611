package runs

import (
	"cmp"
	"errors"
	"io"
	"os"
	"runtime"
	"slices"
	"sync"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
)

// share is the lines of some of the files, that follow each other, so that
// several can be read side by side and the first of all still comes first.
type share struct {
	files       []int // of the pile's
	bound       int   // bytes of coded lines in memory
	blocks      map[string]*block
	open        *block // whose lines are being read
	coded       []byte // lines of it that it does not have yet
	held        int    // bytes
	taken       int64  // bytes of coded lines, wherever they are
	spills      []*spill
	encoder     codec
	temporaries string // folder
}

// share shares the files out, about the same number of bytes to each processor,
// and returns how many they are in all.
func (p *Pile) share() (total int64) {
	sizes := make([]int64, len(p.Files))
	for i := range p.Files {
		if info, err := os.Stat(p.Files[i].Path); err == nil && p.Files[i].Err == nil {
			sizes[i] = info.Size()
			total += sizes[i]
		}
	}
	n := max(1, min(runtime.GOMAXPROCS(0), len(p.Files)))
	for range n {
		p.shares = append(p.shares, &share{bound: p.opts.Bound / n, blocks: map[string]*block{}, temporaries: p.opts.TempDir})
	}
	before := int64(0)
	for i, size := range sizes {
		at := 0
		if total > 0 {
			at = min(n-1, int((before+size/2)*int64(n)/total))
		}
		p.shares[at].files = append(p.shares[at].files, i)
		before += size
	}
	return total
}

// read reads every share's files. The error is one of a temporary file.
func (p *Pile) read(total int64) error {
	p.counted.total = total
	errs := make([]error, len(p.shares))
	var all sync.WaitGroup
	for i, h := range p.shares {
		all.Go(func() {
			for _, f := range h.files {
				if p.Files[f].Err == nil && errs[i] == nil {
					errs[i] = h.file(f, &p.Files[f], p.counted)
				}
			}
		})
	}
	all.Wait()
	return errors.Join(errs...)
}

// file reads one journal. The error is one of the temporary file alone.
func (h *share) file(i int, file *File, c *counted) error {
	f, err := os.Open(file.Path)
	if err != nil {
		file.Err = reason(err)
		return nil
	}
	defer f.Close()
	return h.lines(i, file, &counter{r: f, all: c})
}

// lines takes every line that can be used.
func (h *share) lines(i int, file *File, r io.Reader) error {
	for e, err := range journal.Pass(r) {
		var d *journal.Damage
		switch {
		case err == nil:
			file.Lines++
			if err := h.add(i, &e.Line); err != nil {
				return err
			}
			continue
		case !errors.As(err, &d):
			file.Err = err
			return h.close()
		case d.Whole:
			continue
		case d.Unknown:
			file.Unknown++
		default:
			file.Damaged++
		}
		if file.First == nil {
			file.First = d
		}
	}
	return h.close()
}

// add takes one line.
func (h *share) add(file int, l *journal.Line) error {
	if h.open == nil || h.open.run != l.Run || len(h.coded) >= h.bound {
		if err := h.close(); err != nil {
			return err
		}
		b := h.blocks[l.Run]
		if b == nil {
			b = &block{run: l.Run}
			h.blocks[l.Run] = b
			h.held += cost
		}
		h.open = b
	}
	h.coded = h.open.add(h.coded, &h.encoder, file, l)
	return nil
}

// close gives the run that is being read its lines, and makes room if those
// were too many.
func (h *share) close() error {
	if h.open == nil {
		return nil
	}
	h.open.data = slices.Concat(h.open.data, h.coded) // no more memory than they need
	h.held += len(h.coded)
	h.taken += int64(len(h.coded))
	h.open, h.coded = nil, h.coded[:0]
	if h.held < h.bound {
		return nil
	}
	s, err := writeSpill(h.temporaries, h.blocks, h.files[len(h.files)-1]+1)
	if err != nil {
		return fault.New("free some room, or name another folder in TMPDIR", "cannot keep what was read in a temporary file: %w", err)
	}
	h.spills = append(h.spills, s)
	clear(h.blocks)
	h.held = 0
	return nil
}

// counted is how far the reading of all files has come.
type counted struct {
	mu          sync.Mutex
	read, total int64
	tell        func(read, total int64) // nil: nobody
	stopped     func() error            // why the reading is to end
}

// add counts bytes that were read, and returns why no more are to be.
func (c *counted) add(n int64) error {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.read += n
	if c.tell != nil {
		c.tell(c.read, max(c.total, c.read))
	}
	return c.stopped()
}

// counter tells of the bytes that pass.
type counter struct {
	r   io.Reader
	all *counted
}

// Read reads as its reader does.
func (c *counter) Read(b []byte) (int, error) {
	n, err := c.r.Read(b)
	return n, cmp.Or(c.all.add(int64(n)), err)
}
