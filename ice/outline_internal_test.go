package ice

import (
	"math"
	"testing"
)

// TestTurnedOutline: the corners of a turned patch keep its sides and diagonals, and its long
// side lies at the turn.
func TestTurnedOutline(t *testing.T) {
	for _, turn := range []float64{0, 0.3, math.Pi / 2, 2, -0.7} {
		p := Patch{X: 3, Y: -2, A: 6, B: 2, Turn: turn}.outline()
		for i, want := range []float64{6, 2, 6, 2} {
			q := p[(i+1)%4]
			if got := math.Hypot(q[0]-p[i][0], q[1]-p[i][1]); math.Abs(got-want) > 1e-12 {
				t.Errorf("turned by %g: side %d is %g m, want %g m", turn, i, got, want)
			}
		}
		if got := math.Hypot(p[2][0]-p[0][0], p[2][1]-p[0][1]); math.Abs(got-math.Sqrt(40)) > 1e-12 {
			t.Errorf("turned by %g: a diagonal of %g m", turn, got)
		}
		if at, want := math.Atan2(p[1][1]-p[0][1], p[1][0]-p[0][0]), turn; math.Abs(at-want) > 1e-12 {
			t.Errorf("turned by %g: its long side lies at %g", turn, at)
		}
	}
}
