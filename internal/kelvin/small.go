package kelvin

import "math"

// small holds the power series below seriesK in u = (x/2)², with their
// derivatives with respect to u:
//
//	ber = Σ (-1)ᵏ u²ᵏ/(2k)!²          r0 = Σ (-1)ᵏ H(2k) u²ᵏ/(2k)!²
//	bei = Σ (-1)ᵏ u²ᵏ⁺¹/(2k+1)!²      r1 = Σ (-1)ᵏ H(2k+1) u²ᵏ⁺¹/(2k+1)!²
//
// H is the harmonic number and log is ln(x/2) + γ. The term left out, u¹²/12!²,
// is below 1e-22.
type small struct {
	u, log               float64
	ber, bei, r0, r1     float64
	dber, dbei, dr0, dr1 float64
	berLess              float64 // (1 - ber)/u
	beiOverU             float64
}

// terms holds (-1)^⌊n/2⌋/n!² and the harmonic numbers.
var terms, harmonic = func() (c, h [12]float64) {
	c[0] = 1
	for n := 1; n < len(c); n++ {
		c[n] = c[n-1] / float64(n*n)
		h[n] = h[n-1] + 1/float64(n)
	}
	for n := range c {
		if n&2 != 0 {
			c[n] = -c[n]
		}
	}
	return c, h
}()

// termsH is terms times harmonic.
var termsH = func() (c [12]float64) {
	for n := range c {
		c[n] = terms[n] * harmonic[n]
	}
	return c
}()

func (s *small) set(x float64) {
	u := x * x / 4
	v := u * u
	s.u, s.log = u, math.Log(x/2)+euler
	// Even and odd powers of u by Horner in u²; the derivative of cₙ uⁿ is
	// n cₙ uⁿ⁻¹.
	var be, bo, re, ro, de, do, dre, dro float64
	for n := 10; n >= 2; n -= 2 {
		be, re = be*v+terms[n], re*v+termsH[n]
		bo, ro = bo*v+terms[n+1], ro*v+termsH[n+1]
		f, g := float64(n), float64(n+1)
		de, dre = de*v+f*terms[n], dre*v+f*termsH[n]
		do, dro = do*v+g*terms[n+1], dro*v+g*termsH[n+1]
	}
	// Here be, re are the sums from n = 2 over u²; bo, ro from n = 3 over u³.
	s.berLess = -be * u
	s.ber = 1 + be*v
	s.beiOverU = 1 + bo*v
	s.bei = u * s.beiOverU
	s.r0 = re * v
	s.r1 = u * (1 + ro*v)
	s.dber = de * u
	s.dbei = 1 + do*v
	s.dr0 = dre * u
	s.dr1 = 1 + dro*v
}

// Edge returns the two kernels of a load with straight edges on a plate,
//
//	g(x) = (1 + x ker' x)/x²
//	h(x) = kei' x / x
//
// without the cancellation at small x: g(0) = π/8, and h grows as -½ ln x.
//
//	x = 0: π/8, +Inf
//	x < 0, NaN: NaN
func Edge(x float64) (g, h float64) {
	switch {
	case x == 0:
		return math.Pi / 8, math.Inf(1)
	case x > 0 && x < seriesK:
		var v small
		v.set(x)
		g = v.berLess/4 + (-v.log*v.dber+math.Pi/4*v.dbei+v.dr0)/2
		h = -v.beiOverU/4 + (-v.log*v.dbei-math.Pi/4*v.dber+v.dr1)/2
		return g, h
	}
	dker, dkei := Slopes(x)
	return (1 + x*dker) / (x * x), dkei / x
}

// Slopes returns ker' x and kei' x alone, as K does.
func Slopes(x float64) (dker, dkei float64) {
	if special, ok := edgeOfK(x); ok {
		return special[2], special[3]
	}
	if x < seriesK {
		_, _, dker, dkei = smallK(x)
		return dker, dkei
	}
	return decay(x).times(&k1)
}

// BerLess returns 1 - ber x without cancellation at small x.
//
//	x < 0, NaN: NaN
func BerLess(x float64) float64 {
	if x >= 0 && x < seriesK {
		u := x * x / 4
		v, sum := u*u, 0.0
		for n := 10; n >= 2; n -= 2 {
			sum = sum*v + terms[n]
		}
		return -sum * v
	}
	ber, _, _, _ := B(x)
	return 1 - ber
}
