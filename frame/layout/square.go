package layout

import (
	"math"

	"example.org/floewright/lumber/measure"
)

var (
	srcTape = &measure.Source{Title: "sides and diagonals of a dock by tape", Status: measure.OwnChoice}
	lengths = measure.Range{Kind: measure.Length, Lo: 0, Hi: 1000, OpenLo: true, Source: srcTape}
)

// Diagonal returns the diagonal in m of a square-cornered frame with sides a and b in m:
// what both tapes should read, for the sides as measured (exact, Pythagoras). Within 1.9
// units in the last place.
// Worst at (0.9589, 0.1149), ordered as in testdata/accuracy.csv.
func Diagonal(a, b float64) (float64, error) {
	if err := lengths.Check("side", a); err != nil {
		return 0, err
	}
	if err := lengths.Check("side", b); err != nil {
		return 0, err
	}
	return math.Hypot(a, b), nil
}

// Corner returns the angle in rad between two sides of a triangle, from them and
// the third side, all in m: a corner checked with 12, 16 and 20 ft.
//
//	cos γ = (a² + b² - c²)/(2ab)
//
// It is the law of cosines, and keeps its digits for sharp and flat corners. Three
// lengths that close no triangle are an error. Within 2.9 units in the last place.
// Worst at (1.253, 1.049, 1.055), ordered as in testdata/accuracy.csv.
func Corner(a, b, c float64) (float64, error) {
	for _, s := range []float64{a, b, c} {
		if err := lengths.Check("side", s); err != nil {
			return 0, err
		}
	}
	// Half of the angle by its tangent (W. Kahan's arrangement of Heron's formula).
	if a < b {
		a, b = b, a
	}
	μ := c - (a - b)
	if c > b {
		μ = b - (a - c)
	}
	num, den := ((a-b)+c)*μ, (a+(b+c))*((a-c)+b)
	if !(num >= 0 && den >= 0 && num+den > 0) {
		return 0, &measure.Error{
			Field: "third side", Kind: measure.Length, Value: c, Class: measure.ErrRange, Why: "the three close no triangle",
			Range: measure.Range{Kind: measure.Length, Lo: a - b, Hi: a + b, Source: &measure.Source{Title: "triangle inequality", Status: measure.Exact}},
		}
	}
	return 2 * math.Atan2(math.Sqrt(num), math.Sqrt(den)), nil
}

// Racked returns how far a frame whose opposite sides are equal leans, from its
// sides a and b and its diagonals, all in m: the offset in m of the far side a
// along itself over the side b, and the angle in rad by which its corners miss a
// right angle, both positive where the first diagonal is the longer.
//
//	sin e = (d1² - d2²)/(4ab),  offset = b sin e = (d1² - d2²)/(4a)
//
// The diagonals of such a frame obey d1² + d2² = 2(a² + b²), the parallelogram law,
// geometry as all of this; [Frame.Misfit] tells whether measured ones do. To square it,
// push the corners of the long diagonal until that is shorter by half of the difference.
// Within 2.5 units in the last place.
// Worst at (7.263, 6.918, 2.658, 13.93), ordered as in testdata/accuracy.csv.
func Racked(a, b, d1, d2 float64) (offset, angle float64, err error) {
	for _, s := range []float64{a, b, d1, d2} {
		if err := lengths.Check("side or diagonal", s); err != nil {
			return 0, 0, err
		}
	}
	sin := (d1 - d2) / (2 * a) * ((d1 + d2) / (2 * b))
	if !(math.Abs(sin) <= 1) {
		return 0, 0, &measure.Error{
			Field: "diagonals", Value: d1 - d2, Kind: measure.Length, Class: measure.ErrRange,
			Why: "no frame with such sides has diagonals so far apart", Want: "diagonals measured from corner to corner of this frame",
		}
	}
	return b * sin, math.Asin(sin), nil
}

// A Frame is a four-sided frame as measured, m: the sides in order around it, A
// from corner 1 to corner 2, and the diagonals, P from corner 1 to 3 and Q from
// corner 2 to 4.
type Frame struct{ A, B, C, D, P, Q float64 }

// Corners returns the angles in rad at corners 1 to 4, from the sides and the
// diagonal P, by the law of cosines. They add up to a full turn.
func (f Frame) Corners() ([4]float64, error) {
	var out [4]float64
	for _, t := range []struct {
		a, b, c float64
		at      int
	}{
		{f.A, f.P, f.B, 0}, {f.P, f.D, f.C, 0}, {f.A, f.B, f.P, 1}, {f.B, f.P, f.A, 2}, {f.P, f.C, f.D, 2}, {f.C, f.D, f.P, 3},
	} {
		γ, err := Corner(t.a, t.b, t.c)
		if err != nil {
			return out, err
		}
		out[t.at] += γ
	}
	return out, nil
}

// Misfit returns the diagonal Q as measured less the one that the sides and P make in a
// flat frame, m, by the law of cosines. Beyond what the tape may be wrong by, some
// reading is wrong or the frame is twisted. Within 1.9 units in the last place of Q.
// Worst at (4.643, 3.681, 4.661, 2.749, 6.092, 5.121), ordered as in testdata/accuracy.csv.
func (f Frame) Misfit() (float64, error) {
	if err := lengths.Check("diagonal Q", f.Q); err != nil {
		return 0, err
	}
	corners, err := f.Corners()
	if err != nil {
		return 0, err
	}
	// Q closes the triangle of the sides at corner 1.
	half := math.Sin(corners[0] / 2)
	return f.Q - math.Sqrt((f.A-f.D)*(f.A-f.D)+4*f.A*f.D*half*half), nil
}
