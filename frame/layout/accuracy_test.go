package layout_test

import (
	"testing"

	"example.org/floewright/frame/layout"
	"example.org/floewright/internal/ulp"
)

// TestAccuracy compares the closed forms with references of 25 digits
// (independent computation, 50 digits). The bounds lie just above what was
// measured.
func TestAccuracy(t *testing.T) {
	r := ulp.Open(t, "testdata/accuracy.csv")
	r.Within(2, "Diagonal", func(x []float64) (float64, error) { return layout.Diagonal(x[0], x[1]) })
	r.Within(3.5, "Corner", func(x []float64) (float64, error) { return layout.Corner(x[0], x[1], x[2]) })
	r.Within(3, "Racked offset", func(x []float64) (float64, error) {
		offset, _, err := layout.Racked(x[0], x[1], x[2], x[3])
		return offset, err
	})
	r.Within(2, "Racked angle", func(x []float64) (float64, error) {
		_, angle, err := layout.Racked(x[0], x[1], x[2], x[3])
		return angle, err
	})
	wedge := func(pick func(rise, press, spread float64) float64) func(x []float64) (float64, error) {
		return func(x []float64) (float64, error) {
			a, b, c, err := layout.Wedge(x[0], x[1])
			return pick(a, b, c), err
		}
	}
	r.Within(2, "Wedge rise", wedge(func(a, _, _ float64) float64 { return a }))
	r.Within(2, "Wedge press", wedge(func(_, b, _ float64) float64 { return b }))
	r.Within(1.5, "Wedge spread", wedge(func(_, _, c float64) float64 { return c }))
	r.Within(2.5, "Frame.Misfit", func(x []float64) (float64, error) {
		return layout.Frame{A: x[0], B: x[1], C: x[2], D: x[3], P: x[4], Q: x[5]}.Misfit()
	})
	bearing := func(x []float64) ([2]float64, float64, error) {
		return layout.Bearing{Seat: layout.Wedged, Angle: [2]float64{x[0], x[1]}}.Press(x[2])
	}
	r.Within(5, "Bearing.Press edge", func(x []float64) (float64, error) {
		edges, _, err := bearing(x)
		return edges[0], err
	})
	r.Within(4.5, "Bearing.Press spread", func(x []float64) (float64, error) {
		_, spread, err := bearing(x)
		return spread, err
	})
}
