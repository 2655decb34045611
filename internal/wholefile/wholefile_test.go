package wholefile

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"coldfloor/internal/fault"
)

var note = &Kind{Name: "a note", Marks: []string{"made by us"}}

func TestWrite(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	put := func(name, content string) {
		if err := os.WriteFile(name, []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	put("ours", strings.Repeat("x", 3*ends)+"made by us")
	put("foreign", strings.Repeat("x", ends+1)+"made by us"+strings.Repeat("x", ends+1))
	put("session.yaml", "title: Hops")
	if err := os.Symlink("session.yaml", "link"); err != nil {
		t.Fatal(err)
	}
	if err := os.Link("session.yaml", "twin"); err != nil {
		t.Fatal(err)
	}
	os.Mkdir("folder", 0o700)
	for _, c := range []struct {
		name  string
		force bool
		want  string
	}{
		{"new", false, ""},
		{"ours", false, ""},
		{"foreign", false, "\"foreign\" is there already and is not a note\nhint: name another file, or add --force to replace it"},
		{"foreign", true, ""},
		{"session.yaml", true, "\"session.yaml\" is read by this command, and is not written over\nhint: name another file to write"},
		{"./link", true, "\"./link\" is read by this command, and is not written over\nhint: name another file to write"},
		{"twin", true, "\"twin\" is read by this command, and is not written over\nhint: name another file to write"},
		{"folder", true, "\"folder\" is a folder\nhint: name a file in it"},
		{os.DevNull, true, "\"" + os.DevNull + "\" is not a file that can be replaced\nhint: name another"},
		{"no\x1b[2J/such", true, `there is no folder "no\x1b[2J" to write into` + "\nhint: make it first, or name another"},
		{"-", true, "cannot write to \"-\" here\nhint: name a file or a folder"},
		{"./-", false, ""},
		{"session.yaml/x", true, "cannot write \"session.yaml/x\": not a directory\nhint: name another file"},
	} {
		err := Write(c.name, []byte("made by us, whole"), Options{Mode: 0o644, Force: c.force, Inputs: []string{"session.yaml", "first-hops", ""}, Ours: note})
		if got := text(err); got != c.want {
			t.Errorf("Write(%q, force %v) = %s, want %s", c.name, c.force, got, c.want)
		}
		if src, _ := os.ReadFile(c.name); err == nil && string(src) != "made by us, whole" {
			t.Errorf("%s holds %q", c.name, src)
		}
	}
	if src, _ := os.ReadFile("session.yaml"); string(src) != "title: Hops" {
		t.Errorf("the session now holds %q", src)
	}
	nothingLeft(t, dir)
}

// TestFirm offers no force where the command has none.
func TestFirm(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("there", []byte("mine"), 0o600)
	const want = "\"there\" is there already and is not a note\nhint: name another file, or move this one away"
	if got := text(Check("there", Options{Firm: true, Ours: note})); got != want {
		t.Errorf("Check says %s, want %s", got, want)
	}
}

// TestFolder makes folders, and says why one cannot be.
func TestFolder(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("file", nil, 0o600)
	for name, want := range map[string]string{
		"a/b": "", ".": "",
		"-":      "cannot write to \"-\" here\nhint: name a file or a folder",
		"file":   "\"file\" is a file, not a folder\nhint: name another folder",
		"file/a": "cannot make the folder \"file/a\": not a directory\nhint: name a folder that you can write in",
	} {
		if got := text(Folder(name, 0o700)); got != want {
			t.Errorf("Folder(%q) says %s, want %s", name, got, want)
		}
	}
	if info, err := os.Stat("a/b"); err != nil || !info.IsDir() {
		t.Errorf("a/b: %v", err)
	}
}

func text(err error) string {
	if err == nil {
		return ""
	}
	return fault.Text(err)
}

func nothingLeft(t *testing.T, dir string) {
	t.Helper()
	if left, _ := filepath.Glob(filepath.Join(dir, ".coldfloor-*")); len(left) > 0 {
		t.Errorf("left behind: %q", left)
	}
}

// A link that stands in the place goes on pointing where it did.
func TestThroughLink(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("real", []byte("old"), 0o600)
	os.Symlink("real", "link")
	if err := Write("link", []byte("new"), Options{Mode: 0o600, Force: true}); err != nil {
		t.Fatal(err)
	}
	if src, _ := os.ReadFile("real"); string(src) != "new" {
		t.Errorf("the file behind the link holds %q", src)
	}
}

func TestMode(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := Write("a", nil, Options{Mode: 0o600}); err != nil {
		t.Fatal(err)
	}
	if info, _ := os.Stat("a"); runtime.GOOS != "windows" && info.Mode() != 0o600 {
		t.Errorf("mode %v", info.Mode())
	}
}

// If one of several files cannot be put in its place, all places are as they
// were.
func TestAllOrNone(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	os.WriteFile("b", []byte("old b"), 0o600)
	var batch Batch
	for _, name := range []string{"a", "b", "c"} {
		f, err := batch.Create(name, Options{Mode: 0o600, Force: true})
		if err != nil {
			t.Fatal(err)
		}
		f.Write([]byte("new " + name))
	}
	os.MkdirAll("c/held", 0o700) // no file can be put here any more
	if err := batch.Commit(); err == nil || !strings.HasPrefix(err.Error(), `cannot write "c": `) {
		t.Errorf("Commit = %v", err)
	}
	if _, err := os.Stat("a"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a: %v", err)
	}
	if src, _ := os.ReadFile("b"); string(src) != "old b" {
		t.Errorf("b holds %q", src)
	}
	nothingLeft(t, dir)
	if _, err := batch.Create("a", Options{Mode: 0o600}); err != nil {
		t.Fatal(err)
	}
	if _, err := batch.Create("./a", Options{Mode: 0o600}); err == nil || !strings.Contains(err.Error(), "two files") {
		t.Errorf("one place for two files: %v", err)
	}
	batch.Discard()
	nothingLeft(t, dir)
}

func TestCommitSeveral(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	os.WriteFile("b", []byte("old b"), 0o600)
	var batch Batch
	defer batch.Discard()
	for _, name := range []string{"a", "b"} {
		f, err := batch.Create(name, Options{Mode: 0o600, Force: true})
		if err != nil {
			t.Fatal(err)
		}
		f.Write([]byte("new " + name))
	}
	if err := batch.Commit(); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"a", "b"} {
		if src, _ := os.ReadFile(name); string(src) != "new "+name {
			t.Errorf("%s holds %q", name, src)
		}
	}
	nothingLeft(t, dir)
}

// A full disk is one sentence about the file that the user named, whatever a
// library in between makes of it.
func TestFullDisk(t *testing.T) {
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip("no full device here")
	}
	f := &File{named: "out/track.flac", f: full}
	_, err = f.Write([]byte("x"))
	err = f.Failed(errors.Join(errors.New("\x1b[31mencoder.go:12\x1b[0m"), err))
	want := "cannot write \"out/track.flac\": no space left on device\nhint: free some room, or name a folder on another disk"
	if got := text(err); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if other := errors.New("another failure"); (&File{}).Failed(other) != other || f.Failed(nil) != nil {
		t.Error("Failed changes what is none of its own")
	}
}
