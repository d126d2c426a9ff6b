package float_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// FuzzCriterion holds that no row of the table panics or gives NaN without a
// reason, and that the verdict agrees with value and limit.
func FuzzCriterion(f *testing.F) {
	f.Add(0, 420.0, 0.0, 0.0, 2.44, 1.22, 0.2)
	f.Add(3, 420.0, 1.0, 0.5, 2.44, 1.22, 0.2)
	f.Add(8, 900.0, 0.0, 0.3, 2.0, 2.0, 0.0)
	f.Add(19, 300.0, 0.2, 0.3, 2.44, 1.22, 0.1)
	f.Add(22, math.NaN(), 0.0, 0.0, 0.0, -1.0, math.Inf(1))
	rows := float.Criteria()
	f.Fuzz(func(t *testing.T, row int, mass, wx, wy, halfX, halfY, depth float64) {
		if row < 0 || row >= len(rows) {
			return
		}
		p := drumDock(0)
		p.Weights[0] = float.Weight{Mass: mass, At: r3.Vec{X: wx, Y: wy, Z: -0.1}}
		p.Corners = []r3.Vec{{X: -halfX, Y: -halfY}, {X: halfX, Y: -halfY}, {X: halfX, Y: halfY}, {X: -halfX, Y: halfY}}
		c := rows[row]
		check, err := c.Rule(float.Deck{Depth: depth, Drawn: 0.3, Walk: 0.3})(p)
		if err != nil {
			return
		}
		if (check.Err != nil) != math.IsNaN(check.Value) || math.IsInf(check.Value, 0) {
			t.Fatalf("%s: value %g, reason %v", c.Name, check.Value, check.Err)
		}
		want := measure.Short
		switch {
		case check.Err != nil:
			want = measure.NoAnswer
		case check.Meets():
			want = measure.Holds
		}
		if check.Verdict() != want {
			t.Fatalf("%v, want %v", check, want)
		}
		if check.Rule != c.Source || check.Limit != c.Limit && len(check.Steps) == 0 || check.Name != c.Name {
			t.Fatalf("%+v is not of %+v", check, c)
		}
		// Mirroring the dock changes nothing.
		if check.Err == nil {
			p.Weights[0].At.Y = -wy
			mirror, err := c.Rule(float.Deck{Depth: depth, Drawn: 0.3, Walk: 0.3})(p)
			if err != nil || mirror.Err != nil {
				return // at the edge of failing, the last digit decides
			}
			if math.Abs(mirror.Value-check.Value) > 1e-6*(1+math.Abs(check.Value)) {
				t.Fatalf("%s: %g, mirrored %g", c.Name, check.Value, mirror.Value)
			}
		}
	})
}
