package players

import (
	"strings"
	"testing"

	"coldfloor/sessions/weeks"
)

func TestParse(t *testing.T) {
	all, err := Parse("squad.yaml", []byte(`# The winter squad.
- name: Ida
  level: beginner
  birth_year: 2011
  room: 4x1.2x2.4m
  easier: [Pogo hops, Bounds]
  away: [2026-12-24..2026-12-26, 2027-01-01]
- {name: Jonas, language: de}
`))
	if err != nil {
		t.Fatal(err)
	}
	ida, ok := Find(all, " ida ")
	if !ok || len(all) != 2 || len(ida.Easier) != 2 || len(ida.Away) != 2 || ida.Level != "beginner" {
		t.Errorf("read %+v", all)
	}
	if j, _ := Find(all, "Jonas"); j.Language != "de" || j.Volume != 80 {
		t.Errorf("Jonas %+v", j)
	}
}

// TestWrong: every problem at once, each at its line with a way to mend it.
func TestWrong(t *testing.T) {
	_, err := Parse("squad.yaml", []byte(`- name: Ida
- {level: beginer}
- {name: IDA, agee: 12}
- {name: Lea, away: [2027-02-30]}
`))
	if err == nil {
		t.Fatal("no error")
	}
	for _, want := range []string{
		"squad.yaml:2:3: ", `"name"`, "squad.yaml:3:4: \"IDA\" is a player already, in line 1", "agee", "squad.yaml:4:22: ",
	} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q is not in\n%s", want, err)
		}
	}
	if _, err := Parse("squad.yaml", []byte("name: Ida\n")); err == nil || !strings.Contains(err.Error(), "begin each one with -") {
		t.Errorf("a mapping: %v", err)
	}
}

// TestCheckEasier: a slip in an exercise's name would hand the full jumps out.
func TestCheckEasier(t *testing.T) {
	b, _ := weeks.FindBuiltin("off-season-six-weeks")
	plan, err := b.Plan()
	if err != nil {
		t.Fatal(err)
	}
	all, err := Parse("squad.yaml", []byte("- {name: Ida, easier: [pogo hops]}\n- name: Mo\n  easier: [Pogo hop, Somersault]\n"))
	if err != nil {
		t.Fatal(err)
	}
	err = CheckEasier(all, plan)
	if err == nil {
		t.Fatal("nothing is wrong")
	}
	for _, want := range []string{`squad.yaml:3:3: no session of the plan has an exercise "Pogo hop"`, "did you mean Pogo hops?", `"Somersault"`} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q is not in\n%s", want, err)
		}
	}
	if strings.Contains(err.Error(), "squad.yaml:1:") {
		t.Errorf("a right name is refused:\n%s", err)
	}
}
