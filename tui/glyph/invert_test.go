package glyph

import "testing"

func TestInvertTwiceIsTheSame(t *testing.T) {
	for _, set := range []Set{Plain, Full, Half, Quadrant, Sextant} {
		f, ok := Choose("0:42", 60, 10, set)
		if !ok {
			t.Fatal("no room")
		}
		for _, l := range f.Render("0:42", 60) {
			if in := set.Invert(l); in == l || set.Invert(in) != l {
				t.Errorf("set %d: %q inverts to %q", set, l, in)
			}
		}
	}
	if got := Quadrant.Invert(" ▘█"); got != "█▟ " {
		t.Errorf("got %q", got)
	}
}
