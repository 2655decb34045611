package sessions

import (
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"

	"github.com/rogpeppe/go-internal/txtar"
)

// valid reads one file of valid.txtar.
func valid(t *testing.T, name string) *Session {
	t.Helper()
	files := archive(t, "valid.txtar").Files
	i := slices.IndexFunc(files, func(f txtar.File) bool { return f.Name == name+".yaml" })
	s, err := Parse(name, files[i].Data)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// bare returns s without what it knows of its file.
func bare(s *Session) *Session {
	s.Marks, s.Source, s.Name = nil, nil, ""
	for i := range s.Blocks {
		s.Blocks[i].Marks = nil
		for j := range s.Blocks[i].Exercises {
			s.Blocks[i].Exercises[j].Marks = nil
		}
	}
	return s
}

func TestEveryKeyIsRead(t *testing.T) {
	rest := 30 * time.Second
	want := &Session{
		Version: 1, Title: "Hallway speed A", For: "Badminton singles, off-season", Level: Intermediate, LeadIn: 10 * time.Second,
		Blocks: []Block{{
			Title: "Up", Part: Main, Trains: []string{"vertical power"}, Rounds: 3,
			Rest: 75 * time.Second, RestAfter: 2 * time.Minute, Change: 10 * time.Second,
			Exercises: []Exercise{{
				Name: "Pogo hops", Reps: 10, Rep: 700 * time.Millisecond, Contacts: 1, Cues: []string{"Stiff ankles", "Quiet floor"},
				How: "Bounce on the balls of the feet, knees almost straight.", Rest: &rest,
				Sides: LeftFirst, Switch: DefaultSwitch, Finish: ByPace, Overhead: Overhead{Kind: OverheadNone},
			}, {
				Name: "Rear-foot-raised split squat", RepsPerSide: 5, Rep: 5 * time.Second,
				Tempo: Tempo{Lowering: 3 * time.Second, Pause: time.Second, Rising: time.Second},
				Sides: LeftFirst, Switch: 4 * time.Second, Finish: ByHand,
				Easier: Variant{Name: "Split squat, both feet on the floor", Bare: true}, Harder: Variant{Name: "Same, hands overhead", Bare: true},
				Load:  "none, or a 5 kg bag held at the chest",
				Floor: Floor{Along: 2 * units.Metre, Across: 1 * units.Metre}, Overhead: Overhead{Kind: OverheadJump},
			}},
		}},
	}
	if got := bare(valid(t, "every-key")); !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}

func TestDefaults(t *testing.T) {
	want := &Session{
		Version: 1, Title: "T", LeadIn: 10 * time.Second,
		Blocks: []Block{{
			Title: "B", Part: Main, Rounds: 1, Change: 10 * time.Second,
			Exercises: []Exercise{{
				Name: "E", Reps: 1, Rep: 2 * time.Second, Sides: LeftFirst, Switch: 3 * time.Second, Finish: ByPace,
				Overhead: Overhead{Kind: OverheadNone},
			}},
		}},
	}
	if got := bare(valid(t, "least")); !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}

// rest_after: before the next block; default: the block's rest, or 0s if it
// has none.
func TestRestAfterDefaultsToRest(t *testing.T) {
	s := parse(t, `
coldfloor: 1
title: T
blocks:
  - {title: A, rest: 75s, exercises: [{name: E, reps: 1}]}
  - {title: B, rest: 75s, rest_after: 0s, exercises: [{name: E, reps: 1}]}
  - {title: C, exercises: [{name: E, reps: 1}]}
`)
	for i, want := range []time.Duration{75 * time.Second, 0, 0} {
		if got := s.Blocks[i].RestAfter; got != want {
			t.Errorf("block %d: rest after is %v, want %v", i+1, got, want)
		}
	}
}

func TestDurationsOfAFile(t *testing.T) {
	s := valid(t, "durations")
	b := s.Blocks[0]
	if s.LeadIn != 0 || b.Rest != 90*time.Second || b.RestAfter != 0 || b.Change != 90*time.Second {
		t.Errorf("lead-in %v, rest %v, rest after %v, change %v", s.LeadIn, b.Rest, b.RestAfter, b.Change)
	}
	for i, want := range []string{"1.5s", "700ms", "90s", "2.5s", "90s", "1h", "90s", "1h2min30s", "1.5s", "30s"} {
		if got := units.FormatDuration(b.Exercises[i].Time); got != want {
			t.Errorf("exercise %d: %s, want %s", i+1, got, want)
		}
	}
}

// tempo: seconds lowering-pause-rising, or four numbers with a last pause; a
// rep lasts their sum.
func TestTempos(t *testing.T) {
	for i, want := range []string{"5s", "7s", "2s", "1s", "5s", "5s"} {
		e := valid(t, "tempos").Blocks[0].Exercises[i]
		if got := units.FormatDuration(e.Rep); got != want || e.Tempo.Rep() != e.Rep {
			t.Errorf("exercise %d: a rep of %s, want %s", i+1, got, want)
		}
	}
}

func TestRoom(t *testing.T) {
	es := valid(t, "room").Blocks[0].Exercises
	for i := range 4 {
		if want := (Floor{2 * units.Metre, 1500}); es[i].Floor != want {
			t.Errorf("exercise %d: floor %v, want %v", i+1, es[i].Floor, want)
		}
	}
	for i, want := range []Overhead{{OverheadNone, 0}, {OverheadReach, 0}, {OverheadJump, 0}, {OverheadAbove, 300}, {OverheadAbove, 300}, {OverheadAbove, 5}} {
		if es[i].Overhead != want {
			t.Errorf("exercise %d: overhead %v, want %v", i+1, es[i].Overhead, want)
		}
	}
}

func TestTextsAreSingleLines(t *testing.T) {
	s := valid(t, "texts")
	for got, want := range map[string]string{
		s.Title:                      "Rückhand: 跳箱 قفزة 🏸",
		s.For:                        "Folded text",
		s.Blocks[0].Title:            "B # not a comment",
		s.Blocks[0].Exercises[0].How: "First line. Second line.",
	} {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestMarksAreTheKeys(t *testing.T) {
	s := valid(t, "every-key")
	b := s.Blocks[0]
	e := b.Exercises[1]
	for _, c := range []struct {
		got, want yamlread.Pos
	}{
		{s.Marks.At(""), yamlread.Pos{Line: 1, Column: 1}}, {s.Marks.At("blocks"), yamlread.Pos{Line: 6, Column: 1}},
		{b.Marks.At(""), yamlread.Pos{Line: 7, Column: 5}}, {b.Marks.At("rounds"), yamlread.Pos{Line: 10, Column: 5}},
		{e.Marks.At(""), yamlread.Pos{Line: 22, Column: 9}}, {e.Marks.At("tempo"), yamlread.Pos{Line: 24, Column: 9}},
		{e.Marks.At("contacts"), yamlread.Pos{Line: 22, Column: 9}}, // not given: where the exercise is
	} {
		if c.got != c.want {
			t.Errorf("a mark is at %v, want %v", c.got, c.want)
		}
	}
}

// The key lists that the reader allows are the keys of the types.
func TestKeysAreThoseOfTheTypes(t *testing.T) {
	for _, c := range []struct {
		of   any
		keys []string
	}{{Session{}, sessionKeys}, {Block{}, blockKeys}, {Exercise{}, exerciseKeys}} {
		var want []string
		typ := reflect.TypeOf(c.of)
		for i := range typ.NumField() {
			if name, _, _ := strings.Cut(typ.Field(i).Tag.Get("yaml"), ","); name != "-" {
				want = append(want, name)
			}
		}
		got := slices.Clone(c.keys)
		slices.Sort(got)
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Errorf("%v reads %v and has %v", typ, got, want)
		}
	}
}

func TestBytesThatAreNoText(t *testing.T) {
	file := func(s string) string {
		return "coldfloor: 1\ntitle: T" + s + "\nblocks: [{title: B, exercises: [{name: E, reps: 1}]}]\n"
	}
	for in, want := range map[string]string{
		file("\x1b[31m"):    "x:2:9: control character U+001B\nhint: take it out",
		file("\x00"):        "x:2:9: control character U+0000\nhint: take it out",
		file("é\x7f"):       "x:2:10: control character U+007F\nhint: take it out",
		file("\u0085"):      "x:2:9: control character U+0085\nhint: take it out",
		file("\u202e"):      "x:2:9: control character U+202E\nhint: take it out",
		file("\ufeff"):      "x:2:9: control character U+FEFF\nhint: take it out",
		file(" # \u2028\n"): "x:2:12: control character U+2028\nhint: take it out",
		file("\xff"):        "x:2:9: this is not UTF-8\nhint: save the file as UTF-8",
		file("\xc3"):        "x:2:9: this is not UTF-8\nhint: save the file as UTF-8",
		file("\xff\nlevel: x"): "x:2:9: this is not UTF-8\nhint: save the file as UTF-8\n" +
			`x:3:8: "level" cannot be "x"` + "\nhint: write beginner, intermediate or advanced",
		"\ufeff" + file(""):                                     "",
		strings.ReplaceAll(file(""), "\n", "\r\n"):              "",
		strings.ReplaceAll(file("\nlevel: x"), "\n", "\r"):      `x:3:8: "level" cannot be "x"` + "\nhint: write beginner, intermediate or advanced",
		strings.Repeat("#", yamlread.MaxBytes):                  "x:1:1: the file is empty",
		strings.Repeat("#", yamlread.MaxBytes+1):                "x:1:1: the file is larger than 1 MiB\nhint: this cannot be a file typed by hand; is it the right one?",
		file("\n" + strings.Repeat("#", yamlread.MaxBytes-100)): "",
	} {
		got := ""
		if _, err := Parse("x", []byte(in)); err != nil {
			got = err.Error()
		}
		if got != want {
			t.Errorf("%.60q: got %q, want %q", in, got, want)
		}
	}
}

// parse reads a session that must be valid.
func parse(t testing.TB, src string) *Session {
	t.Helper()
	s, err := Parse("test", []byte(src))
	if err != nil {
		t.Fatal(err)
	}
	return s
}
