//go:build unix

package main

import (
	"bufio"
	"errors"
	"fmt"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
	"unicode"
)

// machine is a virtual machine.
type machine struct {
	qemu    *exec.Cmd
	dir     string
	monitor *line // QEMU's, for keys and pictures
	shell   *line // of the serial port
	lacking int   // how the font shows a character that it lacks
}

// line is a connection that is written to and answers.
type line struct {
	net.Conn
	in *bufio.Reader
}

// dial connects to a socket as soon as it is there.
func dial(path string) (*line, error) {
	for end := time.Now().Add(patience); ; time.Sleep(20 * time.Millisecond) {
		c, err := net.Dial("unix", path)
		if err == nil {
			return &line{c, bufio.NewReader(c)}, nil
		}
		if time.Now().After(end) {
			return nil, err
		}
	}
}

// until reads until a text, and returns what came before it.
func (l *line) until(text string) (string, error) {
	if err := l.SetReadDeadline(time.Now().Add(patience)); err != nil {
		return "", err
	}
	var b strings.Builder
	for !strings.HasSuffix(b.String(), text) {
		c, err := l.in.ReadByte()
		if err != nil {
			return "", fmt.Errorf("%w after %q", err, b.String())
		}
		b.WriteByte(c)
	}
	return strings.TrimSuffix(b.String(), text), nil
}

// boot starts a machine, one that is emulated, which every host can.
func boot(dir, archive string) (*machine, error) {
	monitor, serial := filepath.Join(dir, "monitor"), filepath.Join(dir, "serial")
	m := &machine{dir: dir, qemu: exec.Command("qemu-system-x86_64", "-accel", "tcg,tb-size=256", "-m", "512", "-vga", "std", "-display", "none", "-nic", "none", "-no-reboot",
		"-kernel", *kernel, "-initrd", archive, "-append", "quiet loglevel=0 console=tty0 consoleblank=0 "+*options,
		"-monitor", "unix:"+monitor+",server=on,wait=off", "-serial", "unix:"+serial+",server=on,wait=on")}
	if err := m.qemu.Start(); err != nil {
		return nil, err
	}
	err := m.connect(monitor, serial)
	if err == nil {
		err = m.learn()
	}
	if err != nil {
		_ = m.qemu.Process.Kill()
		_ = m.qemu.Wait()
		return nil, err
	}
	return m, nil
}

// connect connects to both lines, and waits until the machine is ready.
func (m *machine) connect(monitor, serial string) (err error) {
	if m.shell, err = dial(serial); err != nil {
		return err
	}
	if m.monitor, err = dial(monitor); err != nil {
		return err
	}
	if _, err = m.monitor.until("(qemu) "); err != nil {
		return err
	}
	_, err = m.shell.until("ready\n")
	return err
}

// close ends the machine.
func (m *machine) close() {
	_, _ = fmt.Fprintln(m.monitor, "quit")
	_ = m.qemu.Wait()
}

// tell has QEMU do something.
func (m *machine) tell(command string) error {
	if _, err := fmt.Fprintln(m.monitor, command); err != nil {
		return err
	}
	_, err := m.monitor.until("(qemu) ")
	return err
}

// run runs a command in the machine and returns what it prints.
func (m *machine) run(command string) (string, error) {
	const end = "that is all\n"
	if _, err := fmt.Fprintf(m.shell, "%s; echo 'that is' all\n", command); err != nil {
		return "", err
	}
	return m.shell.until(end)
}

// keys are QEMU's names of the keys that are not called as what they type.
var keys = map[rune]string{'\r': "ret", ' ': "spc", '-': "minus", '.': "dot", '/': "slash", ';': "semicolon", '=': "equal", '+': "shift-equal", '?': "shift-slash", '_': "shift-minus"}

// write types a text, on an American keyboard.
func (m *machine) write(text string) error {
	for _, r := range text {
		name := keys[r]
		switch {
		case name != "":
		case unicode.IsUpper(r):
			name = "shift-" + string(unicode.ToLower(r))
		case r < 0x80 && (unicode.IsLower(r) || unicode.IsDigit(r)):
			name = string(r)
		default:
			return fmt.Errorf("no key is known for %q", r)
		}
		if err := m.press(name); err != nil {
			return err
		}
	}
	return nil
}

// press presses a key, and holds it for as long as QEMU's keyboard takes.
func (m *machine) press(key string) error {
	if strings.Trim(key, "abcdefghijklmnopqrstuvwxyz0123456789_-") != "" {
		return errors.New("this is not the name of a key")
	}
	if err := m.tell("sendkey " + key + " 20"); err != nil {
		return err
	}
	time.Sleep(60 * time.Millisecond)
	return nil
}

// dump has QEMU write a picture of the screen.
func (m *machine) dump() ([]byte, error) {
	path := filepath.Join(m.dir, "picture")
	if err := m.tell("screendump " + path); err != nil {
		return nil, err
	}
	return os.ReadFile(path)
}
