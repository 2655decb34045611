package voice

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// TestPrint: one text is rendered for it, and it is another when a text is.
func TestPrint(t *testing.T) {
	log := withSpeech(t, "well")
	prints := func(p *plan.Plan) []byte {
		t.Helper()
		b, err := newVoice(t).Print(t.Context(), p)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	p := testPlan(t)
	first, again := prints(p), prints(p)
	if said, err := os.ReadFile(log); err != nil || strings.Count(string(said), "\n") != 2 {
		t.Errorf("%v, two prints rendered\n%s", err, said)
	}
	if !bytes.Equal(first, again) {
		t.Error("two prints of one session differ")
	}
	for name, src := range map[string]string{
		"another name":      "coldfloor: 1\ntitle: T\nblocks: [{title: B, exercises: [{name: Hops, time: 20s, calls: [left, right]}]}]\n",
		"another direction": "coldfloor: 1\ntitle: T\nblocks: [{title: B, exercises: [{name: Hop, time: 20s, calls: [left, back]}]}]\n",
		"another length":    "coldfloor: 1\ntitle: T\nblocks: [{title: B, exercises: [{name: Hop, time: 21s, calls: [left, right]}]}]\n",
	} {
		one := read(t, "coldfloor: 1\ntitle: T\nblocks: [{title: B, exercises: [{name: Hop, time: 20s, calls: [left, right]}]}]\n")
		if bytes.Equal(prints(one), prints(read(t, src))) {
			t.Errorf("%s: the same print", name)
		}
	}
}

func read(t *testing.T, src string) *plan.Plan {
	t.Helper()
	s, err := sessions.Parse("session.yaml", []byte(src))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}
