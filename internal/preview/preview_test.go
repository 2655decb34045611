package preview

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"strings"
	"testing"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/sessions"
)

var update = flag.Bool("update", false, "rewrite the golden files; read them before you commit")

// text is a session whose figures the tests below work out by hand.
const text = `coldfloor: 1
title: Two and one
level: intermediate
lead_in: 5s
blocks:
  - title: Up
    rounds: 2
    rest: 60s
    rest_after: 90s
    exercises:
      - {name: Pogo hops, reps: 10, rep: 700ms, contacts: 1}
      - {name: Split squat, reps_per_side: 5, tempo: 3-1-1, switch: 4s}
  - title: Hold
    exercises:
      - {name: Plank, time: 30s}
`

func testPlan(t *testing.T) *plan.Plan {
	t.Helper()
	s, err := sessions.Parse("two.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

func TestDocument(t *testing.T) {
	d := Of(testPlan(t))
	want := Totals{
		WorkS:    2*(7+25+25) + 30,
		RestS:    60 + 90,
		ChangeS:  5 + 2*(10+4),
		Sets:     5,
		Reps:     2 * (10 + 10),
		Contacts: 2 * 10,
	}
	want.TotalS = want.WorkS + want.RestS + want.ChangeS
	// 144 s of work, and between its first and its last step 60 and 90 s of
	// rest and 28 s of transitions: the lead-in is no part of it.
	if d.RestPerWork == nil || *d.RestPerWork != 1.236 {
		t.Errorf("rest per work %v, want 178/144", d.RestPerWork)
	}
	if d.Totals != want {
		t.Errorf("got  %+v\nwant %+v", d.Totals, want)
	}
	var sum float64
	for _, s := range d.Steps {
		if s.StartS != sum {
			t.Errorf("step %+v starts late or early: the steps before it last %v", s, sum)
		}
		sum += s.LengthS
	}
	if sum != d.TotalS {
		t.Errorf("the steps last %v, the total is %v", sum, d.TotalS)
	}
}

// TestKeys holds the JSON of each kind of step to the keys that were promised.
func TestKeys(t *testing.T) {
	src, err := json.Marshal(Of(testPlan(t)).Steps[:5])
	if err != nil {
		t.Fatal(err)
	}
	want := `[{"kind":"lead-in","start_s":0,"length_s":5,"reps":0},` +
		`{"kind":"work","start_s":5,"length_s":7,"block":1,"round":1,"exercise":1,"name":"Pogo hops","side":"both","reps":10},` +
		`{"kind":"change","start_s":12,"length_s":10,"block":1,"round":1,"reps":0},` +
		`{"kind":"work","start_s":22,"length_s":25,"block":1,"round":1,"exercise":2,"name":"Split squat","side":"left","reps":5},` +
		`{"kind":"switch","start_s":47,"length_s":4,"block":1,"round":1,"exercise":2,"name":"Split squat","side":"right","reps":0}]`
	if string(src) != want {
		t.Errorf("got  %s\nwant %s", src, want)
	}
}

func TestGolden(t *testing.T) {
	p := testPlan(t)
	var b bytes.Buffer
	for _, err := range []error{
		Text(&b, p, nil, nil),
		Text(&b, p, nil, safetext.Repertoire{}),
		Steps(&b, p),
		Table(&b, []*plan.Plan{p, p}),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	const file = "testdata/preview.golden"
	if *update {
		if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(b.Bytes(), want) {
		t.Errorf("got:\n%s", b.Bytes())
	}
}

// Jumps whose contacts are not counted are no jumps left out: the figure is a
// least one.
func TestContactsAtLeast(t *testing.T) {
	for name, want := range map[string]string{"Pogo hops": "at least 20 foot contacts", "Plank": "20 foot contacts"} {
		s, err := sessions.Parse("two.yaml", []byte(strings.Replace(text, "Plank", name, 1)))
		if err != nil {
			t.Fatal(err)
		}
		p := plan.Of(s)
		if got := contacts(p); got != want {
			t.Errorf("with %s: %q, want %q", name, got, want)
		}
		counted := name == "Plank"
		d := Of(p)
		if d.Counted != counted || d.Blocks[1].Counted != counted || !d.Blocks[0].Counted {
			t.Errorf("with %s counted is %v, %v and %v", name, d.Counted, d.Blocks[0].Counted, d.Blocks[1].Counted)
		}
		if got := contactsCell(0, d.Blocks[1].Counted); got == "–" == counted {
			t.Errorf("with %s the second block has %s", name, got)
		}
	}
}

// TestAssumed: what a tempo with an X takes for granted is said below the table.
func TestAssumed(t *testing.T) {
	for tempo, want := range map[string]string{"3-1-X": "\nX in a tempo is as fast as possible, and counted as 1 s: Squat\n", "3-1-1": ""} {
		s, err := sessions.Parse("x.yaml", []byte("coldfloor: 1\ntitle: T\nblocks: [{title: B, exercises: [{name: Squat, reps: 3, tempo: "+tempo+"}]}]\n"))
		if err != nil {
			t.Fatal(err)
		}
		var b strings.Builder
		if err := Text(&b, plan.Of(s), nil, nil); err != nil {
			t.Fatal(err)
		}
		if !strings.HasSuffix(b.String(), want) || strings.Contains(b.String(), "tempo") != (want != "") {
			t.Errorf("%s:\n%s", tempo, b.String())
		}
	}
}
