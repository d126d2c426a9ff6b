package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// frameOfMotion holds the directions of the small motions, in the platform's
// axes: up, the two level ones, and the centre of gravity that they pivot on.
// Coordinate 0 raises the centre of gravity, 1 and 2 turn up toward e1 and e2: a
// point at p (from that centre) rises by q0 + q1 p·e1 + q2 p·e2.
type frameOfMotion struct{ n, e1, e2, g r3.Vec }

// stiffness returns the second derivatives of the potential energy, N/m and so on.
func (f *frameOfMotion) stiffness(s *sums, rho float64) matrix3 {
	g1, g2 := r3.Dot(f.e1, f.g), r3.Dot(f.e2, f.g)
	tip := f.n.X*(s.gx-rho*s.bx) + f.n.Y*(s.gy-rho*s.by) + f.n.Z*(s.gz-rho*s.bz)
	i1, i2 := s.i1-g1*s.i0, s.i2-g2*s.i0
	i11 := s.i11 - g1*(2*s.i1-g1*s.i0)
	i22 := s.i22 - g2*(2*s.i2-g2*s.i0)
	i12 := s.i12 - g1*s.i2 - g2*s.i1 + g1*g2*s.i0
	k := matrix3{
		{rho * s.i0, rho * i1, rho * i2},
		{rho * i1, rho*i11 - tip, rho * i12},
		{rho * i2, rho * i12, rho*i22 - tip},
	}
	for i := range k {
		for j := range k[i] {
			k[i][j] *= measure.Gravity
		}
	}
	return k
}

// mass adds a mass at a place to the inertia. own gives the second moments of the
// body about its centre for two directions; nil is a point.
func (f *frameOfMotion) mass(m *matrix3, mass float64, at r3.Vec, own func(a, b r3.Vec) float64) {
	p := r3.Sub(at, f.g)
	p1, p2, h := r3.Dot(p, f.e1), r3.Dot(p, f.e2), r3.Dot(p, f.n)
	m[0][0] += mass
	s11, s12, s22, snn := p1*p1, p1*p2, p2*p2, h*h
	if own != nil {
		s11, s12, s22, snn = s11+own(f.e1, f.e1), s12+own(f.e1, f.e2), s22+own(f.e2, f.e2), snn+own(f.n, f.n)
	}
	m[1][1] += mass * (s11 + snn)
	m[2][2] += mass * (s22 + snn)
	m[1][2] += mass * s12
	m[2][1] += mass * s12
	for i, p := range [2]float64{p1, p2} {
		m[0][i+1] += mass * p
		m[i+1][0] += mass * p
	}
}

// masses returns the inertia of all that moves with the platform: weights, units,
// water inside them.
func (f *frameOfMotion) masses(p *Platform, m *model, d float64, s *sums) matrix3 {
	var out matrix3
	for _, w := range p.Weights {
		f.mass(&out, w.Mass, w.At, nil)
	}
	next := 0
	for i := range p.Units {
		u := &p.Units[i]
		if u.Flooded {
			if !u.Captive {
				f.mass(&out, u.Mass, u.At, u.second)
				f.mass(&out, m.rho*u.Body.Volume(), u.At, u.second) // the water in it is carried along
			}
			continue
		}
		q := &m.parts[next]
		next++
		var w local
		h := f.n.X*q.x + f.n.Y*q.y + f.n.Z*q.z + d
		q.local(h, f.n.X, f.n.Y, f.n.Z, s, &w)
		if q.captive {
			if w.v > q.own && q.own < q.volume {
				f.mass(&out, m.rho*q.own, u.At, u.second)
			}
			continue
		}
		f.mass(&out, u.Mass, u.At, u.second)
		if q.loose > 0 {
			q.localAt(q.loose, f.n.X, f.n.Y, f.n.Z, s, &w)
			f.mass(&out, m.rho*q.loose, r3.Vec{X: q.x + w.vx/q.loose, Y: q.y + w.vy/q.loose, Z: q.z + w.vz/q.loose}, nil)
		}
	}
	return out
}

// second returns the unit's second moment for two directions, about its centre
// and over its mass: a thin drum, or an even block. Bodies of other shapes count
// as points.
func (u *Unit) second(a, b r3.Vec) float64 {
	sin, cos := math.Sincos(u.Heading)
	axis, side := r3.Vec{X: cos, Y: sin}, r3.Vec{X: -sin, Y: cos}
	ax, bx := r3.Dot(a, axis), r3.Dot(b, axis)
	switch s := u.Body.(type) {
	case Cylinder:
		return ax*bx*s.Length*s.Length/12 + (r3.Dot(a, b)-ax*bx)*s.Diameter*s.Diameter/8
	case Block:
		return (ax*bx*s.Length*s.Length + r3.Dot(a, side)*r3.Dot(b, side)*s.Width*s.Width + a.Z*b.Z*s.Height*s.Height) / 12
	}
	return 0
}

// entrain adds the share of the added mass of every wet body.
func (f *frameOfMotion) entrain(m *model, share, d float64, s *sums, out *matrix3) {
	for i := range m.parts {
		q := &m.parts[i]
		var w local
		h := f.n.X*q.x + f.n.Y*q.y + f.n.Z*q.z + d
		q.local(h, f.n.X, f.n.Y, f.n.Z, s, &w)
		if !(w.v > 0) || q.captive && w.v <= q.own {
			continue
		}
		// The waterplane as a rectangle of the same area and second moments.
		added := m.rho * w.v
		at := r3.Vec{X: q.x + w.vx/w.v, Y: q.y + w.vy/w.v, Z: q.z + w.vz/w.v}
		p1, p2 := r3.Dot(r3.Sub(at, f.g), f.e1), r3.Dot(r3.Sub(at, f.g), f.e2)
		var s11, s12, s22 float64
		if w.w0 > 0 {
			c1, c2 := w.w1/w.w0, w.w2/w.w0
			s11, s12, s22 = w.w11/w.w0-c1*c1, w.w12/w.w0-c1*c2, w.w22/w.w0-c2*c2
			half := (s11 - s22) / 2
			least := (s11+s22)/2 - math.Hypot(half, s12)
			b2 := 12 * max(least, 0) // breadth squared
			if b2 > 0 {
				added = max(added, m.rho*math.Pi/8*math.Sqrt(b2)*w.w0)
			}
			// Along the body its added mass lies as its waterplane does; across it a
			// drum turns without moving water, a plate of breadth b with b²/32.
			across := 0.0
			if q.body != nil {
				across = b2 / 32
			}
			trim := least - across
			long := s11 + s22 - least
			if long > least {
				// Take trim off the second moment in the short direction only.
				u11, u12, u22 := (long-s11)/(long-least), -s12/(long-least), (long-s22)/(long-least)
				s11, s12, s22 = s11-trim*u11, s12-trim*u12, s22-trim*u22
			} else {
				s11, s22 = s11-trim, s22-trim
			}
			o := r3.Vec{X: q.x, Y: q.y, Z: q.z}
			p1 = r3.Dot(r3.Sub(o, f.g), f.e1) + c1
			p2 = r3.Dot(r3.Sub(o, f.g), f.e2) + c2
		} else if q.body == nil {
			a1 := q.ca*f.e1.X + q.sa*f.e1.Y
			a2 := q.ca*f.e2.X + q.sa*f.e2.Y
			own := q.l * q.l / 12
			s11, s12, s22 = own*a1*a1, own*a1*a2, own*a2*a2
		}
		a := share * added
		out.add(a, [3]float64{1, p1, p2})
		out[1][1] += a * s11
		out[2][2] += a * s22
		out[1][2] += a * s12
		out[2][1] += a * s12
	}
}
