package layout

import (
	"math"
	"testing"
)

// Beams of equal spans L under a force P, by the theorem of three moments, worked by
// hand: at the middle of one of two spans the moment over the middle support is 3/32 PL
// and under the force 13/64 PL, and that support takes 11/16 P; at the middle of the
// second of three, 3/40 PL and 7/40 PL, and both inner supports take 23/40 P; past the
// end of a beam of two, P times the arm over the end, which takes P (1 + 5/4 arm/L).
func TestContinuousByHand(t *testing.T) {
	const p, l = 700, 0.6
	for _, c := range []struct {
		name             string
		supports         []float64
		loads            []load
		moment, reaction float64
	}{
		{"one span", []float64{0, l}, []load{{l / 2, p}}, p * l / 4, p / 2.},
		{"a third along it", []float64{0, l}, []load{{l / 3, p}}, p * l * 2 / 9, p * 2. / 3},
		{"two spans, the first", []float64{0, l, 2 * l}, []load{{l / 2, p}}, p * l * 13 / 64, p * 11. / 16},
		{"two spans, the second", []float64{1, 1 + l, 1 + 2*l}, []load{{1 + 1.5*l, p}}, p * l * 13 / 64, p * 11. / 16},
		{"three spans, the second", []float64{0, l, 2 * l, 3 * l}, []load{{1.5 * l, p}}, p * l * 7 / 40, p * 23. / 40},
		{"three spans, over the second support", []float64{0, l, 2 * l, 3 * l}, []load{{l, p}}, 0, p},
		{"past the end", []float64{0, l, 2 * l}, []load{{-l / 2, p}}, p * l / 2, p * (1 + 1.25/2)},
		{"two forces that meet", []float64{0, l, 2 * l, 3 * l}, []load{{1.5 * l, p / 2}, {1.5 * l, p / 2}}, p * l * 7 / 40, p * 23. / 40},
	} {
		m, r := continuous(c.supports, c.loads)
		if math.Abs(m-c.moment) > 1e-9*p || math.Abs(r-c.reaction) > 1e-9*p {
			t.Errorf("%s: %g PL and %g P, by hand %g PL and %g P", c.name, m/p/l, r/p, c.moment/p/l, c.reaction/p)
		}
	}
}
