package action

import (
	"math"
	"testing"
)

// A body far larger than the characteristic length is a wall, a thin one a
// point: both limits of both edges.
func TestRingLimits(t *testing.T) {
	for _, c := range []struct {
		name      string
		α         float64
		of        func(edges) float64
		want, off float64
	}{
		{"point, held", 1e-5, func(e edges) float64 { return e.held }, 8, 1e-6},
		{"point, free", 1e-5, func(e edges) float64 { return e.free }, 8, 1e-6},
		{"wall, held, per outline", 400, func(e edges) float64 { return e.held / (2 * math.Pi * 400) }, math.Sqrt2, 0.003},
		{"wall, free, per outline", 400, func(e edges) float64 { return e.free / (2 * math.Pi * 400) }, 1 / math.Sqrt2, 0.002},
		{"wall, held, moment", 400, func(e edges) float64 { return e.heldMoment }, 1, 0.003},
		{"wall, free, moment at the edge", 400, func(e edges) float64 { return e.freeMoment }, 0, 0.003},
	} {
		if got := c.of(ring(c.α, 0.33)); !(math.Abs(got-c.want) <= c.off) {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
	// The error of the wall's limit halves as the body doubles.
	off := func(α float64) float64 { return ring(α, 0.33).held/(2*math.Pi*α) - math.Sqrt2 }
	if r := off(50) / off(100); math.Abs(r-2) > 0.02 {
		t.Errorf("error of the wall's limit falls by %g, not 2, as the body doubles", r)
	}
}

// The held edge does not ask for Poisson's ratio, the free one does.
func TestRingPoisson(t *testing.T) {
	for α := 1e-3; α <= 1; α *= 1.5 {
		a, b := ring(α, 0), ring(α, 0.4)
		if a.held != b.held || a.heldMoment != b.heldMoment {
			t.Errorf("α %g: the held edge depends on Poisson's ratio", α)
		}
		if a.free == b.free || !(a.free < a.held && b.free < b.held) {
			t.Errorf("α %g: free %g and %g, held %g", α, a.free, b.free, a.held)
		}
	}
}

// The beam with a free end buckles at k l² (Hetényi): with w = Re c exp(λx),
// λ⁴ + N λ² + 1 = 0, no moment and no shear at the end need Im λ³ = 0, that is
// λ = exp(2πi/3) and N = 1. A check of the figure that the cap starts from.
func TestBucklingFreeEnd(t *testing.T) {
	sin, cos := math.Sincos(2 * math.Pi / 3)
	λ := complex(cos, sin)
	const n = 1.0
	if r := λ*λ*λ*λ + n*λ*λ + 1; math.Hypot(real(r), imag(r)) > 1e-15 {
		t.Errorf("λ does not solve the beam: %v", r)
	}
	shear := λ*λ*λ + n*λ
	if x := real(λ*λ)*imag(shear) - imag(λ*λ)*real(shear); math.Abs(x) > 1e-15 {
		t.Errorf("the end is not free: %g", x)
	}
}
