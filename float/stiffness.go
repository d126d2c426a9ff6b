package float

import (
	"math"
)

// An ending is how a search for rest ended.
type ending struct {
	d        float64
	residual float64
	class    error // nil at rest
	k        stiffness
}

// A stiffness is that against turns toward e1 and e2 at constant displacement,
// over g: kg m.
type stiffness struct{ k11, k12, k22 float64 }

// principal returns the smaller and the larger eigenvalue, and the direction
// (c, s) of the smaller.
func (k stiffness) principal() (lo, hi, c, s float64) {
	mean, diff := (k.k11+k.k22)/2, (k.k11-k.k22)/2
	r := math.Hypot(diff, k.k12)
	lo, hi = mean-r, mean+r
	if r == 0 {
		return lo, hi, 0, 1
	}
	// The direction of hi is at half the angle of (diff, k12).
	if diff >= 0 {
		c, s = -k.k12, r+diff
	} else {
		c, s = diff-r, k.k12
	}
	n := math.Hypot(c, s)
	return lo, hi, c / n, s / n
}

// forces returns the imbalance of s: its gradient, the waterplane's share in
// the stiffness, and its size over the weight.
func (m *model) forces(nx, ny, nz float64, s *sums) (g0, g1, g2, curve, residual float64) {
	rho := m.rho
	g0 = s.mass - rho*s.v
	tx, ty, tz := s.gx-rho*s.bx, s.gy-rho*s.by, s.gz-rho*s.bz
	g1 = s.e1x*tx + s.e1y*ty + s.e1z*tz
	g2 = s.e2x*tx + s.e2y*ty + s.e2z*tz
	curve = nx*tx + ny*ty + nz*tz
	residual = max(math.Abs(g0), math.Sqrt(g1*g1+g2*g2)/m.length) / s.mass
	return g0, g1, g2, curve, residual
}
