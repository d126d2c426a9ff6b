package moor

import "math"

// push returns what a post does to the dock, in which direction it stiffens how
// much along and across, and the turned arm.
func (p *Post) push(q [3]float64) (fx, fy, ux, uy, along, across, ax, ay float64) {
	sin, cos := math.Sincos(q[2])
	ax, ay = cos*p.At[0]-sin*p.At[1], sin*p.At[0]+cos*p.At[1]
	dx, dy := q[0]+ax-p.At[0], q[1]+ay-p.At[1]
	d := math.Sqrt(dx*dx + dy*dy)
	switch {
	case p.Play == 0: // stiff all ways alike, also where it has not moved
		return -p.Stiffness * dx, -p.Stiffness * dy, 1, 0, p.Stiffness, p.Stiffness, ax, ay
	case d <= p.Play:
		return 0, 0, 1, 0, 0, 0, ax, ay
	}
	ux, uy = -dx/d, -dy/d
	f := p.Stiffness * (d - p.Play)
	return f * ux, f * uy, ux, uy, p.Stiffness, f / d, ax, ay
}

// add counts a force at a turned arm, and its stiffness along and across u. The
// force itself stiffens the turn by its outward part.
func add(r *[3]float64, k *[3][3]float64, ax, ay, fx, fy, ux, uy, along, across float64) {
	r[0] += fx
	r[1] += fy
	r[2] += ax*fy - ay*fx
	xx := along*ux*ux + across*uy*uy
	xy := (along - across) * ux * uy
	yy := along*uy*uy + across*ux*ux
	// A turn moves the fitting by (-ay, ax).
	xt, yt := -ay*xx+ax*xy, -ay*xy+ax*yy
	k[0][0] += xx
	k[0][1] += xy
	k[1][1] += yy
	k[0][2] += xt
	k[1][2] += yt
	k[2][2] += -ay*xt + ax*yt + fx*ax + fy*ay
}

// downhill solves (k + shift) d = r with the given shift, raised by tens until
// the matrix is positive; soft is a small stiffness to begin with. The
// turn is measured at the arm.
func downhill(k [3][3]float64, r [3]float64, arm, soft, shift float64) [3]float64 {
	scale := [3]float64{1, 1, arm * arm}
	top := k[0][0] + k[1][1] + math.Abs(k[2][2])/(arm*arm) + soft
	for range 60 {
		a := k[0][0] + shift*scale[0]
		if a > 1e-12*top {
			l10, l20 := k[0][1]/a, k[0][2]/a
			b := k[1][1] + shift*scale[1] - l10*k[0][1]
			if b > 1e-12*top {
				m := k[1][2] - l10*k[0][2]
				l21 := m / b
				c := k[2][2] + shift*scale[2] - l20*k[0][2] - l21*m
				if c > 1e-12*top*arm*arm {
					y0 := r[0]
					y1 := r[1] - l10*y0
					y2 := r[2] - l20*y0 - l21*y1
					d2 := y2 / c
					d1 := y1/b - l21*d2
					d0 := y0/a - l10*d1 - l20*d2
					return [3]float64{d0, d1, d2}
				}
			}
		}
		shift = math.Max(10*shift, 1e-6*top)
	}
	return [3]float64{} // no finite stiffness: the search ends where it is
}
