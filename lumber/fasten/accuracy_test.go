package fasten

import (
	"testing"

	"example.org/floewright/internal/ulp"
	"example.org/floewright/lumber"
)

// TestAccuracy compares the closed forms with references of 25 digits
// (independent computation, 50 digits, from the formulas as printed). The bounds
// lie just above what was measured.
func TestAccuracy(t *testing.T) {
	r := ulp.Open(t, "testdata/accuracy.csv")
	mode := func(i int) func(x []float64) (float64, error) {
		return func(x []float64) (float64, error) {
			s := shank{d: x[0], lm: x[1], ls: x[2], fem: x[3], fes: x[4], fyb: x[5]}
			if len(x) == 7 {
				s.gap = x[6]
			}
			return s.loads()[i], nil
		}
	}
	r.Within(2, "mode Im", mode(im))
	r.Within(1.5, "mode Is", mode(is))
	r.Within(5, "mode II", mode(ii))
	r.Within(3.5, "mode IIIm", mode(iiim))
	r.Within(3, "mode IIIs", mode(iiis))
	r.Within(2.5, "mode IV", mode(iv))
	r.Within(3, "mode II with a gap", mode(ii))
	r.Within(3.5, "mode IIIm with a gap", mode(iiim))
	r.Within(3, "mode IIIs with a gap", mode(iiis))
	r.Within(3, "mode IV with a gap", mode(iv))
	r.Within(7, "GroupAction", func(x []float64) (float64, error) {
		f, err := GroupAction(int(x[0]), x[1], x[2], x[3], x[4], x[5] == 1)
		return f.Value, err
	})
	r.Within(2.5, "Combined screw", func(x []float64) (float64, error) {
		return Fastener{Kind: WoodScrew}.Combined(x[0], x[1], x[2])
	})
	r.Within(2.5, "Combined nail", func(x []float64) (float64, error) {
		return Fastener{Kind: Nail}.Combined(x[0], x[1], x[2])
	})
	pin := func(pick func(shear, bending, bearing float64) float64) func(x []float64) (float64, error) {
		return func(x []float64) (float64, error) {
			a, b, c, err := Pin{Diameter: x[0], Lug: x[1], Leaf: x[2], Play: x[3]}.Stresses(x[4])
			return pick(a, b, c), err
		}
	}
	r.Within(2, "Pin.Stresses shear", pin(func(a, _, _ float64) float64 { return a }))
	r.Within(2.5, "Pin.Stresses bending", pin(func(_, b, _ float64) float64 { return b }))
	r.Within(1.5, "Pin.Stresses bearing", pin(func(_, _, c float64) float64 { return c }))
	r.Within(3.5, "PullThrough", func(x []float64) (float64, error) { return PullThrough(x[0], x[1], x[2]) })
	holds := func(kind Kind) func(x []float64) (float64, error) {
		return func(x []float64) (float64, error) {
			w, _, err := steel{kind: kind, d: x[1]}.withdrawal(x[0])
			return w, err
		}
	}
	r.Within(3, "withdrawal lag", holds(LagScrew))
	r.Within(3, "withdrawal nail", holds(Nail))
	r.Within(1.5, "withdrawal screw", holds(WoodScrew))
	r.Within(3, "bearing at an angle", func(x []float64) (float64, error) {
		p := Piece{Grade: lumber.Grade{G: lumber.Value{Printed: x[0], Unit: 1}}, Angle: x[2]}
		return p.bearing(x[1]), nil
	})
}
