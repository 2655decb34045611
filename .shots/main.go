//go:build unix

// Command shots takes pictures of the real running program.
//
//	go run ./.shots [-session FILE] [-out DIR] COLSxROWS@STATE…
//
// A STATE is a text to wait for on the screen, with + between several, such as
// 80x24@REST+1:10. Each picture is of a run of its own, at -speed.
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
	session = flag.String("session", "hallway-power", "the `session` to run")
	out     = flag.String("out", ".", "the `folder` for the pictures")
	speed   = flag.String("speed", "1", "how many times as fast it runs")
	light   = flag.Bool("light", false, "on a light ground")
	keys    = flag.String("keys", "", "what is typed at the start")
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
	size, state, _ := strings.Cut(shot, "@")
	var cols, rows int
	if _, err := fmt.Sscanf(size, "%dx%d", &cols, &rows); err != nil {
		return fmt.Errorf("%s: write COLSxROWS@STATE", shot)
	}
	cmd := exec.Command(*program, append([]string{"run", *session, "--no-log", "--mute", "--speed", *speed}, strings.Fields(*args)...)...)
	cmd.Env = append(strings.Fields(*env), "PATH="+os.Getenv("PATH"), "HOME="+os.TempDir())
	s, err := termshot.Start(cols, rows, cmd)
	if err != nil {
		return err
	}
	defer s.Close()
	if *keys != "" {
		if err := s.Await("GET READY"); err != nil {
			return err
		}
		if err := s.Type(*keys); err != nil {
			return err
		}
	}
	if err := s.Await(strings.Split(state, "+")...); err != nil {
		return err
	}
	name := size + "-" + strings.Map(plain, strings.ToLower(state)) + ".svg"
	fmt.Println(filepath.Join(*out, name))
	return os.WriteFile(filepath.Join(*out, name), []byte(s.SVG(!*light)), 0o644)
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
