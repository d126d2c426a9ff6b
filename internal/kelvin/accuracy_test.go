package kelvin_test

import (
	"testing"

	"example.org/floewright/internal/kelvin"
	"example.org/floewright/internal/ulp"
)

// TestAccuracy compares with references of 25 digits from Bessel functions of
// complex argument (independent computation, 50 digits), the error counted in
// units of the modulus of the pair. The bounds lie just above what was measured.
func TestAccuracy(t *testing.T) {
	pick := func(f func(x float64) (a, b, c, d float64), i int) func(x []float64) (float64, error) {
		return func(x []float64) (float64, error) {
			var v [4]float64
			v[0], v[1], v[2], v[3] = f(x[0])
			return v[i], nil
		}
	}
	edge := func(i int) func(x []float64) (float64, error) {
		return func(x []float64) (float64, error) {
			var v [2]float64
			v[0], v[1] = kelvin.Edge(x[0])
			return v[i], nil
		}
	}
	r := ulp.Open(t, "testdata/accuracy.csv")
	r.Within(3.5, "K re", pick(kelvin.K, 0))
	r.Within(3.5, "K im", pick(kelvin.K, 1))
	r.Within(3, "K' re", pick(kelvin.K, 2))
	r.Within(3, "K' im", pick(kelvin.K, 3))
	r.Within(4, "B re", pick(kelvin.B, 0))
	r.Within(5, "B im", pick(kelvin.B, 1))
	r.Within(4.5, "B' re", pick(kelvin.B, 2))
	r.Within(7, "B' im", pick(kelvin.B, 3))
	r.Within(2, "Edge g", edge(0))
	r.Within(4, "Edge h", edge(1))
	r.Within(4, "BerLess", func(x []float64) (float64, error) { return kelvin.BerLess(x[0]), nil })
}
