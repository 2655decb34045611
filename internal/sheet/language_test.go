package sheet

import (
	"bytes"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"coldfloor/internal/paper"
	"coldfloor/internal/plan"
	"coldfloor/internal/text"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// textsOf returns every text of a document, in the order of its fields.
func textsOf(d *Doc) []string {
	var all []string
	var walk func(v reflect.Value)
	walk = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.String:
			all = append(all, v.String())
		case reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i))
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(v.Index(i))
			}
		}
	}
	walk(reflect.ValueOf(d).Elem())
	return all
}

// same are texts that both languages have, and the kinds of parts, which are
// not shown.
var same = map[string]bool{"Name": true, text.English.Sheet.Source: true, "work": true, "rest": true, "change": true, "min": true, "maximal": true}

// TestNothingStaysEnglish: of what a sheet of a built-in session says in German,
// nothing is as it is in English but numbers and a source.
func TestNothingStaysEnglish(t *testing.T) {
	word := regexp.MustCompile(`[a-z]{3}`)
	for _, b := range sessions.Builtins() {
		s, err := b.Session()
		if err != nil {
			t.Fatal(err)
		}
		p := plan.Of(s)
		english, german := textsOf(Of(p, &text.English)), textsOf(Of(p, &text.German))
		if len(english) != len(german) {
			t.Fatalf("%s: %d texts in English, %d in German", b.Name, len(english), len(german))
		}
		for i, s := range english {
			if s == german[i] && word.MatchString(s) && !same[s] {
				t.Errorf("%s: %q stays English", b.Name, s)
			}
		}
	}
}

// TestPagesInGerman: the renderings have the language's own words too, and say
// which language it is.
func TestPagesInGerman(t *testing.T) {
	o, err := weeks.Open("hallway-power")
	if err != nil {
		t.Fatal(err)
	}
	d := Of(plan.Of(o.Session), &text.German)
	var md, page bytes.Buffer
	if err := d.Markdown(&md); err != nil {
		t.Fatal(err)
	}
	if err := d.HTML(&page, paper.Sizes[0]); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"# Sprünge im Flur", "| Übung, Hinweise, Ausführung |", "## Anstrengung", "Notizen:", "je Seite", "zwischen den Runden"} {
		if !strings.Contains(md.String(), want) {
			t.Errorf("the Markdown does not say %q", want)
		}
	}
	for _, want := range []string{`<html lang="de">`, "<h2>Notizen</h2>", ", Runde 1 links"} {
		if !strings.Contains(page.String(), want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	for _, bad := range []string{"Effort", "Notes", "round ", "Take care"} {
		if strings.Contains(md.String(), bad) {
			t.Errorf("the Markdown says %q", bad)
		}
	}
}

// TestGermanHasDecimalCommas: no length on a German sheet has a decimal point.
func TestGermanHasDecimalCommas(t *testing.T) {
	point := regexp.MustCompile(`[0-9]\.[0-9]`)
	for _, b := range sessions.Builtins() {
		s, err := b.Session()
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range textsOf(Of(plan.Of(s), &text.German)) {
			if point.MatchString(text) {
				t.Errorf("%s: %q", b.Name, text)
			}
		}
	}
}
