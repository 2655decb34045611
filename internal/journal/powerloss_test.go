package journal

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// lossyDisk is a file of a system that keeps what was synced, and of the rest no
// more than it pleases: what a power loss leaves is held against what Append
// has acknowledged.
type lossyDisk struct {
	synced []byte // survives
	all    []byte // as the process sees it
}

func (d *lossyDisk) Write(p []byte) (int, error) { d.all = append(d.all, p...); return len(p), nil }

func (d *lossyDisk) ReadAt(p []byte, off int64) (int, error) {
	return bytes.NewReader(d.all).ReadAt(p, off)
}

func (d *lossyDisk) Stat() (fs.FileInfo, error) { return sized{size: int64(len(d.all))}, nil }

func (d *lossyDisk) Truncate(size int64) error { d.all = d.all[:size]; return nil }

func (d *lossyDisk) Sync() error { d.synced = slices.Clone(d.all); return nil }

// sized knows nothing of a file but its size.
type sized struct {
	fs.FileInfo
	size int64
}

func (s sized) Size() int64 { return s.size }

var _ file = (*lossyDisk)(nil)

// crash is what stops the process in the middle of an append.
type crash struct{}

// crashing is a file whose power goes after so many operations.
type crashing struct {
	*lossyDisk
	left int
}

func (c *crashing) step() {
	if c.left--; c.left < 0 {
		panic(crash{})
	}
}

func (c *crashing) Write(p []byte) (int, error) { c.step(); return c.lossyDisk.Write(p) }

func (c *crashing) Sync() error { c.step(); return c.lossyDisk.Sync() }

// TestPowerLoss appends lines through power losses at any operation, each of
// which leaves what was synced and a part of what was written since: every line
// that Append acknowledged is read in the end, with its own text.
func TestPowerLoss(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		disk := &lossyDisk{}
		acknowledged := map[int]bool{}
		n := 0
		for range rapid.IntRange(1, 12).Draw(t, "processes") {
			power := &crashing{disk, rapid.IntRange(0, 12).Draw(t, "operations until the power goes")}
			for appendBatch(t, power, &n, acknowledged) {
			}
			written := disk.all[len(disk.synced):]
			kept := rapid.IntRange(0, len(written)).Draw(t, "bytes kept of what was not synced")
			disk.all = slices.Concat(disk.synced, written[:kept])
			if hole := rapid.IntRange(0, kept).Draw(t, "of them nothing but zeros"); hole > 0 {
				clear(disk.all[len(disk.all)-hole:])
			}
			disk.synced = slices.Clone(disk.all)
		}
		for e, err := range Read(bytes.NewReader(disk.all)) {
			if err == nil && e.Event == EventPause {
				delete(acknowledged, e.N)
			}
		}
		if len(acknowledged) > 0 {
			t.Fatalf("lines %v were acknowledged and are lost:\n%q", acknowledged, disk.all)
		}
	})
}

// appendBatch appends some lines. It reports whether the power is still there.
func appendBatch(t *rapid.T, f file, n *int, acknowledged map[int]bool) (on bool) {
	defer func() {
		if r := recover(); r != nil {
			if _, ok := r.(crash); !ok {
				panic(r)
			}
		}
	}()
	var lines []Line
	for range rapid.IntRange(1, 4).Draw(t, "lines") {
		*n++
		lines = append(lines, paused("RUN", *n))
	}
	if err := appendTo(f, lines, false); err != nil {
		panic(fmt.Sprint("append: ", err))
	}
	for _, l := range lines {
		acknowledged[l.N] = true
	}
	return true
}

var _ io.Writer = (*crashing)(nil)
