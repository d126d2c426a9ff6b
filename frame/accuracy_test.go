package frame_test

import (
	"testing"

	"example.org/floewright/frame"
	"example.org/floewright/internal/ulp"
)

// TestAccuracy compares the torsion constant and solved beams with references of
// 25 digits (independent computation, 50 digits): the textbook's polynomials of
// single and double spans under even and single loads. The bounds lie just above
// what was measured.
func TestAccuracy(t *testing.T) {
	r := ulp.Open(t, "testdata/accuracy.csv")
	r.Within(3, "Torsion", func(x []float64) (float64, error) { return frame.Torsion(x[0], x[1]) })

	deflection := func(d frame.Diagram) float64 { return d.Deflection }
	moment := func(d frame.Diagram) float64 { return d.Moment }
	// The inputs begin with length, EI, load, place.
	solved := func(x []float64, b frame.Beam, of func(frame.Diagram) float64) (float64, error) {
		b.EI = x[1]
		l, err := b.Solve()
		if err != nil {
			return 0, err
		}
		return of(l.At(x[3])), nil
	}
	even := func(rests func(l float64) []frame.Rest, spans float64, of func(frame.Diagram) float64) func(x []float64) (float64, error) {
		return func(x []float64) (float64, error) {
			l := spans * x[0]
			return solved(x, frame.Beam{Length: l, Rests: rests(x[0]), Loads: []frame.Load{frame.Uniform(0, l, x[2])}}, of)
		}
	}
	simple := func(l float64) []frame.Rest { return []frame.Rest{{}, {At: l}} }
	cantilever := func(float64) []frame.Rest { return []frame.Rest{{Clamped: true}} }
	fixed := func(l float64) []frame.Rest { return []frame.Rest{{Clamped: true}, {At: l, Clamped: true}} }
	propped := func(l float64) []frame.Rest { return []frame.Rest{{Clamped: true}, {At: l}} }
	two := func(l float64) []frame.Rest { return []frame.Rest{{}, {At: l}, {At: 2 * l}} }

	r.Within(22.5, "simple deflection", even(simple, 1, deflection))
	r.Within(10, "simple moment", even(simple, 1, moment))
	r.Within(6, "cantilever deflection", even(cantilever, 1, deflection))
	r.Within(6, "cantilever moment", even(cantilever, 1, moment))
	r.Within(94.5, "fixed deflection", even(fixed, 1, deflection))
	r.Within(12, "fixed moment", even(fixed, 1, moment))
	r.Within(42.5, "propped deflection", even(propped, 1, deflection))
	r.Within(10, "propped moment", even(propped, 1, moment))
	r.Within(26, "two spans deflection", even(two, 2, deflection))
	r.Within(8.5, "two spans moment", even(two, 2, moment))
	single := func(of func(frame.Diagram) float64) func(x []float64) (float64, error) {
		return func(x []float64) (float64, error) {
			return solved(x, frame.Beam{Length: x[0], Rests: simple(x[0]), Loads: []frame.Load{frame.Point(x[4], x[2])}}, of)
		}
	}
	r.Within(140, "point deflection", single(deflection))
	r.Within(36, "point moment", single(moment))
	r.Within(16.5, "simple with shear deflection", func(x []float64) (float64, error) {
		b := frame.Beam{Length: x[0], GA: x[4], Rests: simple(x[0]), Loads: []frame.Load{frame.Uniform(0, x[0], x[2])}}
		return solved(x, b, deflection)
	})
}
