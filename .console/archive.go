//go:build unix

package main

import (
	"bytes"
	"compress/gzip"
	_ "embed"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
)

//go:embed init
var script []byte

// archive is a file system in the form that the kernel unpacks at its start: newc
// of cpio (Documentation/driver-api/early-userspace/buffer-format.rst).
type archive struct {
	bytes.Buffer
	folders map[string]bool
}

// The modes of a folder and of a file that can be run.
const (
	folder = 0o40755
	file   = 0o100755
)

// entry adds one entry.
func (a *archive) entry(name string, mode int, data []byte) {
	fmt.Fprintf(a, "070701%08x%08x%08x%08x%08x%08x%08x%08x%08x%08x%08x%08x%08x%s\x00",
		0, mode, 0, 0, 1, 0, len(data), 0, 0, 0, 0, len(name)+1, 0, name)
	a.align()
	a.Write(data)
	a.align()
}

func (a *archive) align() { a.Write(make([]byte, -a.Len()&3)) }

// add adds a file, and the folders that it lies in.
func (a *archive) add(name string, data []byte) {
	name = strings.TrimPrefix(name, "/")
	for i, c := range name {
		if c == '/' && !a.folders[name[:i]] {
			a.folders[name[:i]] = true
			a.entry(name[:i], folder, nil)
		}
	}
	a.entry(name, file, data)
}

// copy adds a file of this machine.
func (a *archive) copy(name, from string) error {
	data, err := os.ReadFile(from)
	if err == nil {
		a.add(name, data)
	}
	return err
}

// writeArchive writes the file system of the virtual machine: a shell, the program
// with the libraries that it is linked with, a font and files for the home folder.
func writeArchive(path, program string) error {
	a := &archive{folders: map[string]bool{}}
	a.add("init", script)
	copies := [][2]string{{"bin/busybox", "/bin/busybox"}, {"bin/coldfloor", program}}
	libraries, err := exec.Command("ldd", program).Output() // fails for one that is linked with none
	if err == nil {
		for _, l := range regexp.MustCompile(`(/\S+) \(0x`).FindAllSubmatch(libraries, -1) {
			copies = append(copies, [2]string{string(l[1]), string(l[1])})
		}
	}
	for _, f := range strings.FieldsFunc(*files, func(r rune) bool { return r == ',' }) {
		copies = append(copies, [2]string{"root/" + filepath.Base(f), f})
	}
	for _, c := range copies {
		if err := a.copy(c[0], c[1]); err != nil {
			return err
		}
	}
	if *font != "" {
		data, err := readFont(*font)
		if err != nil {
			return err
		}
		a.add("font", data)
	}
	a.entry("TRAILER!!!", 0, nil)
	return os.WriteFile(path, a.Bytes(), 0o644)
}

// readFont reads a font, which may be compressed.
func readFont(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	if !strings.HasSuffix(path, ".gz") {
		return io.ReadAll(f)
	}
	z, err := gzip.NewReader(f)
	if err != nil {
		return nil, err
	}
	return io.ReadAll(z)
}
