// Package texttest finds what reaches a player in no language of theirs.
package texttest

import (
	"reflect"
	"regexp"
	"strings"
	"unicode"

	"coldfloor/internal/safetext"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
)

// greek stands for the letters of the Latin alphabet, each as wide as its own.
var greek = []rune("αβγδεζηθικλμνξοπρςστυφχψωϊ")

// Mark writes every Latin letter of a text as a Greek one.
func Mark(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z':
			return greek[r-'a']
		case r >= 'A' && r <= 'Z':
			return unicode.ToUpper(greek[r-'A'])
		}
		return r
	}, s)
}

// Marked returns English with every letter of its texts marked. What a text is
// given, such as a name, is put into it unmarked.
func Marked() *text.Language {
	l := text.English
	mark(reflect.ValueOf(&l).Elem())
	l.Code = "en"
	date := l.Date
	l.Date = func(d units.Date) string { return Mark(date(d)) }
	return &l
}

// mark marks all that v holds.
func mark(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				mark(v.Field(i))
			}
		}
	case reflect.Array:
		for i := range v.Len() {
			mark(v.Index(i))
		}
	case reflect.Map:
		marked := reflect.MakeMap(v.Type())
		for _, key := range v.MapKeys() {
			marked.SetMapIndex(key, reflect.ValueOf(Mark(v.MapIndex(key).String())))
		}
		v.Set(marked)
	case reflect.String:
		v.SetString(Mark(v.String()))
	case reflect.Func:
		v.Set(markedFunc(v.Interface()))
	}
}

// markedFunc returns f with its own words marked. Its texts are held apart from
// them by runes of private use while it is called.
func markedFunc(f any) reflect.Value {
	own := reflect.ValueOf(f)
	return reflect.MakeFunc(own.Type(), func(args []reflect.Value) []reflect.Value {
		const private = '\uE000'
		var given []string
		for i, a := range args {
			if a.Kind() == reflect.String && a.String() != "" {
				args[i] = reflect.ValueOf(string(private + rune(len(given)))).Convert(a.Type())
				given = append(given, a.String())
			}
		}
		said := Mark(own.Call(args)[0].String())
		for i, g := range given {
			said = strings.ReplaceAll(said, string(private+rune(i)), g)
		}
		return []reflect.Value{reflect.ValueOf(said)}
	})
}

// latin is a word of two Latin letters or more; a single one is a key or a unit.
var latin = regexp.MustCompile(`[A-Za-z][A-Za-z'-]*[A-Za-z]`)

// plain are words that are the same in every language: units, and what a key is
// called on it.
var plain = map[string]bool{"min": true, "cm": true, "kg": true, "ms": true, "Enter": true, "Esc": true}

// Unmarked returns the Latin words of what was shown, but for those of the texts
// that are known, such as a session's file.
func Unmarked(shown string, known ...string) []string {
	given := map[string]bool{}
	for _, k := range known {
		for _, w := range latin.FindAllString(k, -1) {
			given[w] = true
		}
	}
	var words []string
	for _, at := range latin.FindAllStringIndex(shown, -1) {
		w := shown[at[0]:at[1]]
		cut := strings.HasPrefix(shown[at[1]:], safetext.Ellipsis)
		if !given[w] && !plain[w] && !(cut && begins(given, w)) {
			words = append(words, w)
		}
	}
	return words
}

// begins reports whether w is the beginning of a word that is given.
func begins(given map[string]bool, w string) bool {
	for g := range given {
		if strings.HasPrefix(g, w) {
			return true
		}
	}
	return false
}
