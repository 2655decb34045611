package journal

import (
	"bytes"
	"encoding/json"
	"os"
	"reflect"
	"testing"
	"time"
	"unicode/utf8"

	"coldfloor/internal/mutate"
)

// scannedAs returns what the scanner reads of a text, and whether it does.
func scannedAs(text []byte) (l Line, ok bool) {
	var s scanner
	ok = utf8.Valid(text) && s.line(text, &l)
	return l, ok
}

// likeJSON fails if the scanner reads a text that encoding/json refuses, or
// reads otherwise.
func likeJSON(t testing.TB, text []byte) (scanned bool) {
	t.Helper()
	got, ok := scannedAs(text)
	if !ok {
		return false
	}
	var want Line
	if err := json.Unmarshal(text, &want); err != nil {
		t.Fatalf("the scanner reads %q, encoding/json: %v", text, err)
	}
	sameZones(&got, &want)
	if !reflect.DeepEqual(got, want) {
		t.Fatalf("%q is read as %+v, by encoding/json as %+v", text, got, want)
	}
	return true
}

// sameZones makes equal moments of equal offset and name compare equal.
func sameZones(l, m *Line) {
	name, offset := l.At.Zone()
	if n, o := m.At.Zone(); l.At.Equal(m.At) && n == name && o == offset {
		l.At, m.At = time.Time{}, time.Time{}
	}
}

// samples is lines of every kind that the scanner reads.
func samples(t testing.TB) [][]byte {
	t.Helper()
	var all [][]byte
	for _, l := range everything(t, "RUN") {
		var b bytes.Buffer
		write(t, &b, l)
		all = append(all, bytes.TrimSpace(b.Bytes()))
	}
	for _, l := range []Line{
		{Event: EventRating, Rating: &Rating{Rounds: []int{1, 2}, RPE: ptr(6.5), Pain: ptr(true), Where: ptr(`left "knee"`), Note: ptr("häuslich\n\t\\“kalt”\u2028")}},
		{Event: EventResume, Resume: &Resume{Restart: true, Step: 12}},
		{Event: EventRest, Rest: &Rest{Place: Place{1, 2, 3}, PrescribedS: 75, TakenS: 70.125, PausedS: 0.5, End: "skip"}},
		{Event: EventSet, Set: &Set{Place: Place{1, 2, 3}, Outcome: Partial, Variant: "Half depth", Easier: true, ByHand: true, Sides: []string{"left", "right"}}},
		{Event: EventWithdraw},
	} {
		l.V, l.Run, l.N, l.At, l.Clock = Version, "RUN", 99, start.Add(1234*time.Millisecond).In(time.FixedZone("", -9000)), 1.25
		var b bytes.Buffer
		write(t, &b, l)
		all = append(all, bytes.TrimSpace(b.Bytes()))
	}
	return all
}

// tokens is what makes JSON another text of the same, or no JSON.
var tokens = []string{`"`, `\`, `{`, `}`, `[`, `]`, `,`, `:`, `0`, `-`, `1.5`, `1e3`, `.`, `null`, `true`, ` `, "\n", "\x00", "\xff", `\u0041`, `\n`,
	`"v":1,`, `"set":{},`, `"Set":{},`, `"crc":"x"`, `,"sides":["left"]`, `12345678901234567890`, `Z`, `+24:00`, `.1234567891`, `2026-02-30`, `é`}

// The scanner reads what this program writes, and reads nothing otherwise than
// encoding/json (RFC 8259) does.
func TestScannerReadsAsEncodingJSON(t *testing.T) {
	all := samples(t)
	for _, s := range all {
		if !likeJSON(t, s) && !bytes.Contains(s, []byte("\u2028")) && !bytes.Contains(s, []byte(`\u2028`)) {
			t.Errorf("not scanned: %s", s)
		}
	}
	scanned := 0
	mutate.Run(t, 20_000, all, tokens, func(t testing.TB, text []byte) {
		if likeJSON(t, text) {
			scanned++
		}
	})
	t.Logf("%d of them scanned, none read otherwise than encoding/json reads it", scanned)
}

// FuzzScanner holds the scanner against encoding/json.
func FuzzScanner(f *testing.F) {
	golden, err := os.ReadFile("testdata/everything.jsonl")
	if err != nil {
		f.Fatal(err)
	}
	for _, l := range bytes.Split(golden, []byte("\n")) {
		f.Add(l)
	}
	for _, s := range samples(f) {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text []byte) { likeJSON(t, text) })
}
