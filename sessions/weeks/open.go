package weeks

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"gopkg.in/yaml.v3"

	"coldfloor/internal/fault"
	"coldfloor/internal/safetext"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// Opened is what a name or a path turned out to be: one of the two.
type Opened struct {
	Session *sessions.Session
	Plan    *Plan
}

// Open reads what the user calls nameOrPath: a built-in session or plan by its
// name, or else a file. The error is a yamlread.Problems if the file was
// read and is wrong.
func Open(nameOrPath string) (Opened, error) {
	if b, ok := FindBuiltin(nameOrPath); ok {
		p, err := b.Plan()
		return Opened{Plan: p}, err
	}
	if b, ok := sessions.FindBuiltin(nameOrPath); ok {
		s, err := b.Session()
		return Opened{Session: s}, err
	}
	src, err := yamlread.ReadFile(nameOrPath)
	if errors.Is(err, fs.ErrNotExist) {
		return Opened{}, notFound(nameOrPath)
	}
	if err != nil {
		return Opened{}, err
	}
	return Read(nameOrPath, filepath.Dir(nameOrPath), bytes.NewReader(src))
}

// OpenOr is Open, but reads from stdin what is called "-".
func OpenOr(nameOrPath string, stdin io.Reader) (Opened, error) {
	if nameOrPath == "-" {
		return Read("standard input", ".", stdin)
	}
	return Open(nameOrPath)
}

// Read reads a session or a plan from r, which the user knows as name; the
// plan's files are found from folder. It takes in no more than it can use.
func Read(name, folder string, r io.Reader) (Opened, error) {
	src, err := io.ReadAll(io.LimitReader(r, yamlread.MaxBytes+1))
	if err != nil {
		return Opened{}, err
	}
	src = yamlread.UTF8(src)
	if IsPlan(src) {
		p, err := Parse(name, src, From(folder))
		return Opened{Plan: p}, err
	}
	s, err := sessions.Parse(name, src)
	return Opened{Session: s}, err
}

// IsPlan reports whether the text of a file is meant as a plan of weeks: it
// has the key weeks or days, and not blocks alone.
func IsPlan(src []byte) bool {
	if !bytes.Contains(src, []byte("weeks")) && !bytes.Contains(src, []byte("days")) {
		return false // most files are sessions, and are parsed once
	}
	has := rootKeys(src)
	return has("weeks") || has("days") && !has("blocks")
}

// rootKeys returns which keys stand at the root of a file. In a file that is not
// YAML they are those that begin a line.
func rootKeys(src []byte) (has func(key string) bool) {
	var doc yaml.Node
	if len(src) > yamlread.MaxBytes || yaml.NewDecoder(bytes.NewReader(src)).Decode(&doc) != nil ||
		len(doc.Content) == 0 || doc.Content[0].Kind != yaml.MappingNode {
		return func(key string) bool {
			return bytes.HasPrefix(src, []byte(key+":")) || bytes.Contains(src, []byte("\n"+key+":"))
		}
	}
	return func(key string) bool { return find(doc.Content[0], key) != nil }
}

// From returns the Finder of a plan whose file is in the folder: a name with a
// dot or a slash is a file from there, any other a built-in session.
func From(folder string) Finder {
	return func(name string) (*sessions.Session, error) {
		if !isFile(name) {
			return builtinSession(name, folder)
		}
		path := name
		if !filepath.IsAbs(name) {
			path = filepath.Join(folder, name)
		}
		src, err := yamlread.ReadFile(path)
		if errors.Is(err, fs.ErrNotExist) {
			hint := "a file is named from the folder of the plan"
			if folder != "." {
				hint += ", " + folder
			}
			return nil, fault.New(didYouMean(nearSession(name, folder), hint), "there is no file %s", safetext.Quote(name))
		}
		if err != nil {
			return nil, err
		}
		if IsPlan(src) {
			return nil, errPlanOfPlans(name)
		}
		return sessions.Parse(path, src)
	}
}

func errPlanOfPlans(name string) error {
	return fault.New("name the sessions of that plan", "%s is a plan of weeks, and a plan names sessions alone", safetext.Quote(name))
}

// builtinSession returns a built-in session, or says what might be meant by a
// name in a plan of the folder.
func builtinSession(name, folder string) (*sessions.Session, error) {
	if b, ok := sessions.FindBuiltin(name); ok {
		return b.Session()
	}
	if _, ok := FindBuiltin(name); ok {
		return nil, errPlanOfPlans(name)
	}
	hint := "coldfloor sessions lists the built-in ones; a file is named with its ending, such as " + name + ".yaml"
	return nil, fault.New(didYouMean(nearSession(name, folder), hint), "there is no session called %s", safetext.Quote(name))
}

func sessionNames() []string {
	var names []string
	for _, b := range sessions.Builtins() {
		names = append(names, b.Name)
	}
	return names
}

// notFound says that there is no such session or plan, and what might have
// been meant.
func notFound(name string) error {
	hint := didYouMean(Near(name), "coldfloor sessions lists those that come with the program; a file is named by its path")
	if strings.ContainsAny(name, `./\`) {
		return fault.New(hint, "there is no file %s", safetext.Quote(name))
	}
	return fault.New(hint, "there is no session or plan called %s", safetext.Quote(name))
}

// Changed returns the latest change of the plan's file and of the files it
// names, to the second, as far as they are there; of a built-in plan of
// built-in sessions it is the beginning of its first day.
func (p *Plan) Changed() time.Time {
	latest := p.Starts.In(time.UTC, 0)
	found := false
	for _, file := range p.Files() {
		info, err := os.Stat(file)
		if err != nil || !info.Mode().IsRegular() {
			continue
		}
		if at := info.ModTime().UTC().Truncate(time.Second); !found || at.After(latest) {
			latest, found = at, true
		}
	}
	return latest
}

// Files returns the paths of what was read, built-in things apart.
func (p *Plan) Files() []string {
	var files []string
	if _, ok := FindBuiltin(p.Name); !ok {
		files = append(files, p.Name)
	}
	for name, s := range p.bases {
		if isFile(name) {
			files = append(files, s.Name)
		}
	}
	return files
}

// isFile reports whether a name in a plan is that of a file.
func isFile(name string) bool { return strings.ContainsAny(name, "./") }
