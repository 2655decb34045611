//go:build unix

// Command shots takes pictures of the real running program.
//
//	go run ./.shots [-session FILE] [-out DIR] [NAME=]COLSxROWS@STEP,…
//
// A STEP is a text to wait for on the screen, with + between several, or keys
// to type, in angle brackets: 80x24@REST+1:10,<p>,PAUSED. Each picture is of a
// run of its own, at -speed.
package main

import (
	"flag"
	"fmt"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"coldfloor/internal/termshot"
)

var (
	program = flag.String("program", "", "the built `program`; built anew where empty")
	session = flag.String("session", "hallway-power", "the `session` to run; the list to choose from where empty")
	out     = flag.String("out", ".", "the `folder` for the pictures")
	speed   = flag.String("speed", "1", "how many times as fast it runs")
	light   = flag.Bool("light", false, "on a light ground")
	env     = flag.String("env", "LANG=C.UTF-8 COLORTERM=truecolor TERM=tmux-256color", "the environment")
	args    = flag.String("args", "", "further arguments of the run command")
)

func main() {
	log.SetFlags(0)
	flag.Parse()
	if *program == "" {
		dir, err := os.MkdirTemp("", "shots")
		check(err)
		defer os.RemoveAll(dir)
		*program = filepath.Join(dir, "coldfloor")
		build := exec.Command("go", "build", "-o", *program, "./cmd/coldfloor")
		build.Stderr = os.Stderr
		check(build.Run())
	}
	for _, shot := range flag.Args() {
		check(take(shot))
	}
}

// take takes one picture.
func take(shot string) error {
	name, rest, named := strings.Cut(shot, "=")
	if !named {
		name, rest = strings.Map(plain, strings.ToLower(shot)), shot
	}
	size, steps, _ := strings.Cut(rest, "@")
	var cols, rows int
	if _, err := fmt.Sscanf(size, "%dx%d", &cols, &rows); err != nil {
		return fmt.Errorf("%s: write COLSxROWS@STEP,…", shot)
	}
	home, err := os.MkdirTemp("", "shots") // nothing of the taker's own gets into a picture
	if err != nil {
		return err
	}
	defer os.RemoveAll(home)
	s, err := termshot.Start(cols, rows, !*light, command(home))
	if err != nil {
		return err
	}
	defer s.Close()
	for _, step := range strings.Split(steps, ",") {
		if err := do(s, step); err != nil {
			return fmt.Errorf("%s: %w", shot, err)
		}
	}
	file := filepath.Join(*out, name+".svg")
	fmt.Println(file)
	return os.WriteFile(file, []byte(s.SVG()), 0o644)
}

// command is the run to be looked at, of a user with the given home.
func command(home string) *exec.Cmd {
	run := []string{"run"}
	if *session != "" {
		run = append(run, *session)
	}
	run = append(run, "--no-log", "--mute", "--speed", *speed)
	cmd := exec.Command(*program, append(run, strings.Fields(*args)...)...)
	cmd.Env = append(strings.Fields(*env), "PATH="+os.Getenv("PATH"), "HOME="+home)
	return cmd
}

// do types keys or waits for texts.
func do(s *termshot.Session, step string) error {
	if keys, ok := strings.CutPrefix(step, "<"); ok {
		return s.Type(strings.TrimSuffix(keys, ">"))
	}
	return s.Await(strings.Split(step, "+")...)
}

// plain keeps what a file's name may hold.
func plain(r rune) rune {
	if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
		return r
	}
	return '-'
}

func check(err error) {
	if err != nil {
		log.Fatal(err)
	}
}
