package float

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// turn turns the up direction by (p1, p2) toward e1 and e2 of s.
func turn(x, y, z *float64, p1, p2 float64, s *sums) {
	nx := *x + p1*s.e1x + p2*s.e2x
	ny := *y + p1*s.e1y + p2*s.e2y
	nz := *z + p1*s.e1z + p2*s.e2z
	f := 1 / math.Sqrt(nx*nx+ny*ny+nz*nz)
	*x, *y, *z = nx*f, ny*f, nz*f
}

// guess returns a level near that at which the bodies carry the load: exact for
// one level cylinder half full, 2 % of its diameter off elsewhere.
func (m *model) guess(nx, ny, nz float64) float64 {
	load := m.mass / m.rho
	var all, height float64
	for i := range m.parts {
		q := &m.parts[i]
		load += q.loose + q.own
		all += q.volume
		height += q.volume * (nx*q.x + ny*q.y + nz*q.z - q.rise)
	}
	y := max(1-2*load/all, -1)
	return m.high*y*(0.8+0.2*y*y) - height/all
}

// levelled returns the level at which the bodies carry the load at the attitude
// n, to 1e-3 of the load and beyond where Newton is quick, and leaves s there.
// What is carried falls steadily as the platform rises.
func (m *model) levelled(nx, ny, nz, d float64, s *sums) float64 {
	over := func(at float64) float64 { // weight less buoyancy: grows with at
		m.at(nx, ny, nz, at, s)
		return s.mass - m.rho*s.v
	}
	step := m.high + m.length*0.1
	lo, hi := d, d
	if over(d) > 0 {
		for i := 0; i < 60; i++ {
			lo -= step
			if over(lo) <= 0 {
				break
			}
			hi = lo
			step *= 2
		}
	} else {
		for i := 0; i < 60; i++ {
			hi += step
			if over(hi) > 0 {
				break
			}
			lo = hi
			step *= 2
		}
	}
	d = lo + (hi-lo)/2
	for range 200 {
		g := over(d)
		if g > 0 {
			hi = d
		} else {
			lo = d
		}
		if math.Abs(g) <= 1e-14*s.mass || hi-lo <= 1e-16*max(math.Abs(lo), math.Abs(hi)) {
			break
		}
		next := d - g/(m.rho*s.i0)
		if !(next > lo && next < hi) {
			next = lo + (hi-lo)/2
		}
		if next == d {
			break
		}
		d = next
	}
	return d
}

// lacking returns the righting moment, N·m, that is lacking along the way from
// level to the attitude n, at the tilt where least is lacking.
func (m *model) lacking(nx, ny, nz float64) float64 {
	tilt := math.Atan2(math.Hypot(nx, ny), nz)
	hx, hy := nx, ny
	if h := math.Hypot(hx, hy); h > 0 {
		hx, hy = hx/h, hy/h
	}
	const steps = 24
	best := math.Inf(-1)
	var s sums
	d := m.guess(0, 0, 1)
	for i := 1; i <= steps; i++ {
		sin, cos := math.Sincos(tilt * float64(i) / steps)
		x, y, z := hx*sin, hy*sin, cos
		d = m.levelled(x, y, z, d, &s)
		// The moment that turns n on, along (hx cos, hy cos, -sin).
		tx, ty, tz := s.gx-m.rho*s.bx, s.gy-m.rho*s.by, s.gz-m.rho*s.bz
		right := hx*cos*tx + hy*cos*ty - sin*tz
		best = max(best, right)
	}
	return max(-best, 0) * measure.Gravity
}
