package settings

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/adrg/xdg"
	"pgregory.net/rapid"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

var today = time.Date(2026, 7, 14, 18, 0, 0, 0, time.UTC)

const whole = `# the player in the hallway
name: Player One
sex: female
birth_year: 1999
level: intermediate
mass: 62.5 kg
height: 1.70m
reach: 2.14m
jump: 41cm
broad_jump: 1.9m
pace: 1.15
room: 4.5x1.2x2.4m
cell_height: 4.5mm
volume: 60
clicks: off
background: light
language: de
weeks: plans/autumn.yaml
limits:
  contacts_beginner: 40-60
  warm_up: 8m
  jump_interval: 24h-48h
  headroom: 5cm
off: [cues]
`

func TestParseWhole(t *testing.T) {
	s, err := Parse(filepath.Join("home", "settings.yaml"), []byte(whole))
	if err != nil {
		t.Fatal(err)
	}
	if s.Name != "Player One" || s.Sex != Female || s.BirthYear != 1999 || s.Level != sessions.Intermediate ||
		s.Mass != 62.5 || s.Height != 1700 || s.Reach != 2140 || s.Jump != 410 || s.BroadJump != 1900 || s.Pace != 1.15 ||
		s.Room != (Room{4500, 1200, 2400}) || s.CellHeight != 4.5 || s.Volume != 60 || s.Language != "de" ||
		s.Clicks || s.Background != Light || s.Weeks != filepath.Join("home", "plans", "autumn.yaml") {
		t.Errorf("settings read wrong: %+v", s)
	}
	want := map[string]Range{
		"contacts_beginner": {40, 60}, "warm_up": {480, 480}, "jump_interval": {86400, 172800}, "headroom": {0.05, 0.05},
		"contacts_advanced": {120, 140}, // not in the file
	}
	for key, r := range want {
		if s.Limits[key] != r {
			t.Errorf("limit %s is %v, want %v", key, s.Limits[key], r)
		}
	}
}

// A unit at the end of a range is that of both ends.
func TestLimitUnitOfBothEnds(t *testing.T) {
	for text, want := range map[string]Range{
		"3-5m": {180, 300}, "3 – 5 m": {180, 300}, "3m-5m": {180, 300}, "90s-2m": {90, 120}, "24-48h": {86400, 172800}, "60-90": {60, 90}, "1:30-2:00": {90, 120},
	} {
		s, err := Parse("settings.yaml", []byte("limits:\n  warm_up: "+text+"\n"))
		if err != nil || s.Limits["warm_up"] != want {
			t.Errorf("%s is read as %v, want %v (%v)", text, s.Limits["warm_up"], want, err)
		}
	}
	s, err := Parse("settings.yaml", []byte("limits: {headroom: 10-20cm}\n"))
	if want := (Range{0.1, 0.2}); err != nil || s.Limits["headroom"] != want {
		t.Errorf("10-20cm is read as %v (%v)", s.Limits["headroom"], err)
	}
}

func TestParseNothing(t *testing.T) {
	for _, src := range []string{"", "\n\n", "# height: 1.8m\n"} {
		s, err := Parse("settings.yaml", []byte(src))
		if err != nil || s.Pace != 1 || s.Volume != DefaultVolume || s.Language != "" || !s.Clicks || s.Background != Auto || len(s.Limits) != len(AllLimits) {
			t.Errorf("%q gave %+v, %v", src, s, err)
		}
	}
}

func TestParseNamesEveryProblem(t *testing.T) {
	_, err := Parse("settings.yaml", []byte(`heigth: 1.7m
mass: heavy
reach: 1.2m
height: 1.8m
volume: 140
sex: mail
room: 4.5x1.2
limits:
  contacts_beginer: 3
  warm_up: 10m-5m
`))
	var problems yamlread.Problems
	if !errors.As(err, &problems) {
		t.Fatalf("got %v", err)
	}
	want := []string{
		`settings.yaml:1:1: unknown key "heigth"`, "did you mean height?",
		`settings.yaml:2:7: "mass": "heavy" is not a number of kg`,
		`settings.yaml:3:1: "reach" of 1.2m is below the height of 1.8m`,
		`settings.yaml:5:9: "volume" must be a whole number from 0 to 100`,
		`settings.yaml:6:6: "sex" cannot be "mail"`, "write female or male",
		`settings.yaml:7:7: "room": "4.5x1.2" has no unit`,
		`settings.yaml:9:3: unknown key "contacts_beginer"`, "did you mean contacts_beginner?",
		`settings.yaml:10:12: "warm_up": "10m-5m" begins above its end`,
	}
	for _, w := range want {
		if !strings.Contains(err.Error(), w) {
			t.Errorf("no %q in\n%v", w, err)
		}
	}
}

// Pheasant, Bodyspace, 1996: standing grip reach / height = 1.185 (men), 1.184
// (women); fingertip reach ≈ 1.25 × height, computed with a remembered hand
// length; a measured reach goes before.
func TestReachPheasant(t *testing.T) {
	s := Player{Height: 1800}
	if f := s.StandingReach(); f.Length != 2250 || !f.Estimated || !strings.Contains(f.Source, "Pheasant") {
		t.Errorf("fingertips %+v", f)
	}
	if f := s.GripReach(); f.Length != 2133 {
		t.Errorf("grip %+v", f)
	}
	s.Sex = Female
	if f := s.GripReach(); f.Length != 2131 {
		t.Errorf("grip of a woman %+v", f)
	}
	s.Reach = 2300
	if f := s.StandingReach(); f != (Figure{Length: 2300}) {
		t.Errorf("measured %+v", f)
	}
	if f := (&Player{}).StandingReach(); f.Known() {
		t.Errorf("known without a height: %+v", f)
	}
}

// Patterson & Peterson, MSSE 2004;36:S114: men 21–25 y 56.4 cm, women 35.8 cm.
func TestJumpPatterson(t *testing.T) {
	for sex, want := range map[Sex]units.Length{Male: 564, Female: 358, "": 564} {
		if f := (&Player{Sex: sex}).VerticalJump(); f.Length != want || !f.Estimated {
			t.Errorf("%q: %+v", sex, f)
		}
	}
	if f := (&Player{Jump: 420}).VerticalJump(); f != (Figure{Length: 420}) {
		t.Errorf("measured %+v", f)
	}
}

// Res Q Exerc Sport 2015;86 Suppl 1:S37–44: medians at 11…18 years, cm.
func TestBroadJumpMedians(t *testing.T) {
	boys := []float64{147, 162, 175, 186, 195, 202, 207, 210}
	girls := []float64{140, 143.9, 147.3, 150, 152.1, 153.7, 154.6, 155}
	for i := range boys {
		born := today.Year() - 11 - i
		if f := (&Player{Sex: Male, BirthYear: born}).StandingBroadJump(today); f.Length != mm(boys[i]) {
			t.Errorf("boys of %d: %v", 11+i, f)
		}
		if f := (&Player{Sex: Female, BirthYear: born}).StandingBroadJump(today); f.Length != mm(girls[i]) {
			t.Errorf("girls of %d: %v", 11+i, f)
		}
	}
	for born, want := range map[int]units.Length{1980: 2100, 0: 2100, 2020: 1470} {
		if f := (&Player{BirthYear: born}).StandingBroadJump(today); f.Length != want {
			t.Errorf("born %d: %+v", born, f)
		}
	}
}

// mm returns centimetres as a length.
func mm(cm float64) units.Length { return units.Length(math.Round(cm * 10)) }

func TestMinor(t *testing.T) {
	for born, want := range map[int]bool{0: false, 2000: false, 2007: false, 2008: true, 2015: true} {
		if got := (&Player{BirthYear: born}).Minor(today); got != want {
			t.Errorf("born %d in %d: minor %v", born, today.Year(), got)
		}
	}
}

func TestLoad(t *testing.T) {
	t.Cleanup(xdg.Reload)
	folder := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", filepath.Join(folder, "config"))
	t.Setenv("XDG_STATE_HOME", filepath.Join(folder, "state"))
	xdg.Reload()

	s, err := Load()
	if err != nil || s.File != "" || s.Volume != DefaultVolume {
		t.Fatalf("without a file: %+v, %v", s, err)
	}
	if err := os.MkdirAll(filepath.Dir(File()), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(File(), []byte(whole), 0o600); err != nil {
		t.Fatal(err)
	}
	if s, err = Load(); err != nil || s.Volume != 60 || s.File != File() {
		t.Fatalf("with a file: %+v, %v", s, err)
	}
	if err := RememberVolume(35); err != nil {
		t.Fatal(err)
	}
	if s, _ = Load(); s.Volume != 35 {
		t.Errorf("volume %d, want the remembered 35", s.Volume)
	}
	if src, _ := os.ReadFile(File()); string(src) != whole {
		t.Error("the settings file was rewritten")
	}
	if err := os.WriteFile(volumeFile(), []byte("loud"), 0o600); err != nil {
		t.Fatal(err)
	}
	if s, err = Load(); err != nil || s.Volume != 60 {
		t.Errorf("with a damaged memory: %d, %v", s.Volume, err)
	}
}

func TestRows(t *testing.T) {
	s, err := Parse("settings.yaml", []byte("height: 1.8m\nlimits:\n  warm_up: 8m\n"))
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]Row{}
	for _, r := range s.Rows(today) {
		got[r.Key] = r
	}
	for key, want := range map[string]Row{
		"height":          {Value: "1.8m", Origin: FromFile, Line: 1},
		"reach":           {Value: "2.25m", Origin: Estimated},
		"mass":            {Origin: NotGiven},
		"pace":            {Value: "1", Origin: ByDefault},
		"limits.warm_up":  {Value: "8min", Origin: FromFile, Line: 3},
		"limits.headroom": {Value: "10cm", Origin: ByDefault},
	} {
		r := got[key]
		if r.Value != want.Value || r.Origin != want.Origin || r.Line != want.Line {
			t.Errorf("%s: %+v, want %+v", key, r, want)
		}
	}
}

// What a limit is written as is read back as the same limit.
func TestLimitsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.SampledFrom(AllLimits).Draw(t, "limit")
		low := rapid.IntRange(0, 10_000).Draw(t, "low")
		r := Range{float64(low), float64(low + rapid.IntRange(0, 10_000).Draw(t, "width"))}
		src := "limits:\n  " + d.Key + ": " + d.Format(r) + "\n"
		s, err := Parse("settings.yaml", []byte(src))
		if err != nil || s.Limits[d.Key] != r {
			t.Fatalf("%s gave %v, %v", src, s.Limits[d.Key], err)
		}
	})
}
