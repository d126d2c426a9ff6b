// Package kelvin computes the Kelvin functions of order zero and their
// derivatives:
//
//	ber x + i bei x = J0(x exp(3πi/4)) = I0(x exp(iπ/4))
//	ker x + i kei x = K0(x exp(iπ/4))
//
// For 1e-6 ≤ x ≤ 50 the error is within 2.9 units in the last place of the modulus
// of the pair (ker, kei), worst at (43.87), and within 5.9 of that of (ber, bei) and
// (ber', bei'), worst at (6.143), where the series cancels; near a zero of one
// function its own relative error is larger. The kernels of a straight edge and 1 - ber are
// within 3.6, worst at (2.526). They are mathematical functions: out of their domain (x < 0, NaN)
// every value is NaN.
//
// Source: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions,
// 1964, 9.9 (definitions, power series; from memory), with coefficients of our
// own above the power series.
package kelvin

import "math"

const (
	seriesK = 1.25 // below: power series of ker and kei
	seriesB = 8.0  // below: power series of ber and bei

	euler = 0.57721566490153286060651209 // Euler's constant γ

	// 1/√2 in two parts: the second is what the first leaves.
	invSqrt2    = 1 / math.Sqrt2
	invSqrt2Low = -4.8336466567264567e-17
)

// K returns ker x, kei x and their derivatives.
//
//	x = 0: +Inf, -π/4, -Inf, 0
//	x = +Inf: 0, 0, 0, 0
//	x < 0, NaN: NaN
func K(x float64) (ker, kei, dker, dkei float64) {
	if special, ok := edgeOfK(x); ok {
		return special[0], special[1], special[2], special[3]
	}
	if x < seriesK {
		return smallK(x)
	}
	d := decay(x)
	ker, kei = d.times(&k0)
	dker, dkei = d.times(&k1)
	return ker, kei, dker, dkei
}

// Pair returns ker x and kei x alone, as K does.
func Pair(x float64) (ker, kei float64) {
	if special, ok := edgeOfK(x); ok {
		return special[0], special[1]
	}
	if x < seriesK {
		ker, kei, _, _ = smallK(x)
		return ker, kei
	}
	return decay(x).times(&k0)
}

// edgeOfK holds the values where no formula is evaluated.
func edgeOfK(x float64) ([4]float64, bool) {
	switch {
	case !(x >= 0):
		n := math.NaN()
		return [4]float64{n, n, n, n}, true
	case x == 0:
		return [4]float64{math.Inf(1), -math.Pi / 4, math.Inf(-1), 0}, true
	case x > 1100: // exp(-x/√2) has vanished
		return [4]float64{}, true
	}
	return [4]float64{}, false
}

// A decaying is exp(-z)/√x, z = x exp(iπ/4), and where to look up its factor.
type decaying struct {
	re, im float64
	s      float64
	piece  int
}

// decay computes the common factor of the functions at x ≥ seriesK. The phase
// x/√2 is kept in two parts, or its rounding would grow to 1e-14 at 50.
func decay(x float64) decaying {
	p := x * invSqrt2
	low := math.FMA(x, invSqrt2, -p) + x*invSqrt2Low
	sin, cos := math.Sincos(p)
	size := math.Exp(-p) / math.Sqrt(x)
	// exp(-(p + low)(1 + i)) = exp(-p) (cos - i sin) (1 - low (1 + i))
	d := decaying{
		re: size * (cos - low*(cos+sin)),
		im: size * (-sin - low*(cos-sin)),
	}
	t := 1 / x
	switch {
	case t <= edges[1]:
	case t <= edges[2]:
		d.piece = 1
	case t <= edges[3]:
		d.piece = 2
	default:
		d.piece = 3
	}
	a, b := edges[d.piece], edges[d.piece+1]
	d.s = (2*t - (a + b)) / (b - a)
	return d
}

// times multiplies by the polynomial of the piece.
func (d decaying) times(k *[4]poly) (re, im float64) {
	re, im = k[d.piece].at(d.s)
	return d.re*re - d.im*im, d.re*im + d.im*re
}

// at evaluates the polynomial, even and odd powers apart to shorten the chain.
func (p *poly) at(s float64) (re, im float64) {
	q := s * s
	re0, im0, re1, im1 := p[12][0], p[12][1], p[13][0], p[13][1]
	for k := 10; k >= 0; k -= 2 {
		re0, im0 = re0*q+p[k][0], im0*q+p[k][1]
		re1, im1 = re1*q+p[k+1][0], im1*q+p[k+1][1]
	}
	return re0 + s*re1, im0 + s*im1
}

// smallK evaluates the power series at 0 < x < seriesK.
func smallK(x float64) (ker, kei, dker, dkei float64) {
	var v small
	v.set(x)
	l := v.log
	ker = -l*v.ber + math.Pi/4*v.bei + v.r0
	kei = -l*v.bei - math.Pi/4*v.ber + v.r1
	// x d/dx is 2u d/du; the logarithm adds -ber, -bei.
	dker = (-v.ber + 2*v.u*(-l*v.dber+math.Pi/4*v.dbei+v.dr0)) / x
	dkei = (-v.bei + 2*v.u*(-l*v.dbei-math.Pi/4*v.dber+v.dr1)) / x
	return ker, kei, dker, dkei
}

// B returns ber x, bei x and their derivatives.
//
//	x = 0: 1, 0, 0, 0
//	x > 1000: the values overflow to infinities or NaN
//	x < 0, NaN: NaN
func B(x float64) (ber, bei, dber, dbei float64) {
	switch {
	case !(x >= 0):
		n := math.NaN()
		return n, n, n, n
	case x < seriesB:
		return smallB(x)
	}
	p := x * invSqrt2
	low := math.FMA(x, invSqrt2, -p) + x*invSqrt2Low
	sin, cos := math.Sincos(p)
	size := math.Exp(p) / math.Sqrt(x)
	re, im := size*(cos+low*(cos-sin)), size*(sin+low*(cos+sin))
	s := 16/x - 1
	a0, b0 := horner(&i0, s)
	a1, b1 := horner(&i1, s)
	ker, kei, dker, dkei := K(x)
	// I0 = its growing part + (i/π) K0, and the same for the derivatives.
	ber = re*a0 - im*b0 - kei/math.Pi
	bei = re*b0 + im*a0 + ker/math.Pi
	dber = re*a1 - im*b1 - dkei/math.Pi
	dbei = re*b1 + im*a1 + dker/math.Pi
	return ber, bei, dber, dbei
}

func horner(c *[16][2]float64, s float64) (re, im float64) {
	for k := 15; k >= 0; k-- {
		re, im = re*s+c[k][0], im*s+c[k][1]
	}
	return re, im
}

// smallB sums the power series of ber and bei until the terms vanish. The
// largest term is ten times the sum at seriesB.
func smallB(x float64) (ber, bei, dber, dbei float64) {
	u := x * x / 4
	term := 1.0 // uᵏ/k!²
	for k := 0; ; k++ {
		sign := 1.0
		if k&2 != 0 {
			sign = -1
		}
		value, slope := sign*term, sign*term*2*float64(k) // x d/dx uᵏ = 2k uᵏ
		if k&1 == 0 {
			ber, dber = ber+value, dber+slope
		} else {
			bei, dbei = bei+value, dbei+slope
		}
		if k > 2 && term < 1e-22 {
			break
		}
		term *= u / float64((k+1)*(k+1))
	}
	if x > 0 {
		dber, dbei = dber/x, dbei/x
	}
	return ber, bei, dber, dbei
}
