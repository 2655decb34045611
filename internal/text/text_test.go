package text

import (
	"reflect"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/plan"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// entries calls f with every text and function of a language, by the path that
// leads to it.
func entries(l *Language, f func(path string, v reflect.Value)) {
	var walk func(path string, v reflect.Value)
	walk = func(path string, v reflect.Value) {
		switch v.Kind() {
		case reflect.Struct:
			for i := range v.NumField() {
				if v.Type().Field(i).IsExported() {
					walk(path+"."+v.Type().Field(i).Name, v.Field(i))
				}
			}
		case reflect.Array:
			for i := range v.Len() {
				walk(path, v.Index(i))
			}
		default:
			f(path, v)
		}
	}
	walk(l.Code, reflect.ValueOf(l).Elem())
}

// gaps are entries that may be empty: the scale has words for some numbers
// alone (Foster et al., J Strength Cond Res 2001;15:109–115).
var gaps = map[string]bool{"en.Form.RPE": true, "de.Form.RPE": true}

// TestNothingIsMissing: every language has every text, and every function.
func TestNothingIsMissing(t *testing.T) {
	for _, l := range languages {
		entries(l, func(path string, v reflect.Value) {
			if v.IsZero() && !gaps[path] {
				t.Errorf("%s is missing", path)
			}
		})
		for _, m := range []sessions.Measure{sessions.MeasureDistance, sessions.MeasureHeight, sessions.MeasureCount, sessions.MeasureTime} {
			if l.Measure(m) == "" {
				t.Errorf("%s has no word for a %s", l.Code, m)
			}
		}
		for _, level := range []sessions.Level{sessions.Beginner, sessions.Intermediate, sessions.Advanced} {
			if l.Choose.Levels[string(level)] == "" {
				t.Errorf("%s has no word for %s", l.Code, level)
			}
		}
		for n, word := range l.Form.RPE {
			if (word == "") != (English.Form.RPE[n] == "") {
				t.Errorf("%s: %d on the scale has words in one language alone", l.Code, n)
			}
		}
	}
}

// TestWordsFitTheSmallestWindow: the words of the phases find room in a banner
// of a window of 40 columns, and what stands at its foot in its 40.
func TestWordsFitTheSmallestWindow(t *testing.T) {
	for _, l := range languages {
		s := &l.Screen
		for _, word := range []string{s.Ready, s.Work, s.Rest, s.Switch, s.Change, s.RestEnds, s.Paused, s.Done, s.OwnPace + ": " + s.KeyWhenDone} {
			if w := ansi.StringWidth(word); w > 30 {
				t.Errorf("%s: %q is %d cells wide", l.Code, word, w)
			}
		}
		for _, line := range []string{s.GoOn, s.HelpBack, s.Muted, s.BellOnly, s.SoundOff, s.SoundOn, s.BellVolume, s.More, s.NoMore, s.AsGiven, s.Easier, s.NoEasier,
			s.KeepResult, s.Stop[0] + " " + s.Stop[1], l.Form.Optional, l.Form.PainHint, l.Form.WhereHint, l.Keys.StopToo, l.Keys.AnyOther, l.Form.NoteHint} {
			if w := ansi.StringWidth(line); w > 40 {
				t.Errorf("%s: %q is %d cells wide", l.Code, line, w)
			}
		}
	}
}

// TestPainNotedIsSaidOnce: what stands below the heading does not say it again.
func TestPainNotedIsSaidOnce(t *testing.T) {
	for _, l := range languages {
		if word, _, _ := strings.Cut(l.Care.PainNoted, " "); strings.HasPrefix(l.PainAdvice(), word) || !strings.HasPrefix(l.PainNoted(), l.Care.PainNoted+". ") {
			t.Errorf("%s: %q below %q", l.Code, l.PainAdvice(), l.Care.PainNoted)
		}
	}
}

// TestOf: the player's own choice goes before the system's.
func TestOf(t *testing.T) {
	for _, c := range []struct{ code, lang, all, want string }{
		{"", "", "", "en"}, {"", "de_AT.UTF-8", "", "de"}, {"", "C.UTF-8", "", "en"}, {"en", "de_DE", "", "en"},
		{"de", "en_GB", "", "de"}, {"", "en_GB", "de_DE.UTF-8", "de"}, {"", "fr_FR", "", "en"},
	} {
		got := Of(c.code, func(name string) string { return map[string]string{"LANG": c.lang, "LC_ALL": c.all}[name] })
		if got.Code != c.want {
			t.Errorf("%+v gives %s", c, got.Code)
		}
	}
}

// TestTitles: a plan of weeks puts the week after a title; it is said in the
// language too.
func TestTitles(t *testing.T) {
	if got := German.Title("Something of a coach's own, week 3"); got != "Something of a coach's own, Woche 3" {
		t.Errorf("title %q", got)
	}
	if got := English.Title("Hallway power, week 3"); got != "Hallway power, week 3" {
		t.Errorf("title %q", got)
	}
}

// TestDates: as they are written in each language.
func TestDates(t *testing.T) {
	d, err := units.ParseDate("2027-03-02")
	if err != nil {
		t.Fatal(err)
	}
	if en, de := English.Date(d), German.Date(d); en != "Tue 2 Mar" || de != "Di 2. März" {
		t.Errorf("%q, %q", en, de)
	}
}

// TestCoachsWordsStay: what no built-in session says is shown as it is.
func TestCoachsWordsStay(t *testing.T) {
	s := &sessions.Session{Title: "A", Blocks: []sessions.Block{{Title: "B", Exercises: []sessions.Exercise{{Name: "My own hop", Cues: []string{"So"}}}}}}
	if got := German.Session(s); !reflect.DeepEqual(got.Blocks, s.Blocks) {
		t.Errorf("%+v", got.Blocks)
	}
}

// TestHeaded: the title and the blocks are called as the language calls them,
// while exercises keep the names that are looked up by.
func TestHeaded(t *testing.T) {
	b, _ := sessions.FindBuiltin("ten-minutes")
	s, err := b.Session()
	if err != nil {
		t.Fatal(err)
	}
	p := plan.Of(s)
	h := German.Headed(p)
	if h.Session.Title != "Zehn Minuten ohne Sprünge" || h.Blocks[0].Title != German.Name(p.Blocks[0].Title) || h.Blocks[0].Title == p.Blocks[0].Title {
		t.Errorf("%q, %q", h.Session.Title, h.Blocks[0].Title)
	}
	if !reflect.DeepEqual(h.Steps, p.Steps) || p.Session.Title != "Ten minutes, no jumps" {
		t.Error("the plan itself is changed, or its steps")
	}
}
