package text

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"coldfloor/internal/units"
)

// dropped are the entries that leave out something they are given, on purpose.
var dropped = map[string]bool{
	"de.Findings.Estimated": true, // why is said in English alone
	"en.Sheet.RepUnit":      true, // a word alone, for a number that stands elsewhere
	"de.Sheet.RepUnit":      true,
	"en.Sounds.CallTones":   true, // the number as a word
	"de.Sounds.CallTones":   true,
}

// alike are the entries that are the same in English and German.
var alike = map[string]bool{"de.Sheet.In": true, "de.Sheet.Source": true}

// called calls a function of a language with arguments that can be told apart,
// numbers from n on. It returns what was said, and what it should hold.
func called(f reflect.Value, n int, b bool) (said string, want []string) {
	args := make([]reflect.Value, f.Type().NumIn())
	for i := range args {
		switch in := f.Type().In(i); {
		case in == reflect.TypeFor[units.Date]():
			args[i] = reflect.ValueOf(units.Date(20_000))
		case in.Kind() == reflect.String:
			want = append(want, fmt.Sprintf("<%d>", i))
			args[i] = reflect.ValueOf(want[len(want)-1])
		case in.Kind() == reflect.Bool:
			args[i] = reflect.ValueOf(b)
		default:
			want = append(want, fmt.Sprint(n+10*i))
			args[i] = reflect.ValueOf(n + 10*i).Convert(in)
		}
	}
	return f.Call(args)[0].String(), want
}

// TestEveryTextSaysWhatItIsGiven: in every language each text holds every name,
// figure and sentence that it is given, and nothing is left of its pattern.
func TestEveryTextSaysWhatItIsGiven(t *testing.T) {
	for _, l := range languages {
		entries(l, func(path string, v reflect.Value) {
			if v.Kind() != reflect.Func {
				return
			}
			for _, n := range []int{1, 2, 3} {
				for _, b := range []bool{false, true} {
					said, want := called(v, n, b)
					for _, w := range want {
						if !strings.Contains(said, w) && !dropped[path] {
							t.Errorf("%s lacks %s: %q", path, w, said)
						}
					}
					if said == "" && !dropped[path] || strings.Contains(said, "%!") {
						t.Errorf("%s says %q", path, said)
					}
				}
			}
		})
	}
}

// TestNoLanguageIsLeftInAnother: what German says is not what English says, but
// for signs, units and words that are the same.
func TestNoLanguageIsLeftInAnother(t *testing.T) {
	english := map[string]string{}
	say := func(v reflect.Value) string {
		switch v.Kind() {
		case reflect.Func:
			said, _ := called(v, 2, false)
			return said
		case reflect.String:
			return v.String()
		}
		return ""
	}
	entries(&English, func(path string, v reflect.Value) { english[strings.TrimPrefix(path, "en")] += say(v) })
	for _, word := range []string{"the ", " of ", " and ", " is ", " not ", " with ", " your "} {
		entries(&German, func(path string, v reflect.Value) {
			if said := say(v); strings.Contains(said, word) {
				t.Errorf("%s says %q", path, said)
			}
		})
	}
	entries(&German, func(path string, v reflect.Value) {
		said := say(v)
		if strings.Contains(said, " ") && said == english[strings.TrimPrefix(path, "de")] && !alike[path] {
			t.Errorf("%s says the English %q", path, said)
		}
	})
}
