package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// sums holds everything about one trial attitude: masses, buoyancy, energy over
// gravity, and the waterplane's moments for the directions e1 (the platform's x
// laid in the waterplane) and e2 = n × e1.
type sums struct {
	mass, gx, gy, gz          float64 // kg, kg m
	v, bx, by, bz             float64 // m³, m⁴
	energy                    float64 // kg m
	i0, i1, i2, i11, i12, i22 float64
	e1x, e1y, e1z             float64
	e2x, e2y, e2z             float64
}

// local holds the integrals of one body about its own centre: volume, its
// moment in platform axes, the waterplane's moments for e1 and e2.
type local struct {
	v, vx, vy, vz             float64
	w0, w1, w2, w11, w12, w22 float64
}

// at sums the platform with the up direction n and its origin d above the water.
//
// A point r stands n·r + d above the water. Energy over g:
//
//	E = M (n·G + d) - ρ ∫ (n·r + d) dV over all that is wet
//
// so that ∂E/∂d = M - ρV, and for a turn of n toward e: e·(M G - ρ V B); the
// second derivatives are ρ times the waterplane's moments, less n·(M G - ρ V B)
// for each of the two turns.
func (m *model) at(nx, ny, nz, d float64, s *sums) {
	*s = sums{mass: m.mass, gx: m.mx, gy: m.my, gz: m.mz}
	f := 1 / math.Sqrt((1-nx)*(1+nx))
	s.e1x, s.e1y, s.e1z = (1-nx)*(1+nx)*f, -nx*ny*f, -nx*nz*f
	s.e2x, s.e2y, s.e2z = ny*s.e1z-nz*s.e1y, nz*s.e1x-nx*s.e1z, nx*s.e1y-ny*s.e1x
	e1x, e1y, e2x, e2y := s.e1x, s.e1y, s.e2x, s.e2y
	var v, bx, by, bz, deep, i0, i1, i2, i11, i12, i22 float64
	for i := range m.parts {
		q := &m.parts[i]
		if q.odd {
			m.addOdd(q, nx, ny, nz, d, s)
			continue
		}
		// A strapped cylinder in level water, the common case.
		h := nx*q.x + ny*q.y + nz*q.z + d
		sl := nx*q.ca + ny*q.sa
		mm := (1 - sl) * (1 + sl)
		sm := math.Sqrt(mm)
		c := cutCylinder(h, sl, sm, q.r, q.l)
		if c.v == 0 {
			continue
		}
		im := 1 / sm
		t := c.t * im
		a := c.s - t*sl // along the axis
		v += c.v
		bx += c.v*q.x + a*q.ca + t*nx
		by += c.v*q.y + a*q.sa + t*ny
		bz += c.v*q.z + t*nz
		deep += h*c.v + sl*c.s + sm*c.t
		p1 := s.e1x*q.x + s.e1y*q.y + s.e1z*q.z
		p2 := s.e2x*q.x + s.e2y*q.y + s.e2z*q.z
		// The axis laid in the waterplane is (a1, a2) of e1 and e2, across it (a2, -a1).
		a1, a2 := (e1x*q.ca+e1y*q.sa)*im, (e2x*q.ca+e2y*q.sa)*im
		i0 += c.w0
		i1 += p1*c.w0 + a1*c.w1
		i2 += p2*c.w0 + a2*c.w1
		i11 += p1*(p1*c.w0+2*a1*c.w1) + a1*a1*c.w2 + a2*a2*c.wb
		i12 += p1*p2*c.w0 + (p1*a2+p2*a1)*c.w1 + a1*a2*(c.w2-c.wb)
		i22 += p2*(p2*c.w0+2*a2*c.w1) + a2*a2*c.w2 + a1*a1*c.wb
	}
	s.v += v
	s.bx += bx
	s.by += by
	s.bz += bz
	s.i0 += i0
	s.i1 += i1
	s.i2 += i2
	s.i11 += i11
	s.i12 += i12
	s.i22 += i22
	s.energy += nx*s.gx + ny*s.gy + nz*s.gz + d*s.mass - m.rho*deep
}

// addOdd adds a unit that is no plain cylinder: another body, captive, leaking,
// or on a wave.
func (m *model) addOdd(q *part, nx, ny, nz, d float64, s *sums) {
	rho := m.rho
	h := nx*q.x + ny*q.y + nz*q.z + d - q.rise
	ux, uy := nx-q.tx, ny-q.ty
	var w, inner local
	q.local(h, ux, uy, nz, s, &w)

	if q.captive {
		if w.v <= q.own || q.own >= q.volume {
			return // floats by itself, or lies on the bottom
		}
		// Held under the frame. From its energy goes what it would have
		// floating by itself at the same slope, so that force and moment
		// fade together when it lets go.
		q.localAt(q.own, ux, uy, nz, s, &inner)
		w.vx, w.vy, w.vz = w.vx-inner.vx, w.vy-inner.vy, w.vz-inner.vz
		own := rho * q.own
		s.mass += own
		s.gx, s.gy, s.gz = s.gx+own*q.x, s.gy+own*q.y, s.gz+own*q.z
		s.energy -= own * q.rise // it rides on the wave when free
		s.runs(&inner)
	}
	if q.loose > 0 {
		q.localAt(q.loose, nx, ny, nz, s, &inner)
		v := q.loose
		s.mass += rho * v
		s.gx += rho * (v*q.x + inner.vx)
		s.gy += rho * (v*q.y + inner.vy)
		s.gz += rho * (v*q.z + inner.vz)
		s.runs(&inner)
	}

	s.v += w.v
	s.bx += w.v*q.x + w.vx
	s.by += w.v*q.y + w.vy
	s.bz += w.v*q.z + w.vz
	s.energy -= rho * (h*w.v + ux*w.vx + uy*w.vy + nz*w.vz)
	p1 := s.e1x*q.x + s.e1y*q.y + s.e1z*q.z
	p2 := s.e2x*q.x + s.e2y*q.y + s.e2z*q.z
	s.i0 += w.w0
	s.i1 += p1*w.w0 + w.w1
	s.i2 += p2*w.w0 + w.w2
	s.i11 += p1*(p1*w.w0+2*w.w1) + w.w11
	s.i12 += p1*(p2*w.w0+w.w2) + p2*w.w1 + w.w12
	s.i22 += p2*(p2*w.w0+2*w.w2) + w.w22
}

// runs takes off the waterplane what water of a fixed volume inside a body takes
// from the stiffness: it levels itself.
func (s *sums) runs(w *local) {
	if !(w.w0 > 0) {
		return
	}
	s.i11 -= w.w11 - w.w1*w.w1/w.w0
	s.i12 -= w.w12 - w.w1*w.w2/w.w0
	s.i22 -= w.w22 - w.w2*w.w2/w.w0
}

// local fills w for the body's centre at the height h over a surface whose
// upward gradient of height is u, a unit vector on level water.
func (q *part) local(h, ux, uy, uz float64, s *sums, w *local) {
	if q.body != nil {
		up := r3.Vec{X: ux*q.ca + uy*q.sa, Y: uy*q.ca - ux*q.sa, Z: uz}
		wet := q.body.Wet(h, unitOf(up, &h))
		q.turn(&wet, up, s, w)
		return
	}
	sl := ux*q.ca + uy*q.sa
	m := math.Sqrt((1 - sl) * (1 + sl))
	c := cutCylinder(h, sl, m, q.r, q.l)
	q.lay(&c, sl, m, ux, uy, uz, s, w)
}

// localAt is local for the level at which the wet volume is v.
func (q *part) localAt(v, ux, uy, uz float64, s *sums, w *local) {
	if q.body != nil {
		up := r3.Vec{X: ux*q.ca + uy*q.sa, Y: uy*q.ca - ux*q.sa, Z: uz}
		var one float64
		wet := wetAt(q.body, v, unitOf(up, &one))
		q.turn(&wet, up, s, w)
		return
	}
	sl := ux*q.ca + uy*q.sa
	m := math.Sqrt((1 - sl) * (1 + sl))
	c := cutAt(v, sl, m, q.r, q.l)
	q.lay(&c, sl, m, ux, uy, uz, s, w)
}

// unitOf returns u as a unit vector and scales h with it.
func unitOf(u r3.Vec, h *float64) r3.Vec {
	n := math.Sqrt(u.X*u.X + u.Y*u.Y + u.Z*u.Z)
	*h /= n
	return r3.Vec{X: u.X / n, Y: u.Y / n, Z: u.Z / n}
}

// lay turns the integrals of a cylinder into platform axes.
func (q *part) lay(c *cut, sl, m, nx, ny, nz float64, s *sums, w *local) {
	ex, ey, ez := (nx-sl*q.ca)/m, (ny-sl*q.sa)/m, nz/m
	w.v = c.v
	w.vx, w.vy, w.vz = c.s*q.ca+c.t*ex, c.s*q.sa+c.t*ey, c.t*ez
	// The axis laid in the waterplane is (a1, a2) of e1 and e2, across it (a2, -a1).
	a1 := (s.e1x*q.ca + s.e1y*q.sa) / m
	a2 := (s.e2x*q.ca + s.e2y*q.sa) / m
	w.w0, w.w1, w.w2 = c.w0, a1*c.w1, a2*c.w1
	w.w11 = a1*a1*c.w2 + a2*a2*c.wb
	w.w22 = a2*a2*c.w2 + a1*a1*c.wb
	w.w12 = a1 * a2 * (c.w2 - c.wb)
}

// turn turns the integrals of any body into platform axes. On a sloping surface
// a rise by dh wets |up|⁻¹ dh of height, as the waterplane is measured along it.
func (q *part) turn(k *Wet, up r3.Vec, s *sums, w *local) {
	f := 1.0
	if q.wet {
		f = 1 / math.Sqrt(up.X*up.X+up.Y*up.Y+up.Z*up.Z)
	}
	w.v = k.Volume
	w.vx = k.VolumeMoment.X*q.ca - k.VolumeMoment.Y*q.sa
	w.vy = k.VolumeMoment.X*q.sa + k.VolumeMoment.Y*q.ca
	w.vz = k.VolumeMoment.Z
	e1 := r3.Vec{X: s.e1x*q.ca + s.e1y*q.sa, Y: s.e1y*q.ca - s.e1x*q.sa, Z: s.e1z}
	e2 := r3.Vec{X: s.e2x*q.ca + s.e2y*q.sa, Y: s.e2y*q.ca - s.e2x*q.sa, Z: s.e2z}
	w.w0 = f * k.Plane
	w.w1 = f * (e1.X*k.PlaneMoment.X + e1.Y*k.PlaneMoment.Y + e1.Z*k.PlaneMoment.Z)
	w.w2 = f * (e2.X*k.PlaneMoment.X + e2.Y*k.PlaneMoment.Y + e2.Z*k.PlaneMoment.Z)
	w.w11 = f * k.along(e1, e1)
	w.w12 = f * k.along(e1, e2)
	w.w22 = f * k.along(e2, e2)
}
