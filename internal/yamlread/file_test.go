//go:build unix

package yamlread

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
	"unicode/utf16"

	"coldfloor/internal/fault"
)

// encode returns s in UTF-16 with its byte order mark.
func encode(s string, little bool) []byte {
	var out []byte
	for _, u := range utf16.Encode([]rune("\ufeff" + s)) {
		if little {
			out = append(out, byte(u), byte(u>>8))
		} else {
			out = append(out, byte(u>>8), byte(u))
		}
	}
	return out
}

func TestReadFile(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	const text = "title: Füße 🏸\r\n"
	os.WriteFile("little", encode(text, true), 0o600)
	os.WriteFile("big", encode(text, false), 0o600)
	os.WriteFile("plain", []byte(text), 0o600)
	for _, name := range []string{"little", "big", "plain"} {
		if got, err := ReadFile(name); err != nil || string(got) != text {
			t.Errorf("%s: %q, %v", name, got, err)
		}
	}
	if _, err := ReadFile("none"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("none: %v", err)
	}
	if err := syscall.Mkfifo("pipe", 0o600); err != nil {
		t.Skip(err)
	}
	said := make(chan string, 1)
	go func() {
		_, err := ReadFile("pipe")
		said <- fault.Text(err)
	}()
	select {
	case got := <-said:
		if want := "\"pipe\" is a pipe or a device, not a file\nhint: give what comes through it as standard input, with - for the file's name"; got != want {
			t.Errorf("a pipe: %q, want %q", got, want)
		}
	case <-time.After(30 * time.Second):
		t.Fatal("a pipe that nobody writes to is waited for")
	}
	if _, err := ReadFile(dir); err == nil || !strings.Contains(err.Error(), filepath.Base(dir)+"\" is a folder") {
		t.Errorf("a folder: %v", err)
	}
}

// UTF-16 with its mark reads as the same text in UTF-8 does; without it, and
// in any other file of bytes, there is one clear line.
func TestEncodings(t *testing.T) {
	read := func(src []byte) string {
		f, m := Parse("f", src, "a")
		got := ""
		if m != nil {
			got = m.Text("a", 40)
		}
		if err := f.Err(); err != nil {
			return err.Error()
		}
		return got
	}
	const text = "a: \"Füße 🏸\"\n"
	for name, src := range map[string][]byte{"UTF-8": []byte(text), "little": encode(text, true), "big": encode(text, false)} {
		if got := read(src); got != "Füße 🏸" {
			t.Errorf("%s: %q", name, got)
		}
	}
	want := "f:1:1: this is not a text file\nhint: save it as text, in UTF-8"
	if got := read(encode(text, true)[2:]); got != want {
		t.Errorf("without a mark: %q", got)
	}
}

// JSON writes a character above U+FFFF as a surrogate pair (RFC 8259, section
// 7: "\uD834\uDD1E" is the G clef, U+1D11E).
func TestSurrogatePairs(t *testing.T) {
	for text, want := range map[string]string{
		`{"a": "\uD834\uDD1E"}`:                      "\U0001D11E",
		`{"a": "smash \ud83c\udff8, again"}`:         "smash 🏸, again",
		`{"a": "\ud83c\udff8\uDBFF\uDFFF"}`:          "🏸\U0010FFFF",
		`{"a": "\uD800\uDC00", "b": '\ud83c'}`:       "f:1:23: unknown key \"b\"\nhint: known here: a",
		`{"a": "\ud83c"}`:                            "f:1:1: this quoted text holds a wrong escape\nhint: write \\\\ for a backslash, or use single quotes",
		`{"a": "\udff8\ud83c"}`:                      "f:1:1: this quoted text holds a wrong escape\nhint: write \\\\ for a backslash, or use single quotes",
		"a: '\\ud83c\\udff8 stays'":                  `\ud83c\udff8 stays`,
		`{"a": "\\ud83c\\udff8 too"}`:                `\ud83c\udff8 too`,
		"x: \"\\ud83c\\udff8\"\na: '\\uD83C\\uDFF8'": "f:1:1: unknown key \"x\"\nhint: known here: a",
	} {
		f, m := Parse("f", []byte(text), "a")
		got := ""
		if m != nil {
			got = m.Text("a", 40)
		}
		if err := f.Err(); err != nil {
			got = err.Error()
		}
		if got != want {
			t.Errorf("%s reads as %q, want %q", text, got, want)
		}
	}
	f, m := Parse("f", []byte("b: \"\\ud83c\\udff8\"\na: '\\uD83C\\uDFF8'"), "a", "b")
	if a, b := m.Text("a", 40), m.Text("b", 40); f.Err() != nil || b != "🏸" || !strings.EqualFold(a, `\ud83c\udff8`) {
		t.Errorf("%q and %q, %v", a, b, f.Err())
	}
}
