package ice

import (
	"math"
	"testing"
)

// bessel returns I0 and I1 by their series.
func bessel(x float64) (i0, i1 float64) {
	term := 1.0
	for k := 0.0; k < 400; k++ {
		i0 += term
		i1 += term * x / 2 / (k + 1)
		term *= x * x / 4 / ((k + 1) * (k + 1))
	}
	return i0, i1
}

// TestMaxwell: where the ice only flows, ε = σ/E + c t σ, the sag under a point
// is known in closed form: with x = E c t/2,
//
//	w(t) = w(0) exp(-x) [(1 + 2x) I0(x) + 2x I1(x)]
//
// as w is proportional to √(p J̃(p)) and √(p + 2a)/p^(3/2) turns back to that.
func TestMaxwell(t *testing.T) {
	c := Creep{Temperature: -10, Grain: 1e6, E: 5e9} // grains of a kilometre do not delay
	s, err := newSinking(0.4, []Patch{{A: 0.002, Force: 1000}})
	if err != nil {
		t.Fatal(err)
	}
	s.peak = 0.3e6
	start, err := s.secant(c.E)
	if err != nil {
		t.Fatal(err)
	}
	deeper := false
	for _, seconds := range []float64{100, 1e4, 1e5, 1e6, 3e6} {
		x := c.E * (c.compliance(s.peak, seconds) - 1/c.E) / 2
		i0, i1 := bessel(x)
		want := start * math.Exp(-x) * ((1+2*x)*i0 + 2*x*i1)
		got, err := s.crept(c, seconds)
		if err != nil || math.Abs(got/want-1) > 1e-4 {
			t.Errorf("after %g s, x = %g: %g m, %v; closed form %g m", seconds, x, got, err, want)
		}
		secant, err := s.secant(1 / c.compliance(s.peak, seconds))
		if err != nil || secant > got {
			t.Errorf("after %g s the secant modulus says %g m, more than %g, %v", seconds, secant, got, err)
		}
		deeper = deeper || got > 1.1*secant
	}
	if !deeper {
		t.Error("nothing flowed long enough for the 13 % between the two")
	}
	if now, err := s.crept(c, 0); err != nil || now != start {
		t.Errorf("at once %g m, %v, elastic %g m", now, err, start)
	}
}

// TestTransformed: the transform of the compliance, against the integral summed
// by parts of a thousandth.
func TestTransformed(t *testing.T) {
	for _, c := range []Creep{{Temperature: -2, Grain: 3e-3, E: 9.5e9}, softest, stiffest} {
		for _, rate := range []float64{1e-6, 1e-4, 1} {
			sum := 0.0
			const step = 1e-3
			for u := step / 2; u < 40; u += step {
				sum += c.compliance(1e5, u/rate) * math.Exp(-u) * step
			}
			if got := c.transformed(1e5, rate); math.Abs(got/sum-1) > 2e-4 {
				t.Errorf("%+v at %g/s: %g, summed %g", c, rate, got, sum)
			}
		}
	}
}

// TestStehfest: constants and powers come back from their transforms.
func TestStehfest(t *testing.T) {
	for _, power := range []float64{0, 0.34, 0.5, 1} {
		got := 0.0
		for k, v := range stehfest {
			p := float64(k+1) * math.Ln2 / 2 // at t = 2
			got += math.Ln2 / 2 * v * math.Gamma(1+power) / math.Pow(p, 1+power)
		}
		if want := math.Pow(2, power); math.Abs(got/want-1) > 1e-4 {
			t.Errorf("2^%g = %g by the inversion, want %g", power, got, want)
		}
	}
}

// TestAlternating: two integrals that are known.
func TestAlternating(t *testing.T) {
	for _, a := range []float64{0.02, 0.5, 3} {
		si, run := alternating(func(x float64) (float64, float64) {
			s := 1.0
			if x > 0 {
				s = math.Sin(a*x) / (a * x)
			}
			return s, x * x / (1 + x*x) * s
		}, math.Pi/a)
		if want := math.Pi / 2 / a; math.Abs(si/want-1) > 1e-9 {
			t.Errorf("a = %g: ∫ sin(ax)/(ax) is %g, want %g", a, si, want)
		}
		if want := math.Pi / 2 / a * math.Exp(-a); math.Abs(run/want-1) > 1e-8 {
			t.Errorf("a = %g: ∫ x sin(ax)/(a (1+x²)) is %g, want %g", a, run, want)
		}
	}
}

// TestHull: a ring of corners whatever their order, and none of fewer than three
// or of points in a line.
func TestHull(t *testing.T) {
	square := []point{{0, 0}, {4, 3}, {4, 0}, {2, 1}, {0, 3}, {4, 0}, {2, 0}}
	ring := hull(square)
	area := 0.0
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		area += (a[0]*b[1] - a[1]*b[0]) / 2
	}
	if len(ring) != 4 || area != 12 {
		t.Errorf("ring %v, area %g", ring, area)
	}
	for _, few := range [][]point{nil, {{1, 1}}, {{0, 0}, {1, 1}}, {{0, 0}, {1, 1}, {2, 2}, {3, 3}}, {{1, 1}, {1, 1}, {1, 1}, {1, 1}}} {
		if ring := hull(few); len(ring) > 2 {
			t.Errorf("%v has the ring %v", few, ring)
		}
	}
}
