package rating

import (
	"bytes"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/text"
)

// The words of Foster et al., J Strength Cond Res 2001;15:109–115.
func TestScaleFoster(t *testing.T) {
	const want = "0 rest, 1 very very easy, 2 easy, 3 moderate, 4 somewhat hard, 5 hard, 7 very hard, 10 maximal"
	if got := ScaleLine(); got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// In lines each figure keeps its word, in every language.
func TestScaleLines(t *testing.T) {
	for _, code := range text.Codes() {
		l := text.In(code)
		lines := ScaleLines(l, narrow)
		for _, part := range l.Form.Scale() {
			if !strings.Contains(lines, part) {
				t.Errorf("%q is broken in\n%s", part, lines)
			}
		}
		if got := strings.ReplaceAll(lines, "\n", " "); got != strings.Join(l.Form.Scale(), ", ") {
			t.Errorf("%s: %q", code, got)
		}
	}
}

func TestParseRPE(t *testing.T) {
	for text, want := range map[string]float64{"0": 0, "10": 10, " 6.5 ": 6.5} {
		if got, err := ParseRPE(text); err != nil || got != want {
			t.Errorf("ParseRPE(%q) = %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "hard", "-1", "10.1", "NaN", "Inf", "5/10"} {
		if got, err := ParseRPE(text); err == nil || !strings.Contains(fault.Text(err), "\nhint: 0 rest") {
			t.Errorf("ParseRPE(%q) = %v, %v", text, got, err)
		}
	}
}

func TestParseRounds(t *testing.T) {
	blocks := []journal.PlannedBlock{{Title: "Up", Rounds: 3}, {Title: "Strong", Rounds: 2}}
	for text, want := range map[string][]int{"3,2": {3, 2}, " 0, 1 ": {0, 1}, "1 2": {1, 2}} {
		if got, err := ParseRounds(text, blocks); err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("ParseRounds(%q) = %v, %v", text, got, err)
		}
	}
	for text, want := range map[string]string{"": "no rounds", ",": "no rounds", "3": "rounds are given for 1 block, but the session has 2",
		"4,1": "4 rounds of block 1 are given, but it has 3", "x,1": `"x" is not`, "-1,1": `"-1" is not`, "1.5,1": `"1.5" is not`} {
		if _, err := ParseRounds(text, blocks); err == nil || !strings.Contains(fault.Text(err), want) || !strings.Contains(fault.Text(err), "\nhint: ") {
			t.Errorf("ParseRounds(%q): %v, want %q", text, err, want)
		}
	}
	if got, err := ParseRounds("9,9,9", nil); err != nil || len(got) != 3 {
		t.Errorf("of unknown blocks: %v, %v", got, err)
	}
}

func TestAsk(t *testing.T) {
	run := &journal.Run{Started: &journal.Started{Blocks: []journal.PlannedBlock{{Title: "Up\x1b[2J", Rounds: 3, Sets: 3}}}}
	for typed, want := range map[string]string{
		"2\n6.5\nleft knee\nslow\n": "2 6.5 true left knee slow",
		"\n\n\n\n":                  "",
		"":                          "",
		"2\n":                       "2",
		"7\n2\nhard\n5\nnone\n":     "2 5 false ",
		"\n4":                       "4",
	} {
		var out bytes.Buffer
		got, err := Ask(strings.NewReader(typed), &out, run, &text.English)
		if err != nil || describe(got) != want {
			t.Errorf("%q: %q, %v; want %q", typed, describe(got), err, want)
		}
		if strings.Contains(out.String(), "\x1b") || !strings.Contains(out.String(), "0 of 3") {
			t.Errorf("asked %q", out.String())
		}
	}
}

// describe returns what a rating says, the fields left out passed over.
func describe(r journal.Rating) string {
	var parts []string
	for _, n := range r.Rounds {
		parts = append(parts, strconv.Itoa(n))
	}
	if r.RPE != nil {
		parts = append(parts, strconv.FormatFloat(*r.RPE, 'g', -1, 64))
	}
	if r.Pain != nil {
		parts = append(parts, strconv.FormatBool(*r.Pain), *r.Where)
	}
	if r.Note != nil {
		parts = append(parts, *r.Note)
	}
	return strings.Join(parts, " ")
}
