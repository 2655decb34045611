//go:build unix

package main

import "regexp"

// row is a figure, and how it is come by.
type row struct {
	what    string
	command string         // that prints it; each command runs once
	pattern *regexp.Regexp // of what it prints
	figure  string         // what the README says of it, with the pattern's groups
	long    bool           // takes long
}

const (
	starts  = "go test -tags e2e -count=1 -v -run TestFiguresStart ./cmd/coldfloor"
	live    = "go test -tags e2e -count=1 -v -run TestFiguresLive ./cmd/coldfloor"
	years   = "go test ./cmd/coldfloor -run '^$' -bench Years -benchtime 20x"
	review  = "go test ./internal/runs -run '^$' -bench Review -benchtime 10x"
	again   = "go test ./internal/runs -run '^$' -bench Again -benchtime 10x"
	calls   = "go test -tags e2e -count=1 -v -run TestRecordedCalls ./cmd/coldfloor"
	moments = "go test -tags e2e -count=1 -v -run TestRecordedFirstMoments ./sound/live"
	whole   = "go test -tags e2e -count=1 -v -timeout 3h ./sound/live -long -minutes 10 -run WholeSession/"
	frames  = "go test ./tui -run '^$' -bench Frame -benchtime 200x"
	parses  = "go test ./sessions/sessionstest -run '^$' -bench Read -benchtime 100x"
	tracks  = "go test ./sound/track -run '^$' -bench 'Track/40min-flac' -benchtime 3x"
	size    = `go build -trimpath -ldflags "-s -w" -o /tmp/coldfloor-size ./cmd/coldfloor && du --apparent-size --block-size=kB /tmp/coldfloor-size`
)

// rows are the figures, in the README's order.
var rows = []row{
	{"start to the first picture, medians: choose a session, run a file, `echo`", starts,
		p(`(?s)choose a session +median +(\d+) ms.*?run a file +median +(\d+) ms.*?echo +median +(\d+) ms`), "$1 ms, $2 ms, $3 ms", false},
	{"the same with 1,560 and with 15,600 sessions in the log, to that with none", starts,
		p(`(?s)choose a session, 1560.*?: (\S+) times.*?run a file, 1560.*?: (\S+) times.*?choose a session, 15600.*?: (\S+) times.*?run a file, 15600.*?: (\S+) times`),
		"choose $1 and $3, run $2 and $4", false},
	{"with 1,560 and with 15,600 sessions, processor time to that with one: `log`", years, bench("Years/log", "×-by-processor-at-1560", "×-by-processor-at-15600"), "$1 and $2", false},
	{"the same: `log rate`", years, bench("Years/rate", "×-by-processor-at-1560", "×-by-processor-at-15600"), "$1 and $2", false},
	{"the same: `preview`", years, bench("Years/preview", "×-by-processor-at-1560", "×-by-processor-at-15600"), "$1 and $2", false},
	{"the same: `check`", years, bench("Years/check", "×-by-processor-at-1560", "×-by-processor-at-15600"), "$1 and $2", false},
	{"30 s of a session packed with changes, with sound, at 80×24 and at 200×60: of a core, and beside them `watch -n 0.1 date`", live,
		p(`(?s) 80x24 .*?([\d.]+) % of a core.*? 200x60 .*?([\d.]+) % of a core.*?watch.*?([\d.]+) % of a core`), "$1 % and $2 %, $3 %", false},
	{"the same: to the terminal", live, each(`([\d.]+) kB/s`), "$1 kB/s and $2 kB/s", false},
	{"the same: resident memory", live, each(`resident ([\d.]+) MB`), "$1 MB and $2 MB", false},
	{"review of 3,000 sessions, times as fast as `encoding/json` reads the same lines: by the clock, by processor", review, bench("Review", "×-encoding/json", "×-encoding/json-by-processor"), "$1, $2", false},
	{"the second review of 7,800 sessions, its part of the first's processor time: of the same journals, of each a week later, with a small file of each week besides", again,
		bench("Again", "arrived/first-by-processor", "grown/first-by-processor", "second/first-by-processor"), "$3, $2, $1", false},
	{"a recorded session with calls and clicks: how far cues are from their moments", calls,
		p(`among (\d+) cues: off by (\S+) ms at the 95th percentile, (\S+) ms at most`), "of $1 cues 95 % at most $2 ms, all at most $3 ms", false},
	{"six recorded runs with pauses, skips and resumes: the same", moments, recorded, cues, false},
	{"a recorded session of 10 minutes: the same", whole + "calm", recorded, cues, true},
	{"the same, with another program at every core", whole + "loaded", recorded, cues, true},
	{"the same, the process stopped for half a minute now and then", whole + "stopped", recorded, cues, true},
	{"the same, with keys every 15 s or so", whole + "keys", recorded, cues, true},
	{"the same: from such a key to its cue at the sound server, median and longest", whole + "keys",
		p(`ready at the server ([\d.]+) ms after the key at the median, ([\d.]+) ms at most`), "$1 ms, $2 ms", true},
	{"one frame at 80×24 and at 200×60", frames, p(`(?s)Frame/80x24\S*\s+\d+\s+(\d+)\d{3} ns/op.*Frame/200x60\S*\s+\d+\s+(\d+)\d{3} ns/op`), "$1 µs, $2 µs", false},
	{"a session file read and planned, times what yaml.v3 takes to decode it", parses, bench("Read", "×-yaml"), "$1", false},
	{"a track of 40 minutes as FLAC, times as fast as it plays", tracks, p(`(\d+)[.\d]* ×realtime`), "$1", false},
	{"the program, stripped", size, p(`^(\d+)(\d)\d\dkB`), "$1.$2 MB", false},
}

// recorded is the pattern of what the recording tests say, and cues what is told
// of it.
var recorded = p(`(\d+) cues: off by (\S+) ms at the 95th percentile, (\S+) ms at most`)

const cues = "of $1 cues 95 % at most $2 ms, all at most $3 ms"

func p(pattern string) *regexp.Regexp { return regexp.MustCompile(pattern) }

// bench is the pattern of a benchmark's metrics, in the order in which Go
// prints them, which is that of the alphabet.
func bench(name string, metrics ...string) *regexp.Regexp {
	pattern := `(?m)^Benchmark` + name + `-?\d*\s.*?`
	for _, m := range metrics {
		pattern += `([\d.]+) ` + regexp.QuoteMeta(m) + `(?:\s.*?|$)`
	}
	return p(pattern)
}

// each is the pattern of a figure at the two sizes that a session is measured
// at.
func each(figure string) *regexp.Regexp {
	return p(`(?s) 80x24 .*?` + figure + `.*? 200x60 .*?` + figure)
}
