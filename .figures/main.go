//go:build unix

// Command figures measures the figures in the README's section "Measured" and
// writes the section anew, with the machine and the date.
//
//	go run ./.figures         # some ten minutes, on a machine with nothing else to do
//	go run ./.figures -long   # with four recorded sessions of ten minutes: an hour
//	go run ./.figures -only Review
//
// It needs what the end-to-end tests need.
package main

import (
	"bytes"
	"flag"
	"fmt"
	"log"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"time"
)

var (
	long = flag.Bool("long", false, "what takes long too")
	only = flag.String("only", "", "print the rows whose command matches this `pattern`, and leave the README alone")
)

func main() {
	log.SetFlags(0)
	flag.Parse()
	wanted, err := regexp.Compile(*only)
	check(err)
	m := measurer{outputs: map[string]string{}}
	short := m.section(wanted, false)
	if *only != "" {
		if fmt.Print(short); *long {
			fmt.Print(m.section(wanted, true))
		}
		return
	}
	check(rewrite("README.md", "### Measured", short))
	if *long {
		check(rewrite("README.md", "#### Recorded at length", m.section(wanted, true)))
	}
}

// section returns the machine and a table of the rows that take long, or of the
// others.
func (m *measurer) section(wanted *regexp.Regexp, long bool) string {
	var table bytes.Buffer
	fmt.Fprintf(&table, "%s\n| what | figure | command |\n|---|---|---|\n", machine())
	for _, r := range rows {
		if r.long != long || !wanted.MatchString(r.command) {
			continue
		}
		figure, err := m.figure(r)
		check(err)
		fmt.Fprintf(&table, "| %s | %s | `%s` |\n", r.what, figure, r.command)
	}
	return table.String()
}

// measurer runs commands, each once.
type measurer struct{ outputs map[string]string }

// figure returns what a row says, as measured now.
func (m *measurer) figure(r row) (string, error) {
	out, ran := m.outputs[r.command]
	if !ran {
		log.Println(r.command)
		c := exec.Command("sh", "-c", r.command)
		c.Stderr = os.Stderr
		b, err := c.Output()
		if err != nil {
			return "", fmt.Errorf("%s: %w\n%s", r.command, err, b)
		}
		out = string(b)
		m.outputs[r.command] = out
	}
	found := r.pattern.FindStringSubmatchIndex(out)
	if found == nil {
		return "", fmt.Errorf("%s: nothing in its output fits %s:\n%s", r.command, r.pattern, out)
	}
	return string(r.pattern.ExpandString(nil, r.figure, out, found)), nil
}

// rewrite puts text under a heading of a file, up to the next heading.
func rewrite(file, heading, text string) error {
	b, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	before, rest, found := strings.Cut(string(b), "\n"+heading+"\n\n")
	rest = "\n" + rest // a section may be empty
	at := strings.Index(rest, "\n##")
	if !found || at < 0 {
		return fmt.Errorf("%s has no section %q with another after it", file, heading)
	}
	return os.WriteFile(file, []byte(before+"\n"+heading+"\n\n"+text+rest[at:]), 0o644)
}

// machine describes where and when it is measured.
func machine() string {
	cpu := first(`(?m)^model name\s*: (.*)$`, read("/proc/cpuinfo"))
	load := first(`^(\S+)`, read("/proc/loadavg"))
	version, err := exec.Command("go", "env", "GOVERSION", "GOOS", "GOARCH").Output()
	check(err)
	v := strings.Fields(string(version))
	return fmt.Sprintf("Made by `go run ./.figures` on %s, %s/%s, %s, %s of %s, at a load of %s before it began.\n",
		time.Now().Format(time.DateOnly), v[1], v[2], strings.Replace(v[0], "go", "Go ", 1), cores(), cpu, load)
}

// cores says how many processors there are.
func cores() string {
	n := strings.Count(read("/proc/cpuinfo"), "processor\t")
	if n == 1 {
		return "1 core"
	}
	return fmt.Sprint(n, " cores")
}

// read returns a file's text, empty if it cannot be read.
func read(file string) string {
	b, _ := os.ReadFile(file)
	return string(b)
}

// first returns the first group of a pattern in text.
func first(pattern, text string) string {
	if found := regexp.MustCompile(pattern).FindStringSubmatch(text); found != nil {
		return found[1]
	}
	return "unknown"
}

func check(err error) {
	if err != nil {
		log.Fatal(err)
	}
}
