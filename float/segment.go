package float

import "math"

// The circle of radius 1, filled to the depth y (0 to 2), u = 1 - y above the
// water its centre, q = √(y(2-y)) half its chord:
//
//	A(y) = acos u - u q = 2 ∫ q dy
//
// For small y the two terms cancel, so A and its kin are summed from
//
//	q = √(2y) Σ c[k] y^k,  c[k] = binom(½, k) (-½)^k
//
// term by term: every term but the first is negative and small.

// terms is enough for y up to 1, where the remainder is 2⁻⁴⁸ of 1e-4.
const terms = 48

// chordSeries holds √2 c[k]/(k + j + 3/2) for the moments j = 0, 1, 2.
var chordSeries = func() (c [terms][3]float64) {
	b := math.Sqrt2
	for k := range c {
		f := float64(k)
		for j := range c[k] {
			c[k][j] = b / (f + float64(j) + 1.5)
		}
		b *= (0.5 - f) / (f + 1) * -0.5
	}
	return c
}()

// termsFor returns how many terms leave less than 1e-17 at the depth y ≤ 1.
func termsFor(y float64) int {
	switch {
	case y < 0.003:
		return 6
	case y < 0.03:
		return 9
	case y < 0.15:
		return 14
	case y < 0.35:
		return 20
	case y < 0.7:
		return 31
	}
	return terms
}

// segmentTail returns A(y)/(2 y^1.5) less its leading term, for 0 ≤ y ≤ 1.
func segmentTail(y float64) float64 {
	sum := 0.0
	for k := termsFor(y) - 1; k > 0; k-- {
		sum = float64((sum + chordSeries[k][0]) * y) // rounded here on every machine
	}
	return sum
}

// segment returns A(y) for 0 ≤ y ≤ 1 to 2 units in the last place.
func segment(y float64) float64 {
	return 2 * y * math.Sqrt(y) * (segmentTail(y) + chordSeries[0][0])
}

// segmentArea returns A(y) for 0 ≤ y ≤ 2 to about 1e-15, faster.
func segmentArea(y float64) float64 {
	if y < 0.35 {
		return segment(y)
	}
	q := math.Sqrt(y * (2 - y))
	return 2*math.Atan(q/(2-y)) - (1-y)*q
}

// segmentDepth returns the y ≤ 1 of an area 0 ≤ A ≤ π/2.
func segmentDepth(area float64) float64 {
	if !(area > 0) {
		return 0
	}
	const lead = 4 * math.Sqrt2 / 3 // A = lead y^1.5 for small y
	y := math.Cbrt(area / lead)
	y *= y
	y = min(y*(1+y*(0.1+0.03*y)), 1)
	for range 6 {
		// Halley's step on A(y) - area, A' = 2q, A" = 2u/q.
		f := segment(y) - area
		q := math.Sqrt(y * (2 - y))
		step := f / (2*q - f*(1-y)/(2*q*q))
		y = min(y-step, 1)
		if math.Abs(step) <= 1e-16*y {
			break
		}
	}
	return y
}

// A tail holds the integrals from the surface down to y: ∫q, ∫yq, ∫y²q dy.
type tail struct{ q0, q1, q2 float64 }

// tailTo returns the integrals for 0 ≤ y ≤ 2: by series while they cancel, in
// closed form beyond:
//
//	∫q = A/2,  ∫yq = A/2 - q³/3,  ∫y²q = A/2 - 2q³/3 + [acos u + u q (1 - 2u²)]/8
func tailTo(y float64) tail {
	if !(y > 0) {
		return tail{}
	}
	if y < 0.7 {
		var s0, s1, s2 float64
		for k := termsFor(y) - 1; k >= 0; k-- {
			c := &chordSeries[k]
			s0 = s0*y + c[0]
			s1 = s1*y + c[1]
			s2 = s2*y + c[2]
		}
		f := y * math.Sqrt(y)
		return tail{f * s0, f * y * s1, f * y * y * s2}
	}
	y = min(y, 2)
	u := 1 - y
	q := math.Sqrt(y * (2 - y))
	angle := 2 * math.Atan(math.Sqrt(y/(2-y)))
	q0 := (angle - u*q) / 2
	q3 := q * q * q / 3
	return tail{q0, q0 - q3, q0 - 2*q3 + (angle+u*q*(1-2*u*u))/8}
}
