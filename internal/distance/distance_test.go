package distance

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestHeight holds heights worked out from the angles of ISO 9241-3 and
// NUREG-0700.
func TestHeight(t *testing.T) {
	for _, c := range []struct{ metres, angle, want float64 }{
		{3, Least, 14.0}, {3, Preferred, 17.5}, {3, 22, 19.2},
		{4, Least, 18.6}, {4, Preferred, 23.3}, {4, 22, 25.6},
	} {
		if got := Height(c.metres, c.angle); math.Abs(got-c.want) > 0.05 {
			t.Errorf("%v minutes at %v m take %.3f mm, want %v", c.angle, c.metres, got, c.want)
		}
	}
}

func TestRows(t *testing.T) {
	// 23.27 mm at 4 m, in cells of 5 mm.
	if got := Rows(4, 5, Preferred); math.Abs(got-4.654) > 0.001 {
		t.Errorf("Rows(4, 5, %v) = %v", Preferred, got)
	}
	for _, got := range []float64{Rows(0, 5, Least), Rows(4, 0, Least), Rows(-1, 5, Least), Rows(math.NaN(), 5, Least)} {
		if got != 0 {
			t.Errorf("rows %v of an unknown length, want 0", got)
		}
	}
}

func TestAngleUndoesHeight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, a := rapid.Float64Range(0.3, 30).Draw(t, "metres"), rapid.Float64Range(1, 120).Draw(t, "angle")
		if got := Angle(m, Height(m, a)); math.Abs(got-a) > 1e-9*a {
			t.Fatalf("Angle(%v, Height(%v, %v)) = %v", m, m, a, got)
		}
	})
}
