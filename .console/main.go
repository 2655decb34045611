//go:build unix

// Command console walks through the program on the text console of a real Linux
// kernel, in a virtual machine of QEMU, and takes pictures of it.
//
//	go run ./.console -kernel FILE [-font FILE] [-out DIR] STEP,…
//
// A STEP is a text to wait for on the screen, with + between several; text to
// type, in angle brackets; a key to press by QEMU's name, in square ones; or = and
// the name of a picture to take:
//
//	'<coldfloor\r>,Choose a session,[down],=choose,[ctrl-z],Stopped,<fg\r>'
//
// Each picture is a PNG, with what the console's cells hold as text beside it. A
// character that the console's font lacks is an error.
package main

import (
	"flag"
	"fmt"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

var (
	kernel  = flag.String("kernel", "", "the kernel: a `file` such as /boot/vmlinuz, of Linux 4.19 or later")
	options = flag.String("append", "", "more `options` of the kernel: vga=0x301 for a framebuffer")
	font    = flag.String("font", "", "the console's font, a `file` in the form PSF, also .gz; the kernel's own where empty")
	out     = flag.String("out", ".", "the `folder` for the pictures")
	files   = flag.String("files", "", "files for the home folder, with commas between them")
)

func main() {
	log.SetFlags(0)
	flag.Parse()
	if err := walk(strings.Split(strings.Join(flag.Args(), ","), ",")); err != nil {
		log.Fatal(err)
	}
}

// walk takes the steps on a console.
func walk(steps []string) error {
	dir, err := os.MkdirTemp("", "console")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	program := filepath.Join(dir, "coldfloor")
	build := exec.Command("go", "build", "-trimpath", "-ldflags", "-s -w", "-o", program, "./cmd/coldfloor")
	build.Env, build.Stderr = append(os.Environ(), "CGO_ENABLED=0"), os.Stderr
	if err := build.Run(); err != nil {
		return err
	}
	archive := filepath.Join(dir, "initrd")
	if err := writeArchive(archive, program); err != nil {
		return err
	}
	m, err := boot(dir, archive)
	if err != nil {
		return err
	}
	defer m.close()
	for _, step := range steps {
		if err := m.do(step); err != nil {
			return fmt.Errorf("%s: %w", step, err)
		}
	}
	return nil
}

// do takes one step.
func (m *machine) do(step string) error {
	switch {
	case strings.HasPrefix(step, "<"):
		return m.write(strings.ReplaceAll(strings.TrimSuffix(step[1:], ">"), `\r`, "\r"))
	case strings.HasPrefix(step, "["):
		return m.press(strings.TrimSuffix(step[1:], "]"))
	case strings.HasPrefix(step, "="):
		return m.picture(filepath.Join(*out, step[1:]))
	}
	return m.await(strings.Split(step, "+"))
}

// patience is how long a text is waited for.
const patience = time.Minute

// await waits until the screen shows every one of the texts.
func (m *machine) await(texts []string) error {
	for end := time.Now().Add(patience); ; time.Sleep(50 * time.Millisecond) {
		s, err := m.screen()
		if err != nil {
			return err
		}
		shown := s.text()
		missing := ""
		for _, t := range texts {
			if !strings.Contains(shown, t) {
				missing = t
			}
		}
		if missing == "" {
			return nil
		}
		if time.Now().After(end) {
			return fmt.Errorf("%q is not shown:\n%s", missing, shown)
		}
	}
}
