package action

import (
	"testing"

	"example.org/floewright/internal/ulp"
)

// TestAccuracy compares the closed forms with references of 25 digits
// (independent computation, 50 digits; the plate around a body by solving its
// two edge conditions). The bounds lie just above what was measured.
func TestAccuracy(t *testing.T) {
	r := ulp.Open(t, "testdata/accuracy.csv")
	around := func(of func(edges) float64) func(x []float64) (float64, error) {
		return func(x []float64) (float64, error) { return of(ring(x[0], x[1])), nil }
	}
	r.Within(3.5, "ring held", around(func(e edges) float64 { return e.held }))
	r.Within(5, "ring free", around(func(e edges) float64 { return e.free }))
	r.Within(5.5, "ring held moment", around(func(e edges) float64 { return e.heldMoment }))
	r.Within(7, "ring free moment", around(func(e edges) float64 { return e.freeMoment }))
	r.Within(2, "wedge", func(x []float64) (float64, error) { return wedge(x[0]), nil })
	r.Within(2.5, "slope level", func(x []float64) (float64, error) {
		level, _ := climb(x[0], x[1])
		return level, nil
	})
	r.Within(3, "slope ride", func(x []float64) (float64, error) {
		_, ride := climb(x[0], x[1])
		return ride, nil
	})
}
