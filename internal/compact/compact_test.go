package compact

import (
	"testing"
	"time"

	"pgregory.net/rapid"
)

// record is one of everything.
type record struct {
	n     int
	u     uint64
	yes   bool
	f     float64
	word  string
	text  string
	at    time.Time
	maybe *int
	list  []string
}

func (r *record) code(c *Coder) {
	c.Int(&r.n)
	c.Uint(&r.u)
	c.Bool(&r.yes)
	c.Float(&r.f)
	c.String(&r.word)
	c.Text(&r.text)
	c.Time(&r.at)
	Optional(c, &r.maybe, c.Int)
	List(c, &r.list, c.Text)
}

// What was written is read back, and what is cut short is an error.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := record{n: rapid.Int().Draw(t, "n"), u: rapid.Uint64().Draw(t, "u"), yes: rapid.Bool().Draw(t, "yes"), f: rapid.Float64().Draw(t, "f"),
			word: rapid.String().Draw(t, "word"), text: rapid.String().Draw(t, "text"), list: rapid.SliceOfN(rapid.String(), 0, 4).Draw(t, "list"),
			at: time.Unix(rapid.Int64Range(-1e9, 4e9).Draw(t, "at"), 5).In(time.FixedZone("", 900*rapid.IntRange(-40, 40).Draw(t, "zone")))}
		if rapid.Bool().Draw(t, "maybe") {
			want.maybe = &want.n
		}
		var w Coder
		want.code(&w)
		for _, source := range []string{"", string(w.Buf)} {
			r := Coder{Reading: true, Buf: w.Buf, Source: source}
			var got record
			got.code(&r)
			if r.Err != nil || len(r.Buf) > 0 {
				t.Fatalf("%v, %d bytes left", r.Err, len(r.Buf))
			}
			if got.n != want.n || got.u != want.u || got.yes != want.yes || got.f != want.f || got.word != want.word || got.text != want.text ||
				!got.at.Equal(want.at) || got.at.Format(time.RFC3339) != want.at.Format(time.RFC3339) || (got.maybe == nil) != (want.maybe == nil) || len(got.list) != len(want.list) {
				t.Fatalf("got %+v, want %+v", got, want)
			}
		}
		short := Coder{Reading: true, Buf: w.Buf[:rapid.IntRange(0, len(w.Buf)-1).Draw(t, "cut")]}
		if new(record).code(&short); short.Err == nil {
			t.Fatal("cut short, and no error")
		}
	})
}
