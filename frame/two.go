package frame

import "math"

// A two is a number in two parts, hi + lo, with about 32 digits. Movements are
// kept so: the force in a short stiff piece is the difference of nearly equal
// movements, and would otherwise drown in their rounding.
type two struct{ hi, lo float64 }

// twoSum returns a + b and its rounding error, exactly (Knuth).
func twoSum(a, b float64) (sum, rest float64) {
	sum = a + b
	bb := sum - a
	return sum, (a - (sum - bb)) + (b - bb)
}

// plus returns t + x.
func (t two) plus(x float64) two {
	s, e := twoSum(t.hi, x)
	s, e = twoSum(s, e+t.lo)
	return two{s, e}
}

// sum returns t rounded to one part.
func (t two) sum() float64 { return t.hi + t.lo }

// minus returns t - u, rounded to one part.
func (t two) minus(u two) float64 {
	s, e := twoSum(t.hi, -u.hi)
	return s + (e + (t.lo - u.lo))
}

// offLine returns wj - wi - h·slope, rounded to one part: how far a piece of
// length h has left the straight line it had at its near end.
func offLine(wj, wi, slope two, h float64) float64 {
	p := float64(h * slope.hi) // rounded here: fused into a sum, its rest would be counted twice
	pe := math.FMA(h, slope.hi, -p)
	s, e := twoSum(wj.hi, -wi.hi)
	s, f := twoSum(s, -p)
	low := float64(h * slope.lo)
	return s + ((e + f) - pe + ((wj.lo - wi.lo) - low))
}
